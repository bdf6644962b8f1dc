using System.IO.Compression;
using System.Text;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>
/// Counts and sizes that SECURITY.md states, just passed: refused with words that name the limit, and nothing is written; and just kept: not refused for it.
/// SECURITY.md names those that are tested elsewhere.
/// </summary>
public sealed class LimitTests
{
    private const int Text = 16_000_000, Drawing = 64_000_000;

    [Theory]
    [InlineData("a project file of too many bytes", "check big.yaml", "the limit is 16,000,000")]
    [InlineData("a project file of too many characters", "check long.yaml", "the limit is 4000000")]
    [InlineData("a project file of too many values", "check many.yaml", "more than 400000 values")]
    [InlineData("a project file that is nested too deep", "check deep.yaml", "nested more than 32 deep")]
    [InlineData("a title block of too many bytes", "check title.yaml", "the limit is 64,000,000")]
    [InlineData("a base drawing of too many bytes", "inspect big.dxf", "the limit is 64,000,000")]
    [InlineData("an entity of too many values", "inspect values.dxf", "more than 2000000 values")]
    [InlineData("an alignment of too many bytes", "inspect big.xml", "the limit is 64,000,000")]
    [InlineData("an alignment of too many elements", "inspect elements.xml", "more than 2000000 elements")]
    [InlineData("an alignment that is nested too deep", "inspect deep.xml", "more than 64 deep")]
    [InlineData("a form of too many bytes", "check big.xlsx", "the limit is 16,000,000")]
    [InlineData("a form of too many parts", "check parts.xlsx", "more than 2000 parts")]
    [InlineData("a form of too many sheets", "check sheets.xlsx", "more than 250 sheets")]
    [InlineData("a form of too many cells", "check cells.xlsx", "more than 400000 cells")]
    [InlineData("a form of too many texts", "check texts.xlsx", "more than 400000 texts")]
    [InlineData("a table of too many bytes", "check table.yaml", "the limit is 16,000,000")]
    [InlineData("a table of too many rows", "inspect rows.csv", "over 200000 rows")]
    [InlineData("a record of too many bytes", "asbuilt wall.yaml big.csv", "the limit is 16,000,000")]
    [InlineData("a record of too many rows", "asbuilt wall.yaml rows.csv", "the table has over 200000 rows")]
    [InlineData("old nails of too many bytes", "compare wall.yaml big.csv", "the limit is 16,000,000")]
    [InlineData("old findings of too many bytes", "compare wall.yaml old", "the limit is 16,000,000")]
    [InlineData("old tables that unpack to too many bytes", "compare wall.yaml older", "16,000,000")]
    [InlineData("an edited drawing of too many bytes", "recheck wall.yaml big.dxf", "the limit is 64,000,000")]
    [InlineData("a study of too many bytes", "study wall.yaml big.yaml --out all", "the limit is 16,000,000")]
    [InlineData("a study of too many variants", "study wall.yaml study.yaml --out all", "the limit is 10000")]
    [InlineData("a list of too many bytes", "corridor big.yaml --out all", "the limit is 16,000,000")]
    [InlineData("an older page of too many bytes", "review wall.yaml --out out --against big.html", "the limit is 60,000,000")]
    [InlineData("too many notes", "check notes.yaml", "there are 501 notes; the limit is 500")]
    [InlineData("too long a note", "check note.yaml", "4000")]
    [InlineData("too many nails", "check nails.yaml", "the limit is 2000000")]
    public void What_is_over_a_limit_is_refused_and_nothing_is_written(string what, string arguments, string words)
    {
        using var temp = new TempFolder();
        string[] parts = arguments.Split(' ');
        File.Copy(Repository.DemoFile("quarry-lane"), temp.File("wall.yaml"));
        foreach (string name in parts.Skip(1).Where(p => p.Contains('.', StringComparison.Ordinal) || p is "old" or "older").Where(p => p != "wall.yaml"))
            Make(temp, name, 1);
        string[] before = Entries(temp);

        CliRun run = CliRun.With(temp.Path, null, parts);

        Assert.True(run.Code == 2 && run.Error.Contains(words, StringComparison.Ordinal), $"{what}: {run.Code} {run.Error} {run.Out[..Math.Min(400, run.Out.Length)]}");
        Assert.Equal(before, Entries(temp));
    }

    /// <summary>The same files with one less of what is counted: whatever else is said of them, the limit is not.</summary>
    [Theory]
    [InlineData("check long.yaml", "the limit is 4000000")]
    [InlineData("check many.yaml", "more than 400000 values")]
    [InlineData("check deep.yaml", "nested more than 32 deep")]
    [InlineData("inspect values.dxf", "more than 2000000 values")]
    [InlineData("inspect elements.xml", "more than 2000000 elements")]
    [InlineData("inspect deep.xml", "more than 64 deep")]
    [InlineData("check parts.xlsx", "more than 2000 parts")]
    [InlineData("check sheets.xlsx", "more than 250 sheets")]
    [InlineData("check cells.xlsx", "more than 400000 cells")]
    [InlineData("check texts.xlsx", "more than 400000 texts")]
    [InlineData("inspect rows.csv", "over 200000 rows")]
    [InlineData("check notes.yaml", "the limit is 500")]
    [InlineData("check note.yaml", "4000")]
    public void What_is_just_inside_a_limit_is_not_refused_for_it(string arguments, string words)
    {
        using var temp = new TempFolder();
        string[] parts = arguments.Split(' ');
        Make(temp, parts[1], 0);

        CliRun run = CliRun.With(temp.Path, null, parts);

        Assert.InRange(run.Code, 0, 2);
        Assert.DoesNotContain(words, run.Error + run.Out, StringComparison.Ordinal);
    }

    /// <summary>A kept state of just the limit counts, one byte more and the wall is built again.</summary>
    [Theory]
    [InlineData(Text, "Wall 0: unchanged")]
    [InlineData(Text + 1, "Wall 0: built")]
    public void A_kept_state_that_is_too_large_is_not_read_and_its_wall_is_built_again(int bytes, string said)
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 1);
        string[] run = ["corridor", SmallCorridor.List, "--out", "out", "--only", "Wall 0"];
        Assert.Equal(0, CliRun.With(temp.Path, null, run).Code);
        string state = temp.File("out/state/Wall 0.json");
        int kept = (int)new FileInfo(state).Length;
        File.AppendAllText(state, new string(' ', bytes - kept));

        CliRun again = CliRun.With(temp.Path, null, run);

        Assert.True(again.Code == 0 && again.Out.Contains(said, StringComparison.Ordinal), again.Out + again.Error);
        Assert.Equal(bytes > Text ? kept : bytes, new FileInfo(state).Length);
    }

    private static string[] Entries(TempFolder temp) => [.. Directory.GetFileSystemEntries(temp.Path, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    /// <param name="over">How many of what is counted are over the limit; 1 or, just inside, 0.</param>
    private static void Make(TempFolder temp, string name, int over)
    {
        string path = temp.File(name);
        switch (name)
        {
            case "big.yaml" or "big.xlsx" or "big.csv":
                Blank(path, Text + 1);
                break;
            case "big.dxf" or "big.xml" or "big.html":
                Blank(path, Drawing + 1);
                break;
            case "long.yaml":
                File.WriteAllText(path, "format: 1\n" + new string('#', 4_000_000 - 10 + over));
                break;
            case "many.yaml":
                File.WriteAllText(path, "format: 1\nwalls: [" + string.Concat(Enumerable.Repeat("1,", 399_994 + over)) + "1]\n");
                break;
            case "deep.yaml":
                File.WriteAllText(path, "format: 1\nwalls: " + new string('[', 32 + over) + new string(']', 32 + over) + "\n");
                break;
            case "title.yaml":
                Blank(temp.File("title.dxf"), Drawing + 1);
                Wall(path, "sheets: {title_block: title.dxf}\n");
                break;
            case "values.dxf":
                File.WriteAllText(path, "0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n" + string.Concat(Enumerable.Repeat("10\n1\n", 2_000_000 + over)) + "0\nENDSEC\n0\nEOF\n");
                break;
            case "elements.xml":
                File.WriteAllText(path, "<LandXML xmlns=\"http://www.landxml.org/schema/LandXML-1.2\">" + string.Concat(Enumerable.Repeat("<P/>", 1_999_999 + over)) + "</LandXML>");
                break;
            case "deep.xml":
                File.WriteAllText(path, "<LandXML xmlns=\"http://www.landxml.org/schema/LandXML-1.2\">" + string.Concat(Enumerable.Repeat("<P>", 64 + over)) + string.Concat(Enumerable.Repeat("</P>", 64 + over)) + "</LandXML>");
                break;
            case "parts.xlsx" or "sheets.xlsx" or "cells.xlsx" or "texts.xlsx":
                File.WriteAllBytes(path, Book(name, over));
                break;
            case "table.yaml":
                Blank(temp.File("points.csv"), Text + 1);
                File.WriteAllText(path, File.ReadAllText(Repository.DemoFile("quarry-lane")).Replace("\nborings:\n", "\nborings:\n  - {from_csv: {file: points.csv}}\n", StringComparison.Ordinal));
                break;
            case "rows.csv":
                File.WriteAllText(path, "mark,station,elevation\n" + string.Concat(Enumerable.Repeat("A,1,2\n", 199_999 + over)));
                break;
            case "old":
                Directory.CreateDirectory(path);
                File.WriteAllText(Path.Combine(path, "nails.csv"), "wall,section\n");
                Blank(Path.Combine(path, "findings.json"), Text + 1);
                break;
            case "older":
                Directory.CreateDirectory(path);
                File.WriteAllText(Path.Combine(path, "nails.csv"), "wall,section\n");
                using (ZipArchive zip = ZipFile.Open(Path.Combine(path, "tables.zip"), ZipArchiveMode.Create))
                using (Stream part = zip.CreateEntry("quantities.csv", CompressionLevel.Fastest).Open())
                    part.Write(new byte[Text + 1]);
                break;
            case "study.yaml":
                File.WriteAllText(path, "format: 1\ntitle: Spacing and inclination\nvary:\n  inclination[section A]: [" + string.Join(", ", Enumerable.Range(0, 101).Select(i => FormattableString.Invariant($"{10 + i / 100.0}")))
                    + "]\n  horizontal_spacing[section A]: [" + string.Join(", ", Enumerable.Range(0, 100).Select(i => FormattableString.Invariant($"{4 + i / 100.0}"))) + "]\n");
                break;
            case "notes.yaml" or "note.yaml":
                string[] notes = name == "note.yaml" ? [new string('n', 4000 + over)] : [.. Enumerable.Range(0, 500 + over).Select(i => "Note")];
                File.WriteAllText(temp.File("notes.json"), "[{\"heading\": \"NOTES\", \"notes\": [" + string.Join(", ", notes.Select(n => $"\"{n}\"")) + "]}]");
                Wall(path, "sheets: {notes: notes.json}\n");
                break;
            case "nails.yaml":
                File.WriteAllText(path, """
                    format: 1
                    project: {title: Long, number: L-1, units: m}
                    rules: {min_gap: 0.3}
                    layout_lines:
                      - {name: L, start: {station: 0+000, northing: 0, easting: 0, azimuth: 90}, elements: [{line: 60000}]}
                    walls:
                      - name: Wall
                        layout_line: L
                        retained_side: right
                        stations: [0+000, 60+000]
                        top: [[0+000, 110], [60+000, 110]]
                        bottom: {steps: [[0+000, 100]]}
                        sections:
                          - {name: A, stations: [0+000, 60+000], horizontal_spacing: 0.5, vertical_spacing: 0.5, top_row_depth: 0.4, inclination: 15, lengths: [6], bar: {size: "#8", grade: 75}, hole: 0.15}
                    """);
                break;
            default:
                throw new ArgumentException(name);
        }
    }

    private static void Blank(string path, long length)
    {
        using FileStream stream = File.Create(path);
        stream.SetLength(length);
    }

    private static void Wall(string path, string more) =>
        File.WriteAllText(path, string.Join('\n', File.ReadAllLines(Repository.DemoFile("quarry-lane")).Where(l => !l.StartsWith("sheets:", StringComparison.Ordinal))) + "\n" + more);

    /// <summary>A workbook with one count over its limit.</summary>
    private static byte[] Book(string name, int over)
    {
        const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main", Links = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        int sheets = name == "sheets.xlsx" ? 250 + over : 1;
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            void Add(string part, string text)
            {
                using Stream stream = zip.CreateEntry(part, CompressionLevel.Fastest).Open();
                stream.Write(Encoding.UTF8.GetBytes(text));
            }
            Add("xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Links}\"><sheets>"
                + string.Concat(Enumerable.Range(1, sheets).Select(i => FormattableString.Invariant($"<sheet name=\"S{i}\" sheetId=\"{i}\" r:id=\"r{i}\"/>"))) + "</sheets></workbook>");
            Add("xl/_rels/workbook.xml.rels", "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                + string.Concat(Enumerable.Range(1, sheets).Select(i => FormattableString.Invariant($"<Relationship Id=\"r{i}\" Type=\"{Links}/worksheet\" Target=\"worksheets/sheet{i}.xml\"/>")))
                + $"<Relationship Id=\"t\" Type=\"{Links}/sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>");
            string rows = name == "cells.xlsx" ? string.Concat(Enumerable.Range(1, 400_000 + over).Select(i => FormattableString.Invariant($"<row r=\"{i}\"><c r=\"A{i}\"><v>1</v></c></row>"))) : "<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>";
            for (int i = 1; i <= sheets; i++)
                Add(FormattableString.Invariant($"xl/worksheets/sheet{i}.xml"), $"<worksheet xmlns=\"{Main}\"><sheetData>{rows}</sheetData></worksheet>");
            Add("xl/sharedStrings.xml", $"<sst xmlns=\"{Main}\">{string.Concat(Enumerable.Repeat("<si><t>a</t></si>", name == "texts.xlsx" ? 400_000 + over : 1))}</sst>");
            for (int i = 0; i < (name == "parts.xlsx" ? 1_996 + over : 0); i++)
                Add(FormattableString.Invariant($"more/{i}.xml"), "<a/>");
        }
        return memory.ToArray();
    }
}
