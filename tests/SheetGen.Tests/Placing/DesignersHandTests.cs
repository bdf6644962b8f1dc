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

    /// <summary>One row of four nails, at 1.75, 5.25, 8.75 and 12.25, elevation 101.5.</summary>
    private static NailLayout Row(params string[] pins) => new PlacingWall
    {
        Length = 14,
        Top = "[[0, 103], [END, 103]]",
        TopRowDepth = 1.5,
        Blocks = ["fixed:", .. pins.Select(p => "  - {wall: Wall 1, row: 1, " + p + "}")],
    }.Layout;

    [Theory]
    [InlineData("station: 5.25, leave_out: true", 5.25, "A-1-01 A-1-03 A-1-04")]
    [InlineData("station: 6.9, leave_out: true", 5.25, "A-1-01 A-1-03 A-1-04")]
    [InlineData("station: 0, leave_out: true", 1.75, "A-1-02 A-1-03 A-1-04")]
    [InlineData("station: 14, leave_out: true", 12.25, "A-1-01 A-1-02 A-1-03")]
    public void A_station_that_is_left_out_by_hand_renames_no_other(string pin, double station, string marks)
    {
        NailLayout layout = Row(pin);
        Assert.Equal(marks, string.Join(' ', layout.Nails.Select(n => n.Mark)));
        LeftOut left = Assert.Single(layout.LeftOut);
        Assert.Equal((station, "left out in the project file"), (left.Along, left.Reason));
        Assert.Equal([1.75, 5.25, 8.75, 12.25], Assert.Single(layout.Rows).GridStations);
        Assert.All(layout.Nails, n => Assert.Equal((n.Column - 1) * 3.5 + 1.75, n.Station));
    }

    [Fact]
    public void Added_nails_have_marks_of_their_own_and_rename_no_other()
    {
        NailLayout layout = Row("station: 7.4, add: true, splay: 5, length: 12", "station: 6.5, add: true, elevation: 101");
        Assert.Equal(6, layout.Nails.Select(n => n.Mark).Distinct().Count());
        Assert.Equal(
            [("A-1-01", 1.75), ("A-1-02", 5.25), ("A-1-03", 8.75), ("A-1-04", 12.25)],
            layout.Nails.Where(n => !n.IsAdded).Select(n => (n.Mark, n.Station)));
        Nail[] added = [.. layout.Nails.Where(n => n.IsAdded)];
        Assert.Equal([(6.5, 101, 0, 20), (7.4, 101.5, 5, 12)], added.Select(n => (n.Station, n.Elevation, n.Splay, n.Length)));
        Assert.All(added, n => Assert.True(n.IsFixed && n.GridStation == n.Station));
        // Each takes the column that it stands beside.
        Assert.Equal([2, 3], added.Select(n => n.Column));
        Assert.Equal([1.75, 5.25, 8.75, 12.25], Assert.Single(layout.Rows).GridStations);
    }

    [Fact]
    public void A_nail_added_where_one_stands_adds_nothing() =>
        Assert.Equal(Row("station: 5.25").Nails.Select(n => (n.Mark, n.Station)), Row("station: 5.25, add: true").Nails.Select(n => (n.Mark, n.Station)));

    [Fact]
    public void Two_pins_of_one_station_make_one_nail()
    {
        Nail one = Assert.Single(Row("station: 5.25, length: 15, inclination: 20", "station: 5.25, splay: 10").Nails, n => n.IsFixed);
        Assert.Equal((5.25, 15, 10, 15), (one.Station, one.Length, one.Splay, one.Inclination));
    }

    [Fact]
    public void Two_pins_near_one_station_take_two()
    {
        NailLayout layout = Row("station: 5", "station: 5.5");
        Assert.Equal([(5, 5.25), (5.5, 8.75)], layout.Nails.Where(n => n.IsFixed).Select(n => (n.Station, n.GridStation)).Order());
        Assert.Equal(4, layout.Nails.Count);
    }

    [Theory]
    [InlineData(0, 1.75)]
    [InlineData(14, 12.25)]
    public void A_pin_at_the_wall_s_very_end_stands_there(double station, double grid)
    {
        Nail pinned = Assert.Single(Row(FormattableString.Invariant($"station: {station}")).Nails, n => n.IsFixed);
        Assert.Equal((station, grid), (pinned.Station, pinned.GridStation));
    }

    [Fact]
    public void More_stations_may_be_left_out_than_there_are()
    {
        NailLayout layout = Row([.. new[] { 1.75, 5.25, 8.75, 12.25, 14 }.Select(s => FormattableString.Invariant($"station: {s}, leave_out: true"))]);
        Assert.Empty(layout.Nails);
        Assert.Equal(14, layout.Score.Cover.Found, 0.02);
    }

    [Fact]
    public void A_pin_can_name_the_station_that_it_stands_for()
    {
        Nail pinned = Assert.Single(Row("station: 6, grid_station: 8.75").Nails, n => n.IsFixed);
        Assert.Equal((6, 8.75, true), (pinned.Station, pinned.GridStation, pinned.IsMoved));
    }

    [Theory]
    [InlineData("station: 5.25, elevation: 101", 101, true)]
    [InlineData("station: 5.25, elevation: 101.5", 101.5, false)]
    [InlineData("station: 5.25", 101.5, false)]
    [InlineData("station: 5.5, elevation: 102", 102, true)]
    public void A_pin_off_its_row_is_told_as_moved(string pin, double elevation, bool isMoved)
    {
        Nail pinned = Assert.Single(Row(pin).Nails, n => n.IsFixed);
        Assert.Equal((elevation, isMoved, 5.25, "pinned in the project file"), (pinned.Elevation, pinned.IsMoved, pinned.GridStation, pinned.Reason?.Text ?? "pinned in the project file"));
    }

    [Fact]
    public void A_length_pinned_for_a_row_leaves_its_nails_free()
    {
        NailLayout layout = Row("length: 12");
        Assert.All(layout.Nails, n => Assert.Equal((12, false, NailStatus.Grid), (n.Length, n.IsFixed, n.Status)));
        // A nail of it that is pinned by itself keeps the row's length, or has its own.
        Assert.Equal([12, 12, 9, 12], Row("length: 12", "station: 5.25", "station: 8.75, length: 9").Nails.Select(n => n.Length));
    }

    [Fact]
    public void A_pin_of_another_row_pins_nothing() => Assert.DoesNotContain(Row("station: 5.25", "station: 8.75").Nails, n => n.IsFixed && n.Column is 1 or 4);
}
