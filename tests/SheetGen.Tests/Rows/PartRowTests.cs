using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Tests.Quantities;
using Xunit;
using static SheetGen.Tests.Rows.Typed;

namespace SheetGen.Tests.Rows;

/// <summary>
/// Part rows, worked by hand. Walls of 100 ft from 100 up, spacings of 5 ft (columns at 2.5, 7.5 and so on, limits between them at 5, 10 and so on; a nail
/// covers 2.5 ft to each side), edge_min 1, top_max 2.5, bottom_max 3, min_gap 2, shift_step 0.25, quantum 0.01; holes of 0.5 ft, 0.5 ft clear, falling by 10 degrees.
/// </summary>
public sealed class PartRowTests
{
    /// <summary>Less than the tolerance for rounding.</summary>
    private const double Hair = 5e-10;

    private static (Bay Bay, FaceOutline Outline, GridStations Grid) Make(TestWall wall, Func<Section, Section>? change = null, Func<Rules, Rules>? rules = null)
    {
        (WallProject project, _) = wall.Make();
        Wall made = project.Walls[0];
        if (change is not null)
            made = made with { Sections = [.. made.Sections.Select(change)] };
        Rules kept = rules is null ? project.Rules : rules(project.Rules);
        var face = new Face(made);
        Bay bay = Bay.Of(face, kept, project.Unit)[0];
        return (bay, new FaceOutline(face, kept.EdgeMin), GridStations.At(bay, bay.HalfHeight));
    }

    private static TestWall Level(double top) => new() { Top = [new(0, top)] };

    private static double[] Columns(double from, double to) => [.. Enumerable.Range(0, 20).Select(i => 2.5 + 5 * i).Where(c => c > from && c < to)];

    private static RowHeads Part(Bay bay, double level, params double[] places) => new(bay, 0, true, level, [], [.. places.Select(Place)]);

    private static RowHeads Grid(Bay bay, double level, params double[] places) => new(bay, 1, true, level, [], [.. places.Select(Place)]);

    private static CoverBreak Gap(double start, double end, Lack lack, double upper = double.NaN, double lower = double.NaN) => new(Place(start), Place(end), lack, upper, lower, 0);

    // A multiple of 0.25 nearest to the middle where the band has it; else the middle, rounded to 0.01, into the band.
    [Theory]
    [InlineData(109.1, 109.6, 109.25)]
    [InlineData(109.3, 109.4, 109.35)]
    [InlineData(109.1, 109.2, 109.15)]
    [InlineData(109.25, 109.3, 109.25)]
    [InlineData(109.2, 109.25, 109.25)]
    [InlineData(109.301, 109.308, 109.3)]
    public void A_new_row_takes_a_round_level_near_the_middle_of_its_band(double low, double high, double level)
    {
        (Bay bay, _, _) = Make(Level(120));
        Assert.Equal(level, PartRowLevels.Choose(bay, [Grid(bay, 109.32, 50)], low, high), 1e-9);
    }

    // Steps of 0.333: 328 of them are 109.224, printed 109.22, which lies under the band; 109.23 is in the first.
    [Theory]
    [InlineData(109.221, 109.231, 109.23)]
    [InlineData(109.221, 109.228, 109.22)]
    [InlineData(109.22, 109.231, 109.22)]
    public void A_level_is_rounded_into_its_band_where_the_quantum_allows_it(double low, double high, double level)
    {
        (Bay bay, _, _) = Make(Level(120), rules: r => r with { ShiftStep = 0.333 });
        Assert.Equal(level, PartRowLevels.Choose(bay, [], low, high), 1e-9);
    }

    [Fact]
    public void A_part_row_in_the_band_is_shared_the_one_nearest_to_its_middle()
    {
        (Bay bay, _, _) = Make(Level(120));
        List<RowHeads> rows = [Grid(bay, 109.375, 50), Part(bay, 109.5, 50), Part(bay, 109.25, 50), Part(bay, 108, 50), Part(bay, 111, 50)];
        Assert.Equal(109.25, PartRowLevels.Choose(bay, rows, 109, 109.75));
        Assert.Equal(109.5, PartRowLevels.Choose(bay, rows, 109, 109.8));
        Assert.Equal(108, PartRowLevels.Choose(bay, rows, 108 + Hair, 108.9));
        Assert.Equal(111, PartRowLevels.Choose(bay, rows, 110.1, 111 - Hair));
        Assert.Equal(108.5, PartRowLevels.Choose(bay, rows, 108.001, 108.9));
        Assert.Equal(110.5, PartRowLevels.Choose(bay, rows, 110.1, 110.999));
    }

    [Fact]
    public void Levels_of_a_band_come_from_the_one_asked_for_outwards()
    {
        (Bay bay, _, _) = Make(Level(120));
        Assert.Equal([110, 109.75, 110.25, 109.5, 110.5, 110.75], PartRowLevels.From(bay, 110, new(Place(50), 109.5, 110.75)));
        // What stands at the very limit of a band is in it, even where rounding put the limit a hair further in.
        Assert.Equal([110, 109.75, 109.5, 109.25, 109], PartRowLevels.From(bay, 110, new(Place(50), 109 + Hair, 110.1)));
        Assert.Equal([110, 110.25, 110.5], PartRowLevels.From(bay, 110, new(Place(50), 109.9, 110.5 - Hair)));
        Assert.Equal([110, 109.75], PartRowLevels.From(bay, 110, new(Place(50), 109.501, 110.249)));
        Assert.Equal([110], PartRowLevels.From(bay, 110, new(Place(50), 110, 110)));
        (Bay thirds, _, _) = Make(Level(120), rules: r => r with { ShiftStep = 1.0 / 3 });
        Assert.Equal([110, 109.67, 110.33, 109.33], PartRowLevels.From(thirds, 110, new(Place(50), 109.2, 110.4)));
    }

    [Fact]
    public void A_lack_is_cut_between_columns_and_joined_within_one()
    {
        (Bay bay, _, GridStations grid) = Make(Level(120));
        (double, double)[] Cut(params CoverBreak[] lacks) => [.. PartRowPlaces.Cut(bay, grid, [.. lacks]).Select(c => (Math.Round(c.Start.Number, 6), Math.Round(c.End.Number, 6)))];
        CoverBreak Top(double start, double end, double lower = 105) => Gap(start, end, Lack.Top, lower: lower);
        Assert.Equal([(3, 5), (5, 10), (10, 12)], Cut(Top(3, 12)));
        Assert.Equal([(0, 5), (95, 100)], Cut(Top(0, 5), Top(95, 100)));
        Assert.Equal([(6, 10)], Cut(Top(6, 10)));
        // Nearer than two quanta: one.
        Assert.Equal([(6, 8)], Cut(Top(6, 7), Top(7.015, 8)));
        Assert.Equal([(6, 7), (7.025, 8)], Cut(Top(6, 7), Top(7.025, 8)));
        Assert.Equal([(6, 9)], Cut(Top(6, 7), Top(7, 8), Top(8, 9)));
        // Not across a limit, and not where other nails bound them.
        Assert.Equal([(4, 5), (5, 6)], Cut(Top(4, 5), Top(5, 6)));
        Assert.Equal([(4.5, 5), (5, 5.5), (5.5, 6)], Cut(Top(4.5, 5.5), Top(5.5, 6, 105.1)));
        Assert.Equal([(6, 8)], Cut(Top(6, 7), Top(7, 8, 105 + 5e-7)));
        Assert.Equal([(6, 7), (7, 8)], Cut(Top(6, 7), Top(7, 8, 105.00001)));
        Assert.Equal([(6, 7), (7, 8)], Cut(Gap(6, 7, Lack.Gap, 110, 104), Gap(7, 8, Lack.Gap, 109, 104)));
        Assert.Equal([(6, 7), (7, 8)], Cut(Gap(6, 7, Lack.Bottom, upper: 105), Gap(7, 8, Lack.Nails)));
        Assert.Equal([(6, 8)], Cut(Gap(6, 7, Lack.Nails), Gap(7, 8, Lack.Nails)));
        // What is left of a lack beyond a limit is nothing where it is shorter than lengths that are told apart.
        Assert.Equal([(4, 5)], Cut(Top(4, 5 + 5e-7)));
        Assert.Equal([(4, 5), (5, 5.00001)], Cut(Top(4, 5.00001)));
    }

    [Fact]
    public void Places_are_tried_on_columns_first_then_nearest_to_the_middle()
    {
        (Bay bay, _, GridStations grid) = Make(Level(120));
        double[] Tried(double low, double high, double middle) => [.. PartRowPlaces.Candidates(bay, grid, Place(low), Place(high), Place(middle)).Select(p => Math.Round(p.Number, 6))];
        double[] few = Tried(46, 51, 48);
        Assert.Equal([47.5, 48, 47.75, 48.25, 47.5, 48.5], few[..6]);
        // The column, both limits, and 21 places 0.25 apart.
        Assert.Equal(24, few.Length);
        Assert.Equal((46, 51), (few.Min(), few.Max()));
        Assert.Equal([42.5, 47.5, 52.5], Tried(42.5, 52.5, 42.6)[..3]);
        Assert.Equal([42.5, 47.5], Tried(42.5, 47.5, 45)[..2]);
        // Limits that are no printed station are not rounded out.
        double[] odd = Tried(46.004, 50.996, 48);
        Assert.Equal((46.25, 50.75), (odd.Min(), odd.Max()));
        double[] odder = Tried(46.006, 50.994, 48);
        Assert.Equal((46.01, 50.99), (odder.Min(), odder.Max()));
        Assert.Empty(Tried(50, 49.99, 50));
        Assert.Equal([47.5, 47.5, 47.5, 47.5], Tried(47.5, 47.5, 47.5));
        // Over a long stretch 200 steps: 20 columns, both limits, 201 places.
        Assert.Equal(223, Tried(0, 100, 50).Length);
        (Bay staggered, _, GridStations half) = Make(Level(120), s => s with { Pattern = Pattern.Staggered });
        Assert.Equal([47.5, 50, 48], PartRowPlaces.Candidates(staggered, half, Place(46), Place(51), Place(48)).Select(p => Math.Round(p.Number, 6)).Take(3));
    }

    [Fact]
    public void A_lack_too_long_for_one_nail_is_cut_at_a_step_or_in_the_middle_three_times_at_most()
    {
        (Bay bay, FaceOutline outline, GridStations grid) = Make(Level(104));
        PartRowPlace[] Found(Bay at, FaceOutline of, double start, double end) => [.. PartRowPlaces.Find(at, grid, of, [], Gap(start, end, Lack.Nails))];
        PartRowPlace one = Assert.Single(Found(bay, outline, 46, 49));
        Assert.Equal((47.5, 101.5, 103), (one.Along.Number, one.Low, one.High));
        Assert.Equal([22.5, 27.5, 32.5, 37.5], Found(bay, outline, 20, 40).Select(p => p.Along.Number));
        Assert.Equal(Columns(20, 60), Found(bay, outline, 20, 60).Select(p => p.Along.Number));
        Assert.Empty(Found(bay, outline, 20, 61));
        Assert.Equal([22.5, 26], Found(bay, outline, 20, 28).Select(p => p.Along.Number));
        (Bay stepped, FaceOutline steps, _) = Make(new TestWall { Top = [new(0, 106)], Steps = [new(0, 100), new(22, 101)] });
        Assert.Equal([22.5, 22.5, 27.5], Found(stepped, steps, 20, 28).Select(p => p.Along.Number));
    }

    // The outline leaves 101 to 119; the top asks for 117.5 and more, the bottom for 103 and less.
    [Theory]
    [InlineData(nameof(Lack.Nails), double.NaN, double.NaN, 117.5, 117.5)]
    [InlineData(nameof(Lack.Top), double.NaN, 114, 117.5, 119)]
    [InlineData(nameof(Lack.Top), double.NaN, 113, 117.5, 118)]
    [InlineData(nameof(Lack.Top), double.NaN, 112.5, 117.5, 117.5)]
    [InlineData(nameof(Lack.Top), double.NaN, 112.4, 117.5, 119)]
    [InlineData(nameof(Lack.Top), double.NaN, 118, 118.000001, 119)]
    [InlineData(nameof(Lack.Bottom), 107, double.NaN, 102, 103)]
    [InlineData(nameof(Lack.Bottom), 108, double.NaN, 103, 103)]
    [InlineData(nameof(Lack.Bottom), 108.1, double.NaN, 101, 103)]
    [InlineData(nameof(Lack.Bottom), 102, double.NaN, 101, 101.999999)]
    [InlineData(nameof(Lack.Gap), 112, 104, 107, 109)]
    [InlineData(nameof(Lack.Gap), 118, 104, 104, 118)]
    [InlineData(nameof(Lack.Gap), 114, 104, 109, 109)]
    [InlineData(nameof(Lack.Gap), 119.5, 100.5, 101, 119)]
    [InlineData(nameof(Lack.Gap), 105, 103, 101, 108)]
    public void A_nail_cures_a_lack_from_a_band_of_levels(string name, double upper, double lower, double from, double to)
    {
        Lack lack = Enum.Parse<Lack>(name);
        (Bay bay, FaceOutline outline, _) = Make(Level(120));
        (double low, double high) = PartRowBand.Of(bay, outline, [], Place(50), Gap(47.5, 52.5, lack, upper, lower));
        Assert.Equal((from, to), (Math.Round(low, 9), Math.Round(high, 9)));
        // The same told by the depth below the top.
        (Bay parallel, FaceOutline same, _) = Make(Level(120), s => s with { Rows = RowKind.Parallel });
        (low, high) = PartRowBand.Of(parallel, same, [], Place(50), Gap(47.5, 52.5, lack, upper - 120, lower - 120));
        Assert.Equal((Math.Round(from - 120, 9), Math.Round(to - 120, 9)), (Math.Round(low, 9), Math.Round(high, 9)));
    }

    // A nail at 50 covers 47.5 to 52.5, and what a quantum more reaches.
    [Theory]
    [InlineData(47.49, 52.51, true)]
    [InlineData(47.48, 50, false)]
    [InlineData(50, 52.52, false)]
    public void A_place_must_reach_the_whole_lack(double start, double end, bool does)
    {
        (Bay bay, FaceOutline outline, _) = Make(Level(120));
        (double low, double high) = PartRowBand.Of(bay, outline, [], Place(50), Gap(start, end, Lack.Gap, 112, 104));
        Assert.Equal(does, high >= low);
    }

    // 0.5 + 0.5 + 0.02 ft from centre to centre, 1.02 / cos 10 = 1.0357 ft above each other; at 0.6 ft beside each other sqrt(1.02² - 0.6²) / cos 10 = 0.8376 ft.
    [Theory]
    [InlineData(50, 107.5, 0, 108.5357, 109)]
    [InlineData(50, 108.5, 0, 107, 107.4643)]
    [InlineData(50.6, 107.5, 0, 108.3376, 109)]
    [InlineData(49.4, 108.5, 0, 107, 107.6624)]
    [InlineData(51.02, 107.5, 0, 107, 109)]
    [InlineData(51.01, 107.5, 0, 107.6447, 109)]
    // With a drift of 0.01 over 24 ft each of two holes spreads by 0.24 ft: 1.5 / cos 10 = 1.5231 ft.
    [InlineData(50, 107, 0.01, 108.5231, 109)]
    public void A_band_keeps_clear_of_heads_beside_it(double along, double elevation, double drift, double from, double to)
    {
        (Bay bay, FaceOutline outline, _) = Make(Level(120), rules: r => r with { Drift = drift });
        (double low, double high) = PartRowBand.Of(bay, outline, [HeadAt(along, elevation), HeadAt(80, 108)], Place(50), Gap(47.5, 52.5, Lack.Gap, 112, 104));
        Assert.Equal((from, to), (Math.Round(low, 4), Math.Round(high, 4)));
    }

    [Fact]
    public void Of_several_free_bands_the_widest_is_taken()
    {
        (Bay bay, FaceOutline outline, _) = Make(Level(120));
        (double, double) Band(params double[] elevations)
        {
            (double low, double high) = PartRowBand.Of(bay, outline, [.. elevations.Select(e => HeadAt(50, e))], Place(50), Gap(47.5, 52.5, Lack.Gap, 118, 104));
            return (Math.Round(low, 4), Math.Round(high, 4));
        }
        Assert.Equal((111.0357, 118), Band(110));
        Assert.Equal((104, 110.9643), Band(112));
        Assert.Equal((108.0357, 113.9643), Band(115, 107));
        Assert.Equal((111.5357, 118), Band(110.5, 110, 109));
        (double none, double at) = Band(105, 107, 109, 111, 113, 115, 117);
        Assert.True(at < none);
    }

    private static string Filled(TestWall wall, Func<Bay, List<RowHeads>> rows)
    {
        (Bay bay, FaceOutline outline, _) = Make(wall);
        List<RowHeads> filled = rows(bay);
        int before = filled.Count;
        PartRows.Fill(bay, outline, filled);
        Assert.All(filled.Skip(before), r => Assert.True(r.IsPart && r.IsLevel));
        return string.Join("; ", filled.Skip(before).Select(r => FormattableString.Invariant($"{r.Level:0.###}: {string.Join(' ', r.Places.Select(p => p.Number.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)))}")));
    }

    private const string Right = "52.5 57.5 62.5 67.5 72.5 77.5 82.5 87.5 92.5 97.5";

    // Bottom 97 from 50 on: 103 is 6 above it. 98 keeps the spacing to 103 and the edge, 100 is 3 above the bottom.
    [Fact]
    public void A_lower_bottom_gets_a_part_row() => Assert.Equal($"99: {Right}", Filled(
        new TestWall { Top = [new(0, 110)], Steps = [new(0, 100), new(50, 97)] }, bay => [Grid(bay, 108, Columns(0, 100)), Grid(bay, 103, Columns(0, 100))]));

    // Top 114 from 50 on: 111.5 is 2.5 below it, 113 keeps the edge and the spacing to 108.
    [Fact]
    public void A_higher_top_gets_a_part_row() => Assert.Equal($"112.25: {Right}", Filled(
        new TestWall { Top = [new(0, 110), new(50, 110), new(50, 114), new(100, 114)] }, bay => [Grid(bay, 108, Columns(0, 100)), Grid(bay, 103, Columns(0, 100))]));

    // 108 and 101.8 are 6.2 apart: 103 to 106.8 lies within 5 of both, 105 near the middle.
    [Fact]
    public void Rows_too_far_apart_get_one_between_them() => Assert.Equal($"105: {string.Join(' ', Columns(0, 50).Select(c => c.ToString(System.Globalization.CultureInfo.InvariantCulture)))} {Right}", Filled(
        Level(110), bay => [Grid(bay, 108, Columns(0, 100)), Grid(bay, 101.8, Columns(0, 100))]));

    // A wall of 4 ft: 101.5 to 103 is near enough to top and bottom.
    [Fact]
    public void Where_a_nail_is_missing_a_part_row_puts_one() => Assert.Equal("102.25: 47.5", Filled(
        Level(104), bay => [Grid(bay, 102, [.. Columns(0, 100).Where(c => c != 47.5)])]));

    // The part row's nail at 46 covers up to 48.5 and stands within 2 ft of 47.5: a row 0.25 below takes the place.
    [Fact]
    public void A_row_without_room_leaves_the_place_to_one_beside_it() => Assert.Equal("102: 47.5", Filled(
        Level(104), bay => [Grid(bay, 102.1, [.. Columns(0, 100).Where(c => c != 47.5)]), Part(bay, 102.25, 46)]));

    // Up to 65 the face is 2.05 ft high: heads at 101 to 101.05, all in the row at 101.02. Between its nails at 48.5 and 53.9 (51 to 51.4 uncovered) none has room, min_gap 2
    // asks for it on both sides; the bottom beyond 65, with 108 within 5 of 103 only, gets its row all the same.
    [Fact]
    public void Where_one_lack_cannot_be_cured_others_are() => Assert.Equal("103: 67.5 72.5 77.5 82.5 87.5 92.5 97.5", Filled(
        new TestWall { Top = [new(0, 102.05), new(65, 102.05), new(65, 110), new(100, 110)] },
        bay => [Part(bay, 101.02, [.. Columns(0, 43), 46, 48.5, 53.9, 57.5, 62.5]), Grid(bay, 108, Columns(65, 100))]));
}
