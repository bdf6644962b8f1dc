using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Pins, closed stretches and stable marks.</summary>
public sealed class DesignersHandTests
{
    private const string Shaft = "  - {name: S1, kind: shaft, at: {station: 12, offset: 6}, diameter: 3, top: 120, bottom: 80}";

    [Fact]
    public void A_pinned_nail_stands_as_stated_and_the_others_keep_clear()
    {
        NailLayout layout = new PlacingWall
        {
            Blocks = ["fixed:", "  - {wall: Wall 1, section: A, row: 2, station: 9.25, splay: 20, inclination: 10, length: 23}"],
        }.Layout;
        Nail pinned = Assert.Single(layout.Nails, n => n.IsFixed);
        Assert.Equal(
            (9.25, 20, 10, 23, "2", 112.5), (pinned.Station, pinned.Splay, pinned.Inclination, pinned.Length, pinned.Row.ToString(), pinned.Elevation));
        Assert.Equal(31, layout.Nails.Count);
        Assert.All(layout.Nails.Where(n => n != pinned), n => Assert.True(HoleDistance.Between(n.Hole, pinned.Hole).Clear >= 0.5 - 1e-6, n.Mark));
        Assert.Equal(0, layout.Score.Unresolved.Found);
    }

    [Fact]
    public void A_pinned_row_stays_in_its_direction_whatever_it_hits()
    {
        NailLayout layout = new PlacingWall
        {
            Blocks = ["fixed:", "  - {wall: Wall 1, row: 3, splay: 0, inclination: 15}", "obstructions:", Shaft],
        }.Layout;
        Nail[] row = [.. layout.Nails.Where(n => n.Row == RowNumber.Grid(3))];
        Assert.Equal(6, row.Length);
        Assert.All(row, n => Assert.True(n.IsFixed && n.Splay == 0 && n.Inclination == 15 && !n.IsMoved));
        Assert.Contains(layout.Nails, n => n.Row == RowNumber.Grid(2) && n.Status != NailStatus.Grid);
    }

    [Theory]
    [InlineData("no_nails: [{stations: [8, 10]}]", 8, 10, 0, 200)]
    [InlineData("no_nails: [{stations: [8, 13], bottom: 104, top: 110}]", 8, 13, 104, 110)]
    public void No_head_stands_in_a_closed_stretch(string key, double start, double end, double bottom, double top)
    {
        var open = new PlacingWall();
        NailLayout layout = (open with { WallKeys = [key] }).Layout;
        bool IsInside(Nail n) => n.Station > start && n.Station < end && n.Elevation > bottom && n.Elevation < top;
        Assert.Empty(layout.Nails.Where(IsInside).Select(n => n.Mark));
        Assert.NotEmpty(open.Layout.Nails.Where(IsInside).Select(n => n.Mark));
    }

    [Fact]
    public void Part_rows_round_a_closed_stretch_do_not_stand_on_one_another()
    {
        int partRows = 0;
        for (int seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            double start = 6 + random.Next(0, 81) / 4.0, bottom = 102 + random.Next(0, 25) / 4.0;
            NailLayout layout = new PlacingWall
            {
                Length = 40,
                Top = seed % 3 == 0 ? "[[0, 118], [END, 118]]" : "[[0, 115], [END, 120]]",
                Pattern = seed % 2 == 0 ? "staggered" : "square",
                WallKeys = [FormattableString.Invariant(
                    $"no_nails: [{{stations: [{start}, {start + random.Next(8, 33) / 4.0}], bottom: {bottom}, top: {bottom + random.Next(8, 37) / 4.0}}}]")],
            }.Layout;
            Assert.True(layout.Score.Unresolved.Found == 0, $"seed {seed}: {string.Join(", ", layout.Nails.Where(n => n.Status == NailStatus.Unresolved).Select(n => n.Mark))}");
            partRows += layout.Nails.Count(n => n.Row.IsPart);
        }
        Assert.True(partRows > 100, $"{partRows} nails of part rows");
    }

    [Theory]
    [InlineData("[[0, 118], [END, 118]]", "[[0, 100], [30, 101.25]]")]
    [InlineData("[[0, 118], [50, 118], [63, 122]]", "[[0, 100]]")]
    public void A_change_at_one_end_renames_nothing_at_the_other(string top, string bottom)
    {
        var wall = new PlacingWall { Length = 63, Top = top, Bottom = bottom };
        NailLayout plain = wall.Layout;
        NailLayout obstructed = (wall with { Blocks = ["obstructions:", Shaft] }).Layout;
        Dictionary<string, (double, RowNumber)> before = plain.Nails.ToDictionary(n => n.Mark, n => (n.GridStation, n.Row));
        Assert.Contains(obstructed.Nails, n => n.Status != NailStatus.Grid);
        foreach (Nail nail in obstructed.Nails.Where(n => !n.IsAdded))
            Assert.Equal(before[nail.Mark], (nail.GridStation, nail.Row));
        Assert.All(obstructed.Nails.Where(n => n.IsAdded), n => Assert.DoesNotContain(n.Mark, before.Keys));
        string[] missing = [.. before.Keys.Except(obstructed.Nails.Select(n => n.Mark)).Order()];
        Assert.Equal(missing, obstructed.LeftOut.Select(l => l.Mark).Order());
        Assert.Contains("A-3-07", before.Keys);
    }

    // Grid stations at 1.75 and 5.25.
    [Theory]
    [InlineData(3.5, 1.75)]
    [InlineData(3.51, 5.25)]
    [InlineData(3.49, 1.75)]
    public void A_pin_takes_the_nearest_grid_station_of_two_as_near_the_first(double station, double grid)
    {
        NailLayout layout = new PlacingWall
        {
            Length = 7,
            Top = "[[0, 103], [END, 103]]",
            TopRowDepth = 1.5,
            Blocks = ["fixed:", FormattableString.Invariant($"  - {{wall: Wall 1, row: 1, station: {station}}}")],
        }.Layout;
        Nail pinned = Assert.Single(layout.Nails, n => n.IsFixed);
        Assert.Equal((station, grid), (pinned.Station, pinned.GridStation));
    }
}
