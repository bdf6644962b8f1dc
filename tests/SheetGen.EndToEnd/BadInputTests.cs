using System.Text.Json;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>A faulty project file: every fault on the error stream, exit 2, nothing written.</summary>
public sealed class BadInputTests
{
    [Fact]
    public void All_faults_are_told_and_an_old_set_stays_as_it_was()
    {
        using var temp = new TempFolder();
        string text = File.ReadAllText(Repository.DemoFile("quarry-lane"))
            .Replace("retained_side: left", "retained_side: up", StringComparison.Ordinal)
            .Replace("vertical_spacing: 1.5", "vertical_spacing: wide", StringComparison.Ordinal)
            .Replace("pattern: staggered", "patern: staggered", StringComparison.Ordinal);
        File.WriteAllText(temp.File("bad.yaml"), text);
        Directory.CreateDirectory(temp.File("out"));
        File.WriteAllText(temp.File("out/nails.csv"), "old");

        CliRun run = CliRun.With(temp.Path, null, "build", "bad.yaml", "--out", "out");

        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Out);
        string[] lines = run.Error.Split('\n');
        foreach (string word in new[] { "up", "wide", "patern" })
            Assert.Contains(lines, l => l.StartsWith("bad.yaml:", StringComparison.Ordinal) && l.Contains(word, StringComparison.Ordinal));
        Assert.Matches(@"(?m)^bad\.yaml:\d+:\d+: error [A-Z]\d+: ", run.Error);
        Assert.Equal(["bad.yaml", "out", "out/nails.csv"], temp.Listing());
        Assert.Equal("old", File.ReadAllText(temp.File("out/nails.csv")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\0\0\u0001")]
    [InlineData("format: 1\n\twalls: []\n")]
    [InlineData("- just\n- a\n- list\n")]
    [InlineData("a: &a [x]\nb: &b [*a, *a, *a, *a]\nc: &c [*b, *b, *b, *b]\nd: [*c, *c, *c, *c]\n")]
    [InlineData("format: 99\n")]
    public void Odd_files_are_refused_with_a_place(string text)
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("odd.yaml"), text);
        CliRun run = CliRun.With(temp.Path, null, "build", "odd.yaml", "--out", "out");
        Assert.Equal(2, run.Code);
        Assert.Matches(@"(?m)^odd\.yaml:\d+:\d+: ", run.Error);
        Assert.Equal(["odd.yaml"], temp.Listing());
    }

    [Fact]
    public void Problems_come_as_json_where_asked()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("odd.yaml"), "format: 1\nwals: []\n");
        CliRun run = CliRun.With(temp.Path, null, "check", "odd.yaml", "--json");
        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Out);
        using JsonDocument problems = JsonDocument.Parse(run.Error);
        Assert.Contains("wals", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_come_as_json_where_asked()
    {
        CliRun run = CliRun.Of("check", Repository.DemoFile("quarry-lane"), "--json");
        Assert.Equal(0, run.Code);
        using JsonDocument findings = JsonDocument.Parse(run.Out);
        Assert.Equal(1, findings.RootElement.GetProperty("format").GetInt32());
    }
}
