using System.Text.RegularExpressions;
using SheetGen.Layout.Advice;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Advice;

/// <summary>Every file of the cookbook and every starter reads without a problem and lays out without an error.</summary>
public sealed class CookbookTests
{
    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Repository.PathOf("docs", "cookbook"), "*.yaml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Kinds => [.. StarterProject.Kinds];

    [Fact]
    public void There_are_eleven_tasks() => Assert.Equal(11, Files.Count);

    [Theory]
    [MemberData(nameof(Files))]
    public void A_file_of_the_cookbook_lays_out_without_a_problem(string file) => LaysOut(ProjectReader.Read(Repository.PathOf("docs", "cookbook", file)));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_starter_lays_out_without_a_problem_and_names_the_schema_first(string kind)
    {
        Assert.StartsWith("# yaml-language-server: $schema=sheetgen.schema.json\n", StarterProject.TextOf(kind), StringComparison.Ordinal);
        LaysOut(ProjectReader.ReadText(StarterProject.TextOf(kind), "wall.yaml"));
    }

    /// <summary>What the page shows of a file stands in the file, word for word.</summary>
    [Fact]
    public void The_page_shows_what_stands_in_the_files()
    {
        string page = Repository.Read("docs", "cookbook.md").ReplaceLineEndings("\n");
        string file = "";
        int blocks = 0;
        foreach (Match match in Regex.Matches(page, @"\(cookbook/(?<file>[\w.-]+)\)|```yaml\n(?<block>.*?)```", RegexOptions.Singleline))
        {
            if (match.Groups["file"].Success)
                file = Repository.Read("docs", "cookbook", match.Groups["file"].Value).ReplaceLineEndings("\n");
            else
                Assert.Contains(match.Groups["block"].Value, file + "\n", StringComparison.Ordinal);
            blocks += match.Groups["block"].Success ? 1 : 0;
        }
        Assert.Equal(11, blocks);
    }

    /// <summary>The first description, typed as it is spoken, gives the wall that was meant; figures by hand from the words.</summary>
    [Fact]
    public void The_first_description_is_the_wall_that_was_meant()
    {
        WallProject project = ProjectReader.ReadText(Repository.Read("docs", "cookbook", "01-first-wall.yaml"), "wall.yaml").Project!;
        Wall wall = project.Walls[0];
        Section section = wall.Sections[0];

        Assert.Equal(62.25 * Math.PI / 180, wall.LayoutLine.Pieces[0].Azimuth, 12);
        Assert.Equal(Turn.Left, wall.RetainedSide);
        Assert.Equal((21250.0, 21370.0), (wall.StationOf(wall.Start), wall.StationOf(wall.End)));
        Assert.Equal([486.0, 486.0, 482.5], wall.Top.Points.Select(p => p.Elevation));
        Assert.Equal((5.0, 5.0, 2.0, 15.0, 24.0, 0.5), (section.HorizontalSpacing, section.VerticalSpacing, section.TopRowDepth, section.Inclination, section.Lengths[0], section.HoleDiameter));
        Assert.Equal(("#8", 75, 0.05), (section.Bar.Size, section.Bar.Grade, section.TestNails.ProofShare));
        Assert.Equal(4.0 / 12, wall.Facing!.Shotcrete);
        Assert.Equal(["S1", "S2", "S3", "S4", "S5"], project.Obstructions.Select(o => o.Name));
        Assert.All(project.Obstructions, o => Assert.Equal((3.5, 480.0, 430.0), (o.Diameter, o.Top, o.Bottom)));
        Assert.Equal([20.0, 32.0, 44.0, 56.0, 68.0], project.Obstructions.Select(o => Math.Round(LayoutProjection.Locate(wall.LayoutLine, o.Shape[0].Plan).Along, 9)));
        Assert.All(project.Obstructions, o => Assert.Equal(-11, LayoutProjection.Locate(wall.LayoutLine, o.Shape[0].Plan).Right, 9));
        // The lowest finished grade of the last panel is 466.8, less 2 ft is 464.8, in steps of half a foot 464.5.
        Assert.Equal(464.5, wall.BottomSteps[^1].Elevation, 9);
    }

    private static void LaysOut(ReadResult read)
    {
        Assert.Equal([], read.Problems.Where(p => p.Severity != Severity.Notice).Select(ProblemPrinter.Plain));
        NailLayout layout = Placer.Place(read.Project!, new PlacingOptions());
        IEnumerable<Finding> findings = [.. Checker.Check(read.Project!, layout).Findings, .. LayoutAdvice.Of(read.Project!, layout)];
        Assert.Equal([], findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message));
        Assert.NotEmpty(layout.Nails);
    }
}
