using SheetGen.Drawing.Review;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using Xunit;

namespace SheetGen.Tests.Revisions;

/// <summary>The room to turn of a nail: each direction is what the checker says of the layout with only that nail turned.</summary>
public sealed class WindowTests
{
    private static readonly EditedWall Wall = EditedWall.Shared;

    [Theory]
    [InlineData("A-2-04")]
    [InlineData("A-4-05")]
    [InlineData("A-1-01")]
    public void Each_direction_equals_a_check_with_only_that_nail_turned(string mark)
    {
        Nail nail = Wall.Layout.Nails.Single(n => n.Mark == mark);
        TurnWindow window = new TurnWindows(Wall.Project, Wall.Layout).Of(nail);
        var face = new Face(nail.Wall);
        int seen = 0;
        for (int i = 0; i < window.Cells.Count; i += 11)
        {
            TurnCell cell = window.Cells[i];
            Nail turned = nail with
            {
                Splay = cell.Splay,
                Inclination = cell.Inclination,
                Hole = face.HoleAt(nail.Along, nail.Elevation, cell.Splay, cell.Inclination, nail.Length, nail.HoleDiameter, Wall.Project.Rules.Drift),
            };
            NailLayout layout = Wall.Layout with { Nails = [.. Wall.Layout.Nails.Select(n => n.Mark == mark ? turned : n)] };
            Finding[] close = [.. Checker.Check(Wall.Project, layout).Findings.Where(f => f.Nails.Contains(mark)
                && f.Code is FindingCode.NailNail or FindingCode.NailObstruction or FindingCode.NailBoundary or FindingCode.NailFace)];
            TurnState expected = close.Any(f => f.Clear < 0) ? TurnState.Blocked : close.Length > 0 ? TurnState.Near : TurnState.Free;
            Assert.Equal((cell.Splay, cell.Inclination, expected), (cell.Splay, cell.Inclination, cell.State));
            if (close.Length > 0)
            {
                Finding worst = close.MinBy(f => f.Clear!.Value - f.Required!.Value)!;
                Assert.Equal(worst.Clear!.Value, cell.Clear, 9);
                Assert.Equal(worst.Obstruction ?? worst.Nails.First(n => n != mark), cell.Other);
                seen++;
            }
        }
        Assert.InRange(seen, 5, window.Cells.Count / 11);
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
        SheetSet set = WindowPages.Compose(nails.Select(windows.Of), ReviewInfo.Of(Wall.Project, "0", TemplateReader.Default()), Checker.Check(Wall.Project, Wall.Layout));
        Assert.Equal(nails.Select(n => n.Mark), set.Sheets.Select(s => s.Title));
        Assert.All(set.Sheets, s => Assert.Contains(s.Paper.OfType<SheetGen.Drawing.Primitives.Text>(), t => t.Value.Contains("Nail " + s.Title, StringComparison.Ordinal)));
    }
}
