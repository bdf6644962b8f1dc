using SheetGen.Layout.Rows;
using SheetGen.Model.Results;
using SheetGen.Tests.Placing;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>Rows and part rows, made from the profile and the grid alone.</summary>
public sealed class RowTests
{
    [Fact]
    public void Level_rows_start_below_the_highest_top_at_the_spacing()
    {
        IReadOnlyList<NailRow> rows = new PlacingWall().Layout.Rows;
        Assert.Equal([116, 112.5, 109, 105.5, 102], rows.Select(r => r.Level));
        Assert.Equal(["1", "2", "3", "4", "5"], rows.Select(r => r.Number.ToString()));
        Assert.All(rows, r => Assert.True(r.IsLevel));
    }

    // Top 116: rows at 3.5 end 3.5 above the bottom, over bottom_max 3; at 3.25 the fifth stands 1 above it.
    [Fact]
    public void Vertical_gaps_shrink_where_that_saves_a_part_row()
    {
        IReadOnlyList<NailRow> rows = new PlacingWall { Top = "[[0, 116], [END, 116]]" }.Layout.Rows;
        Assert.Equal([114, 110.75, 107.5, 104.25, 101], rows.Select(r => r.Level));
    }

    [Fact]
    public void Parallel_rows_keep_their_depth_below_the_top()
    {
        NailLayout layout = new PlacingWall { Rows = "parallel", Top = "[[0, 118], [21, 116.95]]", Bottom = "[[0, 100]]" }.Layout;
        NailRow[] grid = [.. layout.Rows.Where(r => !r.Number.IsPart)];
        Assert.Equal(2, grid[0].Level);
        Assert.All(grid, r => Assert.False(r.IsLevel));
        for (int i = 1; i < grid.Length; i++)
            Assert.InRange(grid[i].Level - grid[i - 1].Level, 3.5 * 2 / 3, 3.5 + 1e-9);
        foreach (Nail nail in layout.Nails)
        {
            NailRow row = layout.Rows.First(r => r.Number == nail.Row);
            Assert.Equal(118 - nail.Along * 0.05 - row.Level, nail.Elevation, 0.0051);
        }
    }

    [Fact]
    public void Top_parallel_follows_the_top_with_the_first_row_only()
    {
        NailLayout layout = new PlacingWall { Rows = "top_parallel", Top = "[[0, 118], [21, 116.95]]" }.Layout;
        NailRow[] grid = [.. layout.Rows.Where(r => !r.Number.IsPart)];
        Assert.False(grid[0].IsLevel);
        Assert.Equal(2, grid[0].Level);
        Assert.All(grid.Skip(1), r => Assert.True(r.IsLevel));
        foreach (Nail nail in layout.Nails.Where(n => n.Row == RowNumber.Grid(1)))
            Assert.Equal(116 - nail.Along * 0.05, nail.Elevation, 0.0051);
    }

    [Theory]
    [InlineData("[[0, 106], [10, 106], [16, 118], [END, 118]]", "[[0, 98]]", "level")]
    [InlineData("[[0, 118], [40, 110]]", "[[0, 98], [10, 99.25], [20, 100.5], [30, 103]]", "level")]
    [InlineData("[[0, 118], [40, 112]]", "[[0, 98], [20, 101.5]]", "parallel")]
    [InlineData("[[0, 118], [20, 114], [40, 118]]", "[[0, 98], [20, 101.5]]", "top_parallel")]
    public void A_part_row_is_numbered_between_its_grid_rows_and_takes_after_the_one_above(string top, string bottom, string rows)
    {
        var wall = new PlacingWall { Length = 40, Top = top, Bottom = bottom, Rows = rows, Lengths = "[24, 22, 20, 18, 16, 14]" };
        NailLayout layout = wall.Layout;
        NailRow[] parts = [.. layout.Rows.Where(r => r.Number.IsPart)];
        Assert.NotEmpty(parts);
        foreach (NailRow part in parts)
        {
            double along = part.GridStations[0], level = part.ElevationAt(along);
            Assert.Equal(24 - 2 * (Math.Max(1, part.Number.Whole) - 1), part.Length);
            if (layout.Rows.FirstOrDefault(r => r.Number == RowNumber.Grid(part.Number.Whole)) is { } above && above.IsLevel == part.IsLevel)
                Assert.True(above.ElevationAt(along) > level, $"row {part.Number} is not below row {above.Number}");
            if (layout.Rows.FirstOrDefault(r => r.Number == RowNumber.Grid(part.Number.Whole + 1)) is { } below && below.IsLevel == part.IsLevel)
                Assert.True(below.ElevationAt(along) <= level, $"row {part.Number} is not above row {below.Number}");
        }
        int[] whole = [.. layout.Rows.Where(r => !r.Number.IsPart).Select(r => r.Number.Whole)];
        Assert.Equal(whole.Order(), whole);
        Bay bay = Assert.Single(PlacingWall.Bays(wall.Project));
        Head[] heads = [.. layout.Nails.Select(Head.Of)];
        Assert.Empty(CoverRule.Breaks(bay, heads, strict: false));
    }

    [Theory]
    [InlineData(90, 0.5, 1.5)]
    [InlineData(90, -0.5, 0.5)]
    [InlineData(60, 0, 1)]
    [InlineData(-90, -0.5, 1.5)]
    public void A_corner_ends_the_rows_on_both_sides(double deflection, double offset, double least)
    {
        var wall = new PlacingWall { Length = 30, CornerAt = 18, Top = "[[0, 108], [END, 108]]", Deflection = deflection, FaceOffset = offset };
        NailLayout layout = wall.Layout;
        Assert.Equal([0, 1], layout.Rows.Select(r => r.Leg).Distinct().Order());
        Assert.All(layout.Rows, r => Assert.All(r.GridStations, s => Assert.Equal(r.Leg == 0, s < 18)));
        Assert.True(layout.Nails.Min(n => Math.Abs(n.Along - 18)) >= least - 0.011);
    }

    [Fact]
    public void Shifted_corner_rows_stand_half_a_gap_lower_behind_an_outside_corner()
    {
        var wall = new PlacingWall { Length = 30, CornerAt = 15, Top = "[[0, 110], [END, 110]]", Deflection = 60, CornerRows = "shifted" };
        ILookup<int, double> levels = wall.Layout.Rows.Where(r => r.Number == RowNumber.Grid(1)).ToLookup(r => r.Leg, r => r.Level);
        double gap = wall.Layout.Rows.Where(r => r.Leg == 0 && !r.Number.IsPart).Take(2).Select(r => r.Level).Aggregate((a, b) => a - b);
        Assert.Equal(Assert.Single(levels[0]) - gap / 2, Assert.Single(levels[1]), 0.011);
    }
}
