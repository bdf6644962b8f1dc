using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>What a new user types and reads in the first hour.</summary>
public sealed class FirstHourTests
{
    private static readonly string First = Path.Combine(Repository.Root, "docs", "cookbook", "06-a-revision.yaml");

    [Theory]
    [InlineData("sheetgen: there is no command \"bild\": did you mean build?", "bild", "wall.yaml", "-o", "out")]
    [InlineData("sheetgen: there is no command \"chekc\": did you mean check?", "chekc", "wall.yaml")]
    [InlineData("sheetgen: say what to do with wall.yaml: \"sheetgen check wall.yaml\", or \"sheetgen build wall.yaml --out sheets\"", "wall.yaml")]
    [InlineData("sheetgen: two is a folder without wall.yaml; name one of a.yaml, b.yaml", "check", "two")]
    [InlineData("sheetgen: none is a folder without a project file; \"sheetgen start none\" writes one", "build", "none", "-o", "out")]
    [InlineData("sheetgen: --picture takes a file that ends in .svg or .png, not wall.jpg", "check", "wall.yaml", "--picture", "wall.jpg")]
    [InlineData("sheetgen: check writes no files: --open needs --picture", "check", "wall.yaml", "--open")]
    public void A_slip_of_the_command_line_is_named(string message, params string[] arguments)
    {
        using var temp = new TempFolder();
        File.Copy(First, temp.File("wall.yaml"));
        Directory.CreateDirectory(temp.File("none"));
        Directory.CreateDirectory(temp.File("two"));
        File.Copy(First, temp.File("two/a.yaml"));
        File.Copy(First, temp.File("two/b.yaml"));

        CliRun run = CliRun.With(temp.Path, null, arguments);

        Assert.Equal(2, run.Code);
        Assert.Equal(message, run.Error.ReplaceLineEndings("\n").Split('\n')[0]);
        Assert.Equal("", run.Out);
    }

    [Fact]
    public void Help_may_be_asked_for_in_a_word()
    {
        Assert.Equal(CliRun.Of("--help").Out, CliRun.Of("help").Out);
        Assert.Equal(CliRun.Of("build", "--help").Out, CliRun.Of("help", "build").Out);
    }

    [Fact]
    public void The_summary_says_first_what_was_understood()
    {
        CliRun run = CliRun.Of("check", First);

        string[] lines = [.. run.Out.ReplaceLineEndings("\n").Split('\n').SkipWhile(l => l.Length > 0).Skip(1)];
        Assert.Equal(
            [
                "Mill Lane wall",
                "  Wall 1     212+50.00 to 213+10.00 (60.00 ft); soil LEFT of the line looking up-station (north-west), face looks south-east",
                "  height     16.0 ft, top 486.0, bottom 470.0",
                "  section A  212+50.00 to 213+10.00: 5.00' H x 4.33' V (5.00' MAX), 4 rows, level; 24 ft at 15 deg down, #8 Gr 75, hole 6 in",
                "  S1         shaft 42 in at 212+78.50: 7.25 ft behind the face, elevation 430.00 to 480.00",
                "  defaults   clearance to obstructions 0.5 ft, between nails 0.5 ft, to boundaries 1 ft, field tolerance 10 deg, first nail at most 2.5 ft below the top, last nail at most 3 ft above the bottom, heads at least 1 ft from every edge",
                "",
            ],
            lines.Take(7));
    }

    [Fact]
    public void A_second_build_into_a_folder_says_what_changed()
    {
        using var temp = new TempFolder();
        File.Copy(First, temp.File("wall.yaml"));
        Assert.DoesNotContain("since last", CliRun.With(temp.Path, null, "build", ".", "-o", "out").Out, StringComparison.Ordinal);

        CliRun same = CliRun.With(temp.Path, null, "build", ".", "-o", "out");
        Assert.Contains("  since last nothing: the same nails and findings as in the last build into this folder\n", same.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);

        int before = File.ReadAllLines(temp.File("out/nails.csv")).Length - 1;
        File.WriteAllText(temp.File("wall.yaml"), File.ReadAllText(First).Replace("lengths: 24", "lengths: 26", StringComparison.Ordinal));
        CliRun longer = CliRun.With(temp.Path, null, "build", ".", "-o", "out");
        Assert.Contains(FormattableString.Invariant($"  since last nails {before} -> {before}: 0 new, 0 gone, {before} moved, turned or of another length ("), longer.Out, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"             length {before * 24:#,##0.##} -> {before * 26:#,##0.##} ft (+{before * 2:#,##0.##})"), longer.Out, StringComparison.Ordinal);
        Assert.Matches(@"\n             findings \d+ -> \d+: \d+ new, \d+ gone \(each change: sheetgen compare ISSUED-SET NEW-SET\)\r?\n", longer.Out);
    }

    [Theory]
    [InlineData("wall.svg", "<?xml")]
    [InlineData("wall.png", "\u0089PNG")]
    public void A_picture_is_written_on_demand(string name, string start)
    {
        using var temp = new TempFolder();
        File.Copy(First, temp.File("wall.yaml"));

        CliRun run = CliRun.With(temp.Path, null, "check", "wall.yaml", "--picture", name);

        Assert.Equal((0, ""), (run.Code, run.Error));
        Assert.Equal([name, "wall.yaml"], temp.Listing());
        Assert.StartsWith(start, System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(temp.File(name))), StringComparison.Ordinal);
    }
}
