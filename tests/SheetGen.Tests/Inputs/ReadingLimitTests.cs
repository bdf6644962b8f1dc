using System.IO.Compression;
using System.Text;
using SheetGen.Dxf;
using SheetGen.Model.Problems;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Records;
using SheetGen.ProjectFile.Studies;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>Limits of SECURITY.md, each just inside and just beyond: what is inside is read whole, what is beyond is named.</summary>
public sealed class ReadingLimitTests
{
    private const string Line = "start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}\n    elements: [{line: 200}]";

    [Theory]
    [InlineData("999999999990", "1", true)]
    [InlineData("1000000000001", "1", false)]
    [InlineData("-1000000000001", "1", false)]
    [InlineData("1e308", "1", false)]
    [InlineData("999998", "1000000", true)]
    [InlineData("1000001", "1000000", false)]
    public void Coordinates_of_a_base_drawing_are_those_of_a_drawing_or_named(string x, string scale, bool inside)
    {
        using var folder = new InputFolder();
        // As it stands, or in a block that an insert makes larger.
        string pile = $"0\nCIRCLE\n5\n2A\n8\nA\n10\n{x}\n20\n0\n40\n1\n";
        string entities = scale == "1" ? pile : $"0\nINSERT\n5\n2B\n8\nA\n2\nPILE\n10\n0\n20\n0\n41\n{scale}\n42\n{scale}\n";
        folder.With("base.dxf", $"0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n2\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nPILE\n10\n0\n20\n0\n{pile}0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n5\n2C\n8\nA\n10\n50\n20\n-20\n40\n1\n{entities}0\nENDSEC\n0\nEOF\n");

        string[] problems = folder.Problems(InputFolder.Yaml(Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100", more: "obstructions:\n  - from_dxf: {file: base.dxf, layer: A, kind: shaft, bottom: 90, top: 118}\n"));

        Assert.Equal(!inside, problems.Any(p => p.Contains("its coordinates are not those of a drawing", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(200, true)]
    [InlineData(201, false)]
    public void Columns_of_a_table_are_counted(int columns, bool inside)
    {
        using var folder = new InputFolder();
        string more = string.Concat(Enumerable.Range(3, columns - 2).Select(i => FormattableString.Invariant($",note{i}"))), blank = new(',', columns - 2);
        folder.With("top.csv", $"station,elevation{more}\n10+00,118{blank}\n12+00,118{blank}\n");
        string[] problems = folder.Problems(InputFolder.Yaml(Line, "{from_csv: {file: top.csv}}", "[10+00, 12+00]", bottom: "100"));
        Assert.Equal(!inside, problems.Any(p => p.Contains("it has over 200 columns", StringComparison.Ordinal)));
        Assert.Equal(!inside, problems.Any(p => p.Contains(": error ", StringComparison.Ordinal)));

        var found = new List<Problem>();
        Assert.Equal(inside, CsvGrid.Read($"mark{string.Concat(Enumerable.Repeat(",", columns - 1))}\nA1\n", "holes.csv", "D03", ["mark"], ["mark"], found) is not null);
        Assert.Equal(!inside, found.Any(p => p.Message == "the table has over 200 columns"));
    }

    [Theory]
    [InlineData(200_000, true)]
    [InlineData(200_001, false)]
    public void Rows_of_a_record_are_counted(int rows, bool inside)
    {
        var found = new List<Problem>();
        // The heads are a row.
        CsvGrid? grid = CsvGrid.Read("mark\n" + string.Concat(Enumerable.Repeat("A\n", rows - 1)), "holes.csv", "D03", ["mark"], ["mark"], found);
        Assert.Equal(inside ? rows - 1 : null, grid?.Rows.Count);
        Assert.Equal(!inside, found.Any(p => p.Message == "the table has over 200000 rows"));
    }

    /// <summary>Rows and columns of one reference, 10,000 at most, and of all of a drawing, 100,000: beyond them only the first is read, and that is said.</summary>
    [Theory]
    [InlineData(1, 100, 100, 0, 10_000, null)]
    [InlineData(1, 73, 137, 0, 1, "INSERT of more than 10000 copies: only the first is read")]
    [InlineData(1, 32767, 32767, 0, 1, "INSERT of more than 10000 copies: only the first is read")]
    [InlineData(9, 100, 100, 9999, 99_999, null)]
    [InlineData(10, 100, 100, 0, 100_000, null)]
    [InlineData(10, 100, 100, 2, 100_001, "INSERTs of more than 100000 copies in all: of this one only the first is read")]
    public void Copies_of_a_block_in_rows_and_columns_are_counted(int inserts, int columns, int rows, int last, int read, string? said)
    {
        string insert = FormattableString.Invariant($"0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n70\n{columns}\n71\n{rows}\n44\n1\n45\n1\n");
        string end = last == 0 ? "" : FormattableString.Invariant($"0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n70\n{last}\n71\n1\n44\n1\n45\n1\n");
        DxfReadResult result = DxfReader.Read(Encoding.ASCII.GetBytes("0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nB\n70\n0\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n8\n0\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n"
            + string.Concat(Enumerable.Repeat(insert, inserts)) + end + "0\nENDSEC\n0\nEOF\n"));
        Assert.Equal(read, result.Document!.Model.OfType<DxfInsert>().Count());
        Assert.Equal(said is null ? [] : [said], result.Warnings.Select(w => w.Message));
    }

    [Theory]
    [InlineData(16_000_000, 100, true, "")]
    [InlineData(16_000_001, 100, false, "the limit is 16,000,000")]
    [InlineData(0, 16_000_000, true, "")]
    [InlineData(0, 16_000_001, false, "quantities.csv unpacks to 16,000,001 bytes; the limit is 16,000,000")]
    public void Tables_of_an_older_set_have_a_size_packed_and_unpacked(int packed, int unpacked, bool inside, string said)
    {
        using var folder = new InputFolder();
        folder.With("nails.csv", "wall,section\n");
        File.WriteAllBytes(folder.Of("tables.zip"), Zip(packed, unpacked));
        var problems = new List<Problem>();

        RevisionState? state = ResultFolder.Read(folder.Of("nails.csv"), "before", false, problems);

        string[] ofTables = [.. problems.Select(p => p.Message).Where(m => m.StartsWith("the tables beside it", StringComparison.Ordinal))];
        Assert.Equal(inside ? 0 : 1, ofTables.Length);
        Assert.All(ofTables, m => Assert.EndsWith(said, m, StringComparison.Ordinal));
        Assert.True(state is null || inside == state.Amounts is not null);
    }

    /// <summary>A study of 100 by 100 variants is read, one of 101 by 100 is not.</summary>
    [Theory]
    [InlineData(100, true)]
    [InlineData(101, false)]
    public void Variants_of_a_study_are_counted(int values, bool inside)
    {
        using var folder = new InputFolder();
        folder.With("wall.yaml", InputFolder.Yaml(Line, "[[10+00, 118], [12+00, 118]]", "[10+00, 12+00]", bottom: "100"))
            .With("study.yaml", "format: 1\ntitle: T\nvary:\n  inclination: [" + string.Join(", ", Enumerable.Range(0, values).Select(i => FormattableString.Invariant($"{10 + i / 100.0}")))
                + "]\n  top_row_depth: [" + string.Join(", ", Enumerable.Range(0, 100).Select(i => FormattableString.Invariant($"{2 + i / 100.0}"))) + "]\n");
        StudyResult read = StudyReader.Read(folder.Of("wall.yaml"), folder.Of("study.yaml"));
        Assert.Equal(inside, read.Study is not null);
        Assert.Equal(!inside, read.Problems.Any(p => p.Message == "the study has 10100 variants; the limit is 10000"));
    }

    [Theory]
    [InlineData(InputFile.MostText)]
    [InlineData(InputFile.MostDrawing)]
    public void A_file_of_just_the_limit_is_read_and_one_byte_more_is_not(long most)
    {
        using var folder = new InputFolder();
        string path = folder.Of("large");
        foreach (long length in new[] { most, most + 1 })
        {
            using (FileStream stream = File.Create(path))
                stream.SetLength(length);
            InputFile file = InputFile.Read(path, most);
            Assert.Equal((length == most ? most : null, length > most), (file.Bytes?.LongLength, file.IsTooLarge));
            Assert.Equal(length > most, file.Why.Contains(FormattableString.Invariant($"the limit is {most:N0}"), StringComparison.Ordinal));
        }
    }

    /// <summary>A zip with quantities.csv of a length, and as much beside it as makes the file a length of its own.</summary>
    private static byte[] Zip(int packed, int unpacked)
    {
        byte[] Of(int filler)
        {
            using var memory = new MemoryStream();
            using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
            {
                const string Heads = "Name,Quantity,Unit\n";
                using (Stream part = zip.CreateEntry("quantities.csv", CompressionLevel.Fastest).Open())
                {
                    part.Write(Encoding.ASCII.GetBytes(Heads));
                    part.Write(Enumerable.Repeat((byte)'\n', unpacked - Heads.Length).ToArray());
                }
                if (packed > 0)
                {
                    using Stream part = zip.CreateEntry("filler", CompressionLevel.NoCompression).Open();
                    part.Write(new byte[filler]);
                }
            }
            return memory.ToArray();
        }
        // What is stored without compression grows the file by as much.
        byte[] bytes = packed == 0 ? Of(0) : Of(packed - Of(0).Length);
        if (packed > 0 && bytes.Length != packed)
            bytes = Of(packed - Of(0).Length - (bytes.Length - packed));
        Assert.True(packed == 0 || bytes.Length == packed);
        return bytes;
    }
}
