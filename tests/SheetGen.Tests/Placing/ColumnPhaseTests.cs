using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Columns that are counted from another first one keep the grid's own rules, and the best of them are no worse than centred ones.</summary>
public sealed class ColumnPhaseTests
{
    /// <summary>Two shafts right where two usual columns point, close behind the face: 0.75 + 0.25 + 0.5 ft keep clear of half a spacing, 1.75 ft.</summary>
    internal static PlacingWall InTheWay(double length) => new()
    {
        Length = length,
        Top = "[[0, 107], [END, 107]]",
        Blocks =
        [
            "obstructions:",
            "  - {name: S1, kind: shaft, at: {station: 8.75, offset: 2.2}, diameter: 1.5, top: 110, bottom: 80}",
            "  - {name: S2, kind: shaft, at: {station: 19.25, offset: 2.2}, diameter: 1.5, top: 110, bottom: 80}",
            "rules:",
            "  redirect: {maximum: 5, field_tolerance: 5}",
            "  shift_step: 1.75",
        ],
    };

    [Theory]
    [InlineData(28)]
    [InlineData(30)]
    [InlineData(33.3)]
    public void Moved_columns_keep_spacing_gap_edge_and_cover(double length)
    {
        WallProject project = new PlacingWall { Length = length, Top = "[[0, 107], [END, 107]]" }.Project;
        double spacing = project.Walls[0].Sections[0].HorizontalSpacing;
        int moved = 0;
        double[] usual = Stations(project);
        for (double first = 0; first < spacing - 1e-9; first += 0.25)
        {
            WallProject other = ColumnPhases.From(project, 0, 0, first);
            double[] stations = Stations(other);
            Assert.All(stations.Zip(stations.Skip(1), (a, b) => b - a), gap => Assert.InRange(gap, project.Rules.MinGap - 0.011, spacing + 0.021));
            Assert.True(stations[0] >= project.Rules.EdgeMin - 0.011 && stations[^1] <= length - project.Rules.EdgeMin + 0.011, $"first {first}: {stations[0]} to {stations[^1]}");
            Assert.True(stations[0] <= spacing / 2 + 0.021 && length - stations[^1] <= spacing / 2 + 0.021, $"first {first}: ends not covered");
            NailLayout layout = Placer.Place(other, new PlacingOptions());
            Assert.DoesNotContain(Checker.Check(other, layout).Findings, f => f.Code is FindingCode.Cover or FindingCode.Spacing or FindingCode.Edge);
            moved += stations.SequenceEqual(usual) ? 0 : 1;
        }
        Assert.True(moved >= 8, $"only {moved} places moved a column");
        Assert.Equal(usual, Stations(ColumnPhases.From(project, 0, 0, null)));
    }

    [Fact]
    public void The_best_columns_leave_fewer_nails_noted_or_unresolved_where_shafts_stand_in_the_way()
    {
        WallProject project = InTheWay(28).Project;
        Assert.Same(project, ColumnPhases.Choose(project));
        Wall wall = project.Walls[0];
        WallProject asked = project with { Walls = [wall with { Sections = [wall.Sections[0] with { HasBestColumns = true }] }] };
        var stages = new HelpTests.Stages();
        WallProject chosen = ColumnPhases.Choose(asked, stages);
        // Centred columns and twelve places over one spacing, four at once.
        Assert.Equal(["section A, places 1 to 4 of 13", "section A, places 5 to 8 of 13", "section A, places 9 to 12 of 13", "section A, places 13 to 13 of 13"], stages.Told.SkipLast(1));
        LayoutScore usual = Placer.Place(project, new PlacingOptions()).Score;
        NailLayout best = Placer.Place(chosen, new PlacingOptions());
        Assert.NotNull(chosen.Walls[0].Sections[0].FirstColumn);
        Assert.True((best.Score.Unresolved.Found, best.Score.Noted.Found).CompareTo((usual.Unresolved.Found, usual.Noted.Found)) < 0, $"{best.Score} against {usual}");
        Assert.Contains(best.Notes, n => n.Contains("from its down-station end (columns: best)", StringComparison.Ordinal));
    }

    [Fact]
    public void Columns_that_are_given_are_told_and_centred_ones_are_not()
    {
        Assert.Equal(["section A: the first column of each row stands 1.00 ft from its down-station end"], new PlacingWall { Length = 14, Columns = "1" }.Layout.Notes);
        Assert.Empty(new PlacingWall { Length = 14 }.Layout.Notes);
    }

    private static double[] Stations(WallProject project) =>
        [.. RowTasks.Make(new Site(project))[0].Row.Places.Select(p => p.Number - project.Walls[0].Sections[0].Start)];
}
