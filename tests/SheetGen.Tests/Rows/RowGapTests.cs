using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Tests.Quantities;
using Xunit;
using static SheetGen.Tests.Rows.Typed;

namespace SheetGen.Tests.Rows;

/// <summary>Vertical gaps that are tried, and grid rows, worked by hand: top 120, first row 2 ft below it, edge_min 1, quantum 0.01.</summary>
public sealed class RowGapTests
{
    private static (Bay[] Bays, FaceOutline Outline) Make(TestWall wall, RowKind kind = RowKind.Level, Func<Rules, Rules>? rules = null)
    {
        (WallProject project, _) = wall.Make();
        Wall made = project.Walls[0] with { Sections = [.. project.Walls[0].Sections.Select(s => s with { Rows = kind })] };
        Rules kept = rules is null ? project.Rules : rules(project.Rules);
        var face = new Face(made);
        return ([.. Bay.Of(face, kept, project.Unit)], new FaceOutline(face, kept.EdgeMin));
    }

    private static double[] Gaps(TestWall wall, RowKind kind = RowKind.Level, double step = 0.25) =>
        [.. SectionRows.Gaps(Make(wall, kind, r => r with { ShiftStep = step }).Bays).Select(g => Math.Round(g, 9))];

    private static readonly double[] Plain = [4.5, 4.25, 4, 3.75, 3.5, 3.25];

    private static TestWall Stepped(double bottom) => new() { Spacing = 4.5, Steps = [new(0, 100), new(40, bottom)] };

    // From 118 down to 1 ft above the bottom; to 100 these are 17 ft: four gaps of 4.25. Gaps over two thirds of 4.5 ft only.
    [Fact]
    public void Gaps_go_down_to_two_thirds_of_the_spacing() => Assert.Equal(Plain, Gaps(new TestWall { Spacing = 4.5 }));

    // Without a gap that is among the plain ones: 13.5 ft are three whole spacings, and no gap is added (with four it would be 3.37).
    [Fact]
    public void A_height_of_whole_spacings_asks_for_no_smaller_gap() => Assert.Equal(Plain, Gaps(Stepped(103.5)));

    // 13.49 ft in three: 4.496, rounded down 4.49; 13.51 in four: 3.3775, rounded down 3.37; 4.2 and 3.1 ft in one; 2.9 ft in one is too small; 18 is above the first row.
    [Theory]
    [InlineData(103.51, 4.49)]
    [InlineData(103.49, 3.37)]
    [InlineData(112.8, 4.2)]
    [InlineData(113.9, 3.1)]
    [InlineData(114.1, null)]
    [InlineData(118, null)]
    public void A_step_adds_the_gap_that_just_fits_it(double bottom, double? added) =>
        Assert.Equal(Plain.Concat(added is { } gap ? [gap] : []).OrderDescending(), Gaps(Stepped(bottom)));

    // Told by the depth: the first row is 2 ft under the top, a bottom of 103.51 is 16.49 under the highest top.
    [Fact]
    public void Parallel_rows_count_the_height_from_the_highest_top() => Assert.Equal(Plain.Append(4.49).OrderDescending(), Gaps(Stepped(103.51), RowKind.Parallel));

    // Steps finer than a fortieth of the spacing are tried no finer than that: 4.5 / 40 = 0.1125, thirteen of them down to 3.0375.
    [Fact]
    public void At_most_a_fortieth_of_the_spacing_is_tried() =>
        Assert.Equal(Enumerable.Range(0, 14).Select(i => Math.Round(4.5 - 0.1125 * i, 9)).Append(4.25).OrderDescending(), Gaps(new TestWall { Spacing = 4.5 }, step: 0.1));

    // Holes of 24 ft that may drift by a tenth would need 5.9 ft one above the other. What the rows keep is the section's spacing: only rows under a first one that follows
    // the top, and may come near it, are held to more.
    [Fact]
    public void Level_rows_keep_their_spacing_whatever_holes_may_drift()
    {
        (Bay[] bays, FaceOutline outline) = Make(new TestWall(), rules: r => r with { Drift = 0.1 });
        List<RowHeads> rows = SectionRows.Make(bays, outline);
        Assert.Equal([(118.0, 20), (113.0, 20), (108.0, 20), (103.0, 20)], rows.Select(r => (r.Level, r.Places.Count)));
    }

    // The top falls from 120 to 110 over 100 ft and the first row with it, 118 to 108; the level rows at 113, 108, 103 start where it is 1.0357 ft above them or more:
    // 118 - x / 10 >= 114.0357, columns up to 37.5 (114.25); 109.0357, up to 87.5 (109.25); all.
    [Fact]
    public void Level_rows_end_where_the_first_row_comes_down_to_them()
    {
        (Bay[] bays, FaceOutline outline) = Make(new TestWall { Top = [new(0, 120), new(100, 110)] }, RowKind.TopParallel);
        RowHeads[] grid = [.. SectionRows.Make(bays, outline).Where(r => !r.IsPart)];
        double gap = grid[1].Level - grid[2].Level;
        Assert.Equal([-2, 118 - gap, 118 - 2 * gap, 118 - 3 * gap], grid.Take(4).Select(r => Math.Round(r.Level, 9)));
        Assert.All(grid.Skip(1), r => Assert.Equal(Enumerable.Range(0, 20).Select(i => 2.5 + 5 * i).Where(x => 118 - x / 10 - r.Level >= 1.0357), r.Places.Numbers()));
    }

    // The higher side counts where the grade steps.
    [Theory]
    [InlineData(103, 105)]
    [InlineData(105, 103)]
    public void No_head_stands_under_the_higher_side_of_a_grade_that_steps(double before, double after)
    {
        (WallProject project, _) = new TestWall { Grade = [new(0, before), new(50, before), new(50, after), new(100, after)] }.Make();
        var outline = new FaceOutline(new Face(project.Walls[0] with { HeadsAboveGrade = true }), 1);
        Assert.Equal((before == 103, false, after == 103), (outline.Holds(HeadAt(49.9, 104), 0), outline.Holds(HeadAt(50, 104), 0), outline.Holds(HeadAt(50.1, 104), 0)));
        Assert.True(outline.Holds(HeadAt(50, 105), 0));
        Assert.False(outline.Holds(HeadAt(50, 104.98), 0.01));
        Assert.True(outline.Holds(HeadAt(50, 104.995), 0.01));
        Assert.Contains((Height(double.NegativeInfinity), Height(105)), outline.ClosedAt(Place(50)));
    }

    // An arc of 20 ft; a face 6 ft nearer to its centre is 0.7 times as long, 6 ft further away 1.3 times. The top falls from 118 to 108 at 15: 1.3 ft before it are 0.91 or 1.69 ft along the face.
    [Theory]
    [InlineData(0.7)]
    [InlineData(1.3)]
    public void On_an_arc_the_edge_is_measured_along_the_face(double scale)
    {
        Wall wall = new[] { 6.0, -6 }.Select(o => new TestWall
        {
            Elements = [new LayoutElement.Arc(20, 30, Turn.Right)],
            End = 30,
            FaceOffset = o,
            Top = [new(0, 118), new(15, 118), new(15, 108), new(30, 108)],
        }.Make().Project.Walls[0]).Single(w => Math.Abs(new Face(w).Scale(10, 112) - scale) < 1e-9);
        var outline = new FaceOutline(new Face(wall), 1);
        Assert.Equal(1.3 * scale, outline.Nearest(HeadAt(13.7, 112)).Distance, 0.005);
        Assert.Equal(scale > 1, outline.Holds(HeadAt(13.7, 112), 0));
        Assert.True(outline.Holds(HeadAt(15 - 1.01 / scale, 112), 0));
        Assert.False(outline.Holds(HeadAt(15 - 0.98 / scale, 112), 0));
        Assert.Equal(117, outline.HighestAllowed(Place(15 - 1.01 / scale)).Number, 0.01);
        Assert.Equal(double.NaN, outline.HighestAllowed(Place(15 - 0.9 / scale)).Number);
    }
}
