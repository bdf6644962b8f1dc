using System.Text.Json;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

public sealed class PrinterTests
{
    [Fact]
    public void On_a_terminal_a_caret_stands_under_the_place()
    {
        ReadResult result = ProjectReader.ReadText(BaseWall.With("    facing: {shotcrete: 4 in,", "    facing: {shotcrete: 4 inn,"), "wall.yaml");

        Assert.Equal(
            "wall.yaml:19:25: error R14: \"shotcrete\" is not a length: \"4 inn\"\n"
            + "  19 |     facing: {shotcrete: 4 inn, kind: precast panels}\n"
            + "     |                         ^^^^^\n"
            + "     = unknown unit \"inn\"; did you mean in?\n",
            ProblemPrinter.WithSource(Assert.Single(result.Problems), result.Text));
    }

    [Fact]
    public void A_second_place_is_named()
    {
        ReadResult result = ProjectReader.ReadText(BaseWall.With("name: Cap", "name: S1"), "wall.yaml");

        Assert.EndsWith("     = rename one of them\n     = see also wall.yaml:40:12\n", ProblemPrinter.WithSource(Assert.Single(result.Problems), result.Text));
    }

    [Theory]
    [InlineData("a:\tx b", 6, "a:\tx b", "  \t  ^")]
    [InlineData("e\u0301te\u0301: x", 8, "e\u0301te\u0301: x", "     ^")]
    [InlineData("\U0001F600: x", 5, "\U0001F600: x", "   ^")]
    public void Tabs_accents_and_wide_characters_keep_the_caret_in_its_place(string line, int column, string shown, string caret)
    {
        var problem = new Problem(Severity.Error, "R10", "m", new SourceSpot("f", 1, column));

        Assert.Equal($"f:1:{column}: error R10: m\n  1 | {shown}\n    | {caret}\n", ProblemPrinter.WithSource(problem, line));
    }

    [Fact]
    public void A_long_line_is_cut_to_the_place()
    {
        var problem = new Problem(Severity.Error, "R10", "m", new SourceSpot("f", 1, 5001));
        string form = ProblemPrinter.WithSource(problem, new string('a', 5000) + "X" + new string('b', 5000));

        string[] lines = form.Split('\n');
        Assert.Equal('X', lines[1][lines[2].IndexOf('^')]);
        Assert.True(lines[1].Length < 200);
    }

    [Fact]
    public void The_json_form_has_every_problem_with_its_places()
    {
        ReadResult result = ProjectReader.ReadText(BaseWall.With("name: Cap", "name: S1"), "wall.yaml");

        using JsonDocument json = JsonDocument.Parse(ProblemPrinter.Json(result.Problems));
        JsonElement problem = Assert.Single(json.RootElement.EnumerateArray());
        Assert.Equal(("error", "R20", 41, 40), (problem.GetProperty("severity").GetString(), problem.GetProperty("code").GetString(), problem.GetProperty("place").GetProperty("line").GetInt32(), problem.GetProperty("other_place").GetProperty("line").GetInt32()));
        Assert.DoesNotContain('\r', ProblemPrinter.Json(result.Problems));
    }
}
