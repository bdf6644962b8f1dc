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
        Assert.Equal(["new", "new/wall", "new/wall/asbuilt.csv", "new/wall/sheetgen.schema.json", "new/wall/wall.yaml"], temp.Listing());
        Assert.Contains("#", File.ReadAllText(temp.File("new/wall/wall.yaml")), StringComparison.Ordinal);

        Assert.Equal("mark,station,elevation,splay,inclination,length,grout,date,remarks\r\n", File.ReadAllText(temp.File("new/wall/asbuilt.csv")));

        CliRun built = CliRun.With(temp.Path, null, "build", "new/wall/wall.yaml", "--out", "out");
        Assert.True(built.Code == 0, built.Error + built.Out);
        Assert.Contains("nails.csv", temp.Listing("out"));
    }

    [Theory]
    [InlineData("bridge")]
    [InlineData("pipe")]
    [InlineData("curve")]
    [InlineData("metric")]
    public void A_starter_near_to_the_job_checks_as_it_is(string kind)
    {
        using var temp = new TempFolder();
        CliRun started = CliRun.With(temp.Path, null, "start", "job", "--kind", kind);
        Assert.Equal((0, ""), (started.Code, started.Error));
        Assert.StartsWith("# yaml-language-server: $schema=sheetgen.schema.json", File.ReadAllText(temp.File("job/wall.yaml")), StringComparison.Ordinal);
        Assert.StartsWith("{", File.ReadAllText(temp.File("job/sheetgen.schema.json")), StringComparison.Ordinal);

        CliRun checkedRun = CliRun.With(temp.Path, null, "check", "job");
        Assert.True(checkedRun.Code == 0, checkedRun.Error + checkedRun.Out);
        Assert.Equal("", checkedRun.Problems);
    }

    [Fact]
    public void A_kind_that_does_not_exist_names_those_that_do()
    {
        using var temp = new TempFolder();
        CliRun run = CliRun.With(temp.Path, null, "start", "job", "--kind", "tunnel");
        Assert.Equal(2, run.Code);
        Assert.Contains("bridge", run.Error, StringComparison.Ordinal);
        Assert.Empty(temp.Listing());
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
