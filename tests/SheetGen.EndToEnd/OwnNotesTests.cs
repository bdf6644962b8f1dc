using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Notes of the user's own beside the project file.</summary>
public sealed class OwnNotesTests
{
    [Fact]
    public void Stand_on_the_sheets()
    {
        using var temp = new TempFolder();
        CliRun run = Build(temp, """[{"heading": "OURS", "notes": ["PROJECT {number}."]}]""");

        Assert.Equal(0, run.Code);
        Assert.Contains("PROJECT QL-07.", File.ReadAllText(temp.File("out/sheets.dxf")), StringComparison.Ordinal);
    }

    [Fact]
    public void Are_a_problem_with_place_and_cure_where_they_are_wrong()
    {
        using var temp = new TempFolder();
        CliRun run = Build(temp, """[{"heading": "OURS"}]""");

        Assert.Equal(2, run.Code);
        Assert.Contains("own.json:1:1: error T04", run.Error + run.Out, StringComparison.Ordinal);
        Assert.False(Directory.Exists(temp.File("out")));
    }

    private static CliRun Build(TempFolder temp, string notes)
    {
        string wall = File.ReadAllText(Repository.DemoFile("quarry-lane"));
        File.WriteAllText(temp.File("wall.yaml"), wall.Replace("sheets: {", "sheets: {notes: own.json, ", StringComparison.Ordinal));
        File.WriteAllText(temp.File("own.json"), notes);
        return CliRun.Of("build", temp.File("wall.yaml"), "--out", temp.File("out"));
    }
}
