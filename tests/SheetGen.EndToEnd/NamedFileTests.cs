using System.Diagnostics;
using SheetGen.EndToEnd.Support;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Files that a project names: what cannot be read says why at its key, and what a drawing cannot hold is told before anything is laid out.</summary>
public sealed class NamedFileTests
{
    private static readonly string Layers = File.ReadAllText(Path.Combine(Repository.Root, "templates", "layers", "standard.json"));

    [Theory]
    [InlineData("pipe", "it is a pipe")]
    [InlineData("/dev/zero", "it is a device")]
    [InlineData("folder", "it is a folder")]
    [InlineData("missing", "there is no such file")]
    [InlineData("latin", "it is not UTF-8 text")]
    [InlineData("large", "the limit is 16,000,000")]
    public void A_file_that_cannot_be_read_says_why_at_its_key(string name, string why)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no such files there");
        using var temp = new TempFolder();
        Directory.CreateDirectory(temp.File("folder"));
        Process.Start("mkfifo", [temp.File("pipe")]).WaitForExit();
        File.WriteAllBytes(temp.File("latin"), [0x7b, 0xe9, 0x7d]);
        using (FileStream large = File.Create(temp.File("large")))
            large.SetLength(16_000_001);
        string project = Wall(temp, $"# layers: the word in a comment is not the key\nsheets: {{notes: {name}, layers: {name}, title_block: /dev/zero}}\npay_items: {name}\n");

        CliRun run = CliRun.With(temp.Path, null, "check", "wall.yaml");

        Assert.Equal(2, run.Code);
        string[] lines = project.Split('\n');
        int sheets = Array.FindIndex(lines, l => l.StartsWith("sheets:", StringComparison.Ordinal));
        foreach (string key in new[] { "layers", "notes" })
            Assert.Contains(FormattableString.Invariant($"wall.yaml:{sheets + 1}:{lines[sheets].IndexOf(key + ":", StringComparison.Ordinal) + 1}: error R01: {key} \"{name}\" cannot be read: "), run.Error, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"wall.yaml:{sheets + 2}:1: error R01: pay items"), run.Error, StringComparison.Ordinal);
        Assert.Equal(3, run.Error.Split(why).Length - 1 - (why == "it is a device" ? 1 : 0));
        Assert.Equal(2, CliRun.With(temp.Path, null, "check", name).Code);
    }

    [Fact]
    public void A_pipe_in_place_of_an_older_result_keeps_no_run_waiting()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no such files there");
        using var temp = new TempFolder();
        Wall(temp, "");
        foreach (string folder in new[] { "out", "old", "all/state" })
            Directory.CreateDirectory(temp.File(folder));
        foreach (string pipe in new[] { "out/nails.csv", "old/nails.csv", "all/state/wall.json" })
            Process.Start("mkfifo", [temp.File(pipe)]).WaitForExit();
        File.WriteAllText(temp.File("out/findings.json"), "{}");

        CliRun build = CliRun.With(temp.Path, null, "build", "wall.yaml", "--out", "out");
        CliRun compare = CliRun.With(temp.Path, null, "compare", "old", "out");
        CliRun corridor = CliRun.With(temp.Path, null, "corridor", "wall.yaml", "--out", "all");

        Assert.InRange(build.Code, 0, 1);
        Assert.StartsWith("wall,section,", File.ReadLines(temp.File("out/nails.csv")).First(), StringComparison.Ordinal);
        Assert.Equal(2, compare.Code);
        Assert.Contains("it is a pipe", compare.Error, StringComparison.Ordinal);
        Assert.InRange(corridor.Code, 0, 1);
    }

    [Theory]
    [InlineData("\"color\": 8,", "\"color\": 300,", "300 is no colour")]
    [InlineData("\"weight\": 0.13,", "\"weight\": 0.37,", "0.37 mm is no line weight")]
    [InlineData("\"weight\": 0.13,", "\"weight\": 1e400,", "is no line weight")]
    [InlineData("\"screen\": 45,", "\"screen\": -1,", "-1 is no darkness")]
    [InlineData("S-WALL-PATT", "S-WALL/PATT", "is no name in a drawing")]
    [InlineData("S-WALL-PATT", "S\\u202eWALL", "the control character U+202E")]
    [InlineData("S-WALL-PATT", "S\\n0\\nSECTION", "the control character U+000A")]
    [InlineData("\"linetype\": \"Continuous\", \"weight\": 0.13, \"screen\": 45", "\"linetype\": \"WAVY\", \"weight\": 0.13, \"screen\": 45", "\"WAVY\" is not in the list")]
    [InlineData("\"pattern\": [4, -1.6]", "\"pattern\": [-4, -1.6]", "a pattern needs a dash")]
    [InlineData("\"pattern\": [4, -1.6]", "\"pattern\": [4]", "a pattern has 2 to 12 lengths")]
    [InlineData("\"name\": \"HIDDEN\"", "\"name\": \"DASHED\"", "is given twice")]
    [InlineData("\"name\": \"HIDDEN\"", "\"name\": \"bylayer\"", "is built in")]
    [InlineData("\"screen\": 45,", "\"screen\": 45, \"colour\": 3,", "unknown key \"colour\"")]
    [InlineData("\"layers\": {", "\"layers\": { \"Fil\": {\"name\": \"X\", \"color\": 1, \"linetype\": \"Continuous\", \"weight\": 0.13, \"screen\": 45, \"description\": \"\"},", "no layer role is named \"Fil\"")]
    [InlineData("\"weight\": 0.13, \"screen\": 45,", "\"screen\": 45,", "\"weight\" is missing")]
    [InlineData("S-WALL-PATT", "S-WALL-FACE", "is given otherwise for")]
    public void A_layer_list_is_held_to_what_a_drawing_takes_at_its_line(string from, string to, string fault)
    {
        using var temp = new TempFolder();
        Assert.Contains(from, Layers, StringComparison.Ordinal);
        int at = Layers.IndexOf(from, StringComparison.Ordinal);
        File.WriteAllText(temp.File("own.json"), Layers[..at] + to + Layers[(at + from.Length)..]);
        Wall(temp, "sheets: {layers: own.json}\n");

        CliRun run = CliRun.With(temp.Path, null, "check", "wall.yaml");

        Assert.Equal(2, run.Code);
        string line = Assert.Single(run.Error.Split('\n'), l => l.Contains(fault, StringComparison.Ordinal));
        int expected = Layers[..at].Count(c => c == '\n') + 1;
        if (!fault.Contains("otherwise", StringComparison.Ordinal))
            Assert.StartsWith(FormattableString.Invariant($"own.json:{expected}:"), line, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fault_of_every_named_file_comes_in_one_run()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("own.json"), Layers.Replace("\"color\": 8,", "\"color\": 0,", StringComparison.Ordinal));
        File.WriteAllText(temp.File("notes.json"), "[{\"heading\": \"A\", \"notes\": [\"fine\",\n \"tab\\u0009\", \"turned \\u202e\"]}]");
        File.WriteAllText(temp.File("pay.yaml"), "name: x\n");
        File.WriteAllText(temp.File("title.dxf"), "no drawing");
        Wall(temp, "sheets: {layers: own.json, notes: notes.json, title_block: title.dxf}\npay_items: pay.yaml\n");
        CliRun run = CliRun.With(temp.Path, null, "check", "wall.yaml");
        Assert.Equal(2, run.Code);
        Assert.True(run.Error.Split("0 is no colour").Length > 3);
        Assert.Contains("notes.json:2:2: error T04: the text holds the control character U+0009", run.Error, StringComparison.Ordinal);
        Assert.Contains("U+202E", run.Error, StringComparison.Ordinal);
        Assert.Contains("title.dxf:1:1: error T02", run.Error, StringComparison.Ordinal);
        Assert.Contains("pay.yaml:", run.Error, StringComparison.Ordinal);
    }

    /// <summary>What only drawing finds out, check finds out too.</summary>
    [Fact]
    public void Check_finds_what_build_finds()
    {
        using var temp = new TempFolder();
        Wall(temp, "sheets: {size: ANSI B, scale: 50}\n");
        CliRun check = CliRun.With(temp.Path, null, "check", "wall.yaml"), build = CliRun.With(temp.Path, null, "build", "wall.yaml", "--out", "out");
        Assert.Equal(build.Code, check.Code);
        string Findings(CliRun run) => Assert.Single(run.Out.Split('\n'), l => l.StartsWith("  findings", StringComparison.Ordinal));
        Assert.Equal(Findings(build), Findings(check));
    }

    [Fact]
    public void A_place_is_that_of_the_key_and_not_of_a_word_that_looks_like_it()
    {
        ReadResult read = ProjectReader.ReadText("# pay_items: x\nformat: 1\nproject: {title: 'pay_items: y'}\npay_items: z\n", "a.yaml");
        Assert.Equal(new SourceSpot("a.yaml", 4, 1, 9), read.SpotOf("a.yaml", "pay_items"));
        Assert.Equal(new SourceSpot("a.yaml", 3, 11, 5), read.SpotOf("a.yaml", "project", "title"));
        Assert.Equal(new SourceSpot("a.yaml", 1, 1), read.SpotOf("a.yaml", "sheets", "layers"));
    }

    private static string Wall(TempFolder temp, string more)
    {
        string[] lines = [.. File.ReadAllLines(Repository.DemoFile("quarry-lane"))
            .Where(l => !l.StartsWith("pay_items:", StringComparison.Ordinal) && !l.StartsWith("sheets:", StringComparison.Ordinal))];
        string text = string.Join('\n', lines) + "\n" + more;
        File.WriteAllText(temp.File("wall.yaml"), text);
        return text;
    }
}
