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
    public void The_hash_of_the_input_holds_the_files_that_it_names()
    {
        using var folder = new InputFolder();
        folder.With("road.xml", FhwaAlignment.LandXml());
        string yaml = InputFolder.Yaml("from_landxml: {file: road.xml}", "[[110+00, 100], [130+00, 100]]", "[110+00, 130+00]");
        string one = folder.Read(yaml).Project!.InputHash;
        Assert.Equal(one, folder.Read(yaml).Project!.InputHash);
        Assert.NotEqual(one, folder.With("road.xml", FhwaAlignment.LandXml() + "\n").Read(yaml).Project!.InputHash);
    }

    [Fact]
    public void Every_code_of_foreign_files_is_met_by_these_tests() =>
        Assert.Equal(["I01", "I02", "I03", "I04", "I05", "I06", "I07"], ProblemCodes.All.Select(c => c.Code).Where(c => c[0] == 'I'));
}
