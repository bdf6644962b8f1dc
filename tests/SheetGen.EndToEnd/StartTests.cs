using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

public sealed class StartTests
{
    [Fact]
    public void The_starter_project_builds_as_it_is()
    {
        using var temp = new TempFolder();
        CliRun started = CliRun.With(temp.Path, null, "start", "new/wall");
        Assert.Equal(0, started.Code);
        Assert.Equal(["new", "new/wall", "new/wall/wall.yaml"], temp.Listing());
        Assert.Contains("#", File.ReadAllText(temp.File("new/wall/wall.yaml")), StringComparison.Ordinal);

        CliRun built = CliRun.With(temp.Path, null, "build", "new/wall/wall.yaml", "--out", "out");
        Assert.True(built.Code == 0, built.Error + built.Out);
        Assert.Contains("nails.csv", temp.Listing("out"));
    }

    [Fact]
    public void A_file_that_is_there_is_never_overwritten()
    {
        using var temp = new TempFolder();
        File.WriteAllText(temp.File("wall.yaml"), "mine");
        CliRun run = CliRun.With(temp.Path, null, "start", ".");
        Assert.Equal(2, run.Code);
        Assert.Equal("mine", File.ReadAllText(temp.File("wall.yaml")));
    }
}
