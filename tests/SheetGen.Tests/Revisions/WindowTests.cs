using SheetGen.Drawing.Review;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Tests.Placing;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>The room to turn of a nail: each direction is what the checker says of the layout with only that nail turned.</summary>
public sealed class WindowTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    /// <summary>All directions of several nails of a small wall, each asked of the checker itself.</summary>
    [Theory]
    [InlineData("A-1-01", 100)]
    [InlineData("A-2-02", 100)]
    [InlineData("A-1-03", 0)]
    [InlineData("A-2-03", 0)]
    public void Each_direction_equals_a_check_with_only_that_nail_turned(string mark, int least)
    {
        (WallProject project, NailLayout layout) = Small;
        Nail nail = layout.Nails.Single(n => n.Mark == mark);
        TurnWindow window = new TurnWindows(project, layout).Of(nail);
        RedirectRules rules = project.Rules.Redirect;
        Assert.Equal((2 * rules.Maximum / rules.Step + 1) * ((rules.GreatestInclination - rules.LeastInclination) / rules.Step + 1), window.Cells.Count);
        int seen = window.Cells.Count(cell => IsAsChecked(project, layout, nail, cell));
        Assert.InRange(seen, Math.Max(1, least), window.Cells.Count - 1);
    }

    /// <summary>Some directions of nails of a longer wall.</summary>
    [Theory]
    [InlineData("A-2-04")]
    [InlineData("A-4-05")]
    [InlineData("A-1-01")]
    public void Some_directions_of_a_longer_wall_equal_a_check(string mark)
    {
        Nail nail = Wall.Layout.Nails.Single(n => n.Mark == mark);
        TurnWindow window = new TurnWindows(Wall.Project, Wall.Layout).Of(nail);
        int seen = window.Cells.Where((_, i) => i % 29 == 0).Count(cell => IsAsChecked(Wall.Project, Wall.Layout, nail, cell));
        Assert.InRange(seen, 2, window.Cells.Count / 29);
    }

    private static (WallProject Project, NailLayout Layout) Small { get; } = MakeSmall();

    private static (WallProject, NailLayout) MakeSmall()
    {
        var wall = new PlacingWall
        {
            Length = 12,
            Top = "[[0, 108], [END, 108]]",
            Blocks = ["obstructions:", "  - {name: S1, kind: shaft, at: {station: 6, offset: 7}, diameter: 3, top: 120, bottom: 80}",
                "  - {name: ROW, kind: boundary, points: [{station: -20, offset: 19.5}, {station: 40, offset: 19.5}]}"],
        };
        NailLayout layout = wall.Layout;
        return (Drawing.SampleLayout.Read(wall.Yaml) with { Walls = [.. layout.Nails.Select(n => n.Wall).Distinct(ReferenceEqualityComparer.Instance).Cast<Wall>()] }, layout);
    }

    /// <summary>Holds a direction against the checker; true where something is too close there.</summary>
    internal static bool IsAsChecked(WallProject project, NailLayout layout, Nail nail, TurnCell cell)
    {
        Nail turned = nail with
        {
            Splay = cell.Splay,
            Inclination = cell.Inclination,
            Hole = new Face(nail.Wall).HoleAt(nail.Along, nail.Elevation, cell.Splay, cell.Inclination, nail.Length, nail.HoleDiameter, project.Rules.Drift),
        };
        NailLayout one = layout with { Nails = [.. layout.Nails.Select(n => n == nail ? turned : n)] };
        Finding[] close = [.. Checker.Check(project, one).Findings.Where(f => f.Nails.Contains(nail.Mark)
            && f.Code is FindingCode.NailNail or FindingCode.NailObstruction or FindingCode.NailBoundary or FindingCode.NailFace)];
        TurnState expected = close.Any(f => f.Clear < 0) ? TurnState.Blocked : close.Length > 0 ? TurnState.Near : TurnState.Free;
        Assert.Equal((cell.Splay, cell.Inclination, expected), (cell.Splay, cell.Inclination, cell.State));
        if (close.Length == 0)
            return false;
        double worst = close.Min(f => f.Clear!.Value - f.Required!.Value);
        // Two may be equally close.
        Finding[] named = [.. close.Where(f => f.Clear!.Value - f.Required!.Value < worst + 1e-9)];
        Assert.Contains(named, f => Math.Abs(f.Clear!.Value - cell.Clear) < 1e-9 && (f.Obstruction ?? f.Nails.First(n => n != nail.Mark)) == cell.Other);
        return true;
    }

    [Fact]
    public void The_nearest_free_directions_and_what_a_shorter_nail_opens_follow_from_the_directions()
    {
        var windows = new TurnWindows(Wall.Project, Wall.Layout);
        Nail nail = Wall.Layout.Nails.Single(n => n.Mark == "A-2-04");
        TurnWindow w = windows.Of(nail);
        double Away(TurnCell c) => Math.Abs(c.Splay - nail.Splay) + Math.Abs(c.Inclination - nail.Inclination);
        TurnCell[] up = [.. w.Cells.Where(c => c.State == TurnState.Free && c.Splay > nail.Splay)];
        Assert.Equal(up.Length == 0 ? -1 : up.Min(Away), w.UpStation is { } found ? Away(found) : -1, 6);
        Assert.NotEmpty(w.Shorter);
        foreach (ShorterNail shorter in w.Shorter)
            Assert.Equal(shorter.Free, w.Cells.Count(c => windows.Cell(nail, shorter.Length, c.Splay, c.Inclination).State == TurnState.Free));
        Assert.Equal(w.Cells.Count - w.FreeCount, w.InTheWay.Sum(o => o.Directions));
    }

    [Fact]
    public void A_booklet_has_a_page_a_nail_and_each_names_its_nail()
    {
        var windows = new TurnWindows(Wall.Project, Wall.Layout);
        Nail[] nails = [.. Wall.Layout.Nails.Take(6)];
        SheetSet set = WindowPages.Compose(nails.Select(windows.Of), ReviewInfo.Of(Wall.Project, "0"), Checker.Check(Wall.Project, Wall.Layout));
        Assert.Equal(nails.Select(n => n.Mark), set.Sheets.Select(s => s.Title));
        Assert.All(set.Sheets, s => Assert.Contains(s.Paper.OfType<SheetGen.Drawing.Primitives.Text>(), t => t.Value.Contains("Nail " + s.Title, StringComparison.Ordinal)));
    }
}
