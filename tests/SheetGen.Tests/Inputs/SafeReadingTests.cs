using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Inputs;

/// <summary>What a file of another program may not do: lie elsewhere, name other files, be endless, show up in messages.</summary>
public sealed class SafeReadingTests
{
    private const string Line = "from_landxml: {file: NAME}";

    private static string Yaml(string name) => InputFolder.Yaml(Line.Replace("NAME", name, StringComparison.Ordinal), "{from_csv: {file: NAME}}".Replace("NAME", name, StringComparison.Ordinal), "[10+00, 12+00]");

    [Fact]
    public void Files_outside_of_the_folder_are_read_only_where_that_is_allowed()
    {
        using InputFolder folder = new(), other = new();
        other.With("road.xml", FhwaAlignment.LandXml());
        string yaml = InputFolder.Yaml(Line.Replace("NAME", other.Of("road.xml"), StringComparison.Ordinal), "[[110+00, 100], [130+00, 100]]", "[110+00, 130+00]");
        Assert.Contains(folder.Problems(yaml), p => p.Contains("error I01", StringComparison.Ordinal) && p.Contains("--allow-outside", StringComparison.Ordinal));
        Assert.NotNull(folder.Read(yaml, allowOutside: true).Project);
        Assert.Contains(folder.Problems(Yaml("../x.csv")), p => p.Contains("error I01", StringComparison.Ordinal));
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(folder.Of("link.xml"), other.Of("road.xml"));
            Directory.CreateSymbolicLink(folder.Of("sub"), other.Path);
            Assert.Contains(folder.Problems(Yaml("link.xml")), p => p.Contains("error I01", StringComparison.Ordinal));
            Assert.Contains(folder.Problems(Yaml("sub/road.xml")), p => p.Contains("error I01", StringComparison.Ordinal));
            Assert.Contains(folder.Problems(Yaml("/dev/zero"), allowOutside: true), p => p.Contains("it is a device", StringComparison.Ordinal));
        }
        Directory.CreateDirectory(folder.Of("maps"));
        Assert.Contains(folder.Problems(Yaml("maps")), p => p.Contains("it is a folder", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_of_a_file_of_another_kind_is_shown()
    {
        using var folder = new InputFolder();
        const string Secret = "root:x:0:0:tops3cret";
        foreach (string text in new[] { Secret + ":/root\n", $"<a>{Secret}</a>", $"<LandXML><Units>{Secret}", "\0" + Secret, $"{Secret},{Secret}\n1,2\n", "\"" + Secret, $"0\nSECTION\n{Secret}\n" })
        {
            string[] problems = [.. folder.With("x.txt", text).Problems(Yaml("x.txt")), .. folder.Problems(InputFolder.Yaml("from_dxf: {file: x.txt}", "[[0, 1]]", "[0, 1]"))];
            Assert.Contains(problems, p => p.Contains("error I0", StringComparison.Ordinal));
            Assert.DoesNotContain(problems, p => p.Contains("tops3cret", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Document_types_and_depth_are_refused()
    {
        using var folder = new InputFolder();
        folder.With("dtd.xml", "<!DOCTYPE LandXML [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><LandXML>&a;</LandXML>");
        Assert.Contains(folder.Problems(Yaml("dtd.xml")), p => p.Contains("it has a document type, which is not read", StringComparison.Ordinal));
        folder.With("deep.xml", string.Concat(Enumerable.Repeat("<a>", 5000)));
        Assert.Contains(folder.Problems(Yaml("deep.xml")), p => p.Contains("more than 64 deep", StringComparison.Ordinal));
    }

    [Fact]
    public void A_tag_of_a_million_bytes_is_refused_before_it_is_read()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", "<!-- a road -->\n <LandXML " + string.Concat(Enumerable.Range(0, 120_000).Select(i => $"a{i}=\"1\" ")) + "/>");
        Assert.Contains(folder.Problems(Yaml("road.xml")), p => p.Contains("road.xml:2:2: error R04", StringComparison.Ordinal) && p.Contains("more than 1000000 bytes in one tag", StringComparison.Ordinal));
    }

    /// <summary>A text cut into pieces by comments is put together once and not anew for each piece (5 million pieces took minutes).</summary>
    [Fact]
    public void A_text_in_very_many_pieces_is_read_as_one()
    {
        using var folder = new InputFolder();
        string start = string.Concat(Enumerable.Repeat("<!---->", 400_000).Prepend("0").Append(" 0"));
        folder.With("road.xml", $"<LandXML version=\"1.2\"><Units><Imperial linearUnit=\"foot\"/></Units><Alignments><Alignment name=\"A\" length=\"400\" staStart=\"1000\"><CoordGeom><Line><Start>{start}</Start><End>0 4<!---->00</End></Line></CoordGeom></Alignment></Alignments></LandXML>");
        Assert.NotNull(folder.Read(InputFolder.Yaml("from_landxml: {file: road.xml}", "[[10+00, 100], [12+00, 100]]", "[10+00, 12+00]")).Project);
    }

    [Theory]
    [InlineData("1e308")]
    [InlineData("-2e11")]
    [InlineData("NaN")]
    [InlineData("INF")]
    public void A_coordinate_beyond_reason_is_no_point(string end)
    {
        using var folder = new InputFolder();
        folder.With("road.xml", $"<LandXML version=\"1.2\"><Units><Imperial linearUnit=\"foot\"/></Units><Alignments><Alignment name=\"A\" staStart=\"0\"><CoordGeom><Line><Start>0 0</Start><End>{end} 0</End></Line></CoordGeom></Alignment></Alignments></LandXML>");
        Assert.Contains(folder.Problems(InputFolder.Yaml("from_landxml: {file: road.xml}", "[[0, 100], [1+00, 100]]", "[0, 1+00]")), p => p.Contains("error I04", StringComparison.Ordinal) && p.Contains("start or end point", StringComparison.Ordinal));
    }

    [Fact]
    public void The_hash_of_the_input_holds_the_files_that_it_names()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml());
        string yaml = InputFolder.Yaml("from_landxml: {file: road.xml}", "[[110+00, 100], [130+00, 100]]", "[110+00, 130+00]");
        string one = folder.Read(yaml).Project!.InputHash;
        Assert.Equal(one, folder.Read(yaml).Project!.InputHash);
        Assert.NotEqual(one, folder.With("road.xml", FhwaAlignment.LandXml() + "\n").Read(yaml).Project!.InputHash);
    }

    /// <summary>Each code of files of other programs with a file that provokes it; the place is that of the file or of the key that names it.</summary>
    public static TheoryData<string, string, string, string, string> Provoked => new()
    {
        { "I01", "wall.yaml:5:26", "from_landxml: {file: ../road.xml}", "", "" },
        { "I02", "wall.yaml:5:26", "from_landxml: {file: x.xml}", "x.xml", "<html/>" },
        { "I03", "wall.yaml:5:47", "from_landxml: {file: road.xml, alignment: Loop}", "", "" },
        { "I04", "x.xml:1:", "from_landxml: {file: x.xml}", "x.xml", "<LandXML version=\"1.2\"><Units><Imperial linearUnit=\"foot\"/></Units><Alignments><Alignment name=\"A\" staStart=\"0\"><CoordGeom><Curve><Start>0 0</Start><Center>0 5</Center><End>9 9</End></Curve></CoordGeom></Alignment></Alignments></LandXML>" },
        { "I05", "x.csv:3:1", "", "x.csv", "northing,easting,elevation\n0,0,100\n900,100,100\n0,400,100\n" },
        { "I06", "x.xml:1:", "from_landxml: {file: x.xml}", "x.xml", "<LandXML version=\"1.2\"><Units><Imperial linearUnit=\"foot\"/></Units><Alignments><Alignment name=\"A\" length=\"77\" staStart=\"0\"><CoordGeom><Line><Start>0 0</Start><End>0 400</End></Line></CoordGeom></Alignment></Alignments></LandXML>" },
        { "I07", "road.xml:", "from_landxml: {file: road.xml}", "", "" },
    };

    [Theory]
    [MemberData(nameof(Provoked))]
    public void Every_code_of_foreign_files_is_provoked(string code, string place, string line, string name, string text)
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml());
        if (name.Length > 0)
            folder.With(name, text);
        string[] problems = folder.Problems(line.Length > 0
            ? InputFolder.Yaml(line, "[[110+00, 100], [130+00, 100]]", "[110+00, 130+00]")
            : InputFolder.Yaml("start: {station: 0, northing: 0, easting: 0, azimuth: 90}\n    elements: [{line: 400}]", $"{{from_csv: {{file: {name}}}}}", "[0, 4+00]"));
        Assert.Contains(problems, p => p.StartsWith(place, StringComparison.Ordinal) && p.Contains($" {code}: ", StringComparison.Ordinal));
    }

    [Fact]
    public void No_code_of_foreign_files_is_left_out_above() =>
        Assert.Equal(ProblemCodes.All.Select(c => c.Code).Where(c => c[0] == 'I'), Provoked.Select(p => p.Data.Item1));
}
