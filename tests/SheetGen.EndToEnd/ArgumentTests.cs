using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Wrong and hostile command lines end in a message on the error stream, exit 2, and nothing written.</summary>
public sealed class ArgumentTests
{
    public static TheoryData<string[], string> Wrong => new()
    {
        { [], "command" },
        { ["biuld", "wall.yaml"], "biuld" },
        { ["build"], "FILE" },
        { ["build", "wall.yaml"], "--out" },
        { ["build", "wall.yaml", "--out"], "--out" },
        { ["build", "wall.yaml", "--out", ""], "--out" },
        { ["build", "wall.yaml", "--out", "a", "--out", "b"], "--out" },
        { ["build", "wall.yaml", "other.yaml", "--out", "a"], "other.yaml" },
        { ["build", "wall.yaml", "--out", "a", "--pruve"], "--pruve" },
        { ["build", "wall.yaml", "--out", "a", "--prove=perhaps"], "perhaps" },
        { ["build", "@wall.rsp", "--out", "a"], "@wall.rsp" },
        { ["build", "", "--out", "a"], "" },
        { ["build", "no such file.yaml", "--out", "a"], "no such file.yaml" },
        { ["build", "no\nsuch\u001b[31mfile", "--out", "a"], "" },
        { ["build", "wall.yaml/", "--out", "a"], "wall.yaml" },
        { ["build", "wall.yaml", "--out", "wall.yaml"], "wall.yaml" },
        { ["build", "wall.yaml", "--out", "wall.yaml/in/it"], "wall.yaml" },
        { ["check"], "FILE" },
        { ["check", "wall.yaml", "--out", "a"], "--out" },
        { ["check", "no such file.yaml"], "no such file.yaml" },
        { ["start"], "DIR" },
        { ["start", "wall.yaml"], "wall.yaml" },
        { ["start", "."], "never overwrites" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Wrong_arguments(string[] arguments, string named)
    {
        using var temp = new TempFolder();
        File.Copy(Repository.DemoFile(Repository.DemoNames.First()), temp.File("wall.yaml"));
        byte[] before = File.ReadAllBytes(temp.File("wall.yaml"));
        CliRun run = CliRun.With(temp.Path, null, arguments);
        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Out);
        Assert.Contains(named, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Error);
        Assert.Equal(["wall.yaml"], temp.Listing());
        Assert.Equal(before, File.ReadAllBytes(temp.File("wall.yaml")));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    [InlineData("build", "--help")]
    [InlineData("check", "--help")]
    [InlineData("start", "-?")]
    public void Help_goes_to_the_output_with_examples_and_exit_codes(params string[] arguments)
    {
        CliRun run = CliRun.Of(arguments);
        Assert.Equal(0, run.Code);
        Assert.Equal("", run.Problems);
        string command = arguments[0].StartsWith('-') ? "build" : arguments[0];
        Assert.Contains($"\n  sheetgen {command} my-wall", run.Out, StringComparison.Ordinal);
        Assert.Contains("  2  ", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_names_every_command_and_option()
    {
        string help = CliRun.Of("--help").Out + CliRun.Of("build", "--help").Out;
        foreach (string word in new[] { "build <FILE>", "check <FILE>", "start <DIR>", "--out <DIR>", "--prove", "--json", "--version" })
            Assert.Contains(word, help, StringComparison.Ordinal);
    }

    [Fact]
    public void Version_is_three_numbers()
    {
        CliRun run = CliRun.Of("--version");
        Assert.Equal(0, run.Code);
        Assert.Matches(@"^\d+\.\d+\.\d+\r?\n$", run.Out);
    }
}
