using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

public sealed class StarterProjectTests
{
    [Fact]
    public void The_starter_project_reads_without_problems()
    {
        ReadResult result = ProjectReader.ReadText(StarterProject.Text, StarterProject.FileName);

        Assert.Empty(result.Problems);
        Assert.NotNull(result.Project);
    }

    [Fact]
    public void The_starter_project_is_the_file_in_templates() =>
        Assert.Equal(Repository.Read("templates", "starter", "wall.yaml"), StarterProject.Text);

    [Fact]
    public void The_rules_that_the_starter_project_shows_are_the_defaults()
    {
        string without = StarterProject.Text[..StarterProject.Text.IndexOf("\nrules:", StringComparison.Ordinal)];

        var shown = ProjectReader.ReadText(StarterProject.Text, "wall.yaml").Project!.Rules;
        var usual = ProjectReader.ReadText(without, "wall.yaml").Project!.Rules;

        Assert.Equal(usual with { Defaulted = shown.Defaulted }, shown);
    }
}
