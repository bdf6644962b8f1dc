using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Placing;
using SheetGen.Tests.Properties;
using SheetGen.Tests.Quantities;
using SheetGen.Tests.Walls;
using Xunit;
using static SheetGen.Tests.Rows.Typed;

namespace SheetGen.Tests.Rows;

/// <summary>
/// Rows, outline and cover of random walls against slow readings of the same rules, without a search: the rows that the grid gives, some nails taken out or moved.
/// Rules in feet: edge_min and corner_clear 1, min_gap 2.
/// </summary>
public sealed class RowTwinTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 40)];

    private static (Bay[] Bays, List<RowHeads> Rows) Rows(WallProject project)
    {
        Wall wall = project.Walls[0];
        var face = new Face(wall);
        Bay[] bays = [.. Bay.Of(face, project.Rules, project.Unit)];
        var outline = new FaceOutline(face, project.Rules.EdgeMin);
        return (bays, [.. bays.GroupBy(b => b.Section).SelectMany(s => SectionRows.Make([.. s], outline))]);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Rows_do_not_depend_on_where_a_wall_begins(int seed)
    {
        TestWall wall = RandomRows.Wall(seed);
        (_, List<RowHeads> here) = Rows(RandomRows.Project(wall, seed));
        (_, List<RowHeads> there) = Rows(RandomRows.Project(MovedWallTests.Moved(wall), seed));
        Assert.NotEmpty(here);
        Assert.Equal(here.Select(r => (r.Bay.Leg.Index, r.GridRow, r.IsLevel, r.Places.Count)), there.Select(r => (r.Bay.Leg.Index, r.GridRow, r.IsLevel, r.Places.Count)));
        foreach ((RowHeads a, RowHeads b) in here.Zip(there))
        {
            // A place half way between two quanta may be rounded either way.
            Assert.Equal(a.Level, b.Level - (a.IsLevel ? MovedWallTests.Higher : 0), 0.0101);
            for (int i = 0; i < a.Places.Count; i++)
                Assert.Equal(a.Places[i].Number, b.Places[i].Number - MovedWallTests.Later, 0.0101);
        }
    }

    /// <summary>A corner's own place belongs to the leg that starts there: a part row's place less than a quantum before it is rounded away from it.</summary>
    [Fact]
    public void A_head_at_a_corner_stands_on_its_rows_own_leg()
    {
        (Bay[] bays, List<RowHeads> rows) = Rows(new PlacingWall
        {
            Length = 13,
            CornerAt = 6,
            Deflection = -90,
            FaceOffset = 1,
            Top = "[[0, 103], [13, 105]]",
            Bottom = "[[0, 95]]",
            TopRowDepth = 1.5,
            WallKeys = ["batter: {angle: 5 deg, elevation: 100}"],
            Blocks = ["rules:", "  clearance: {nail: 2.25}", "  shift_step: 1"],
        }.Project);
        Assert.Equal(2, bays.Length);
        Assert.All(rows, row => Assert.All(row.Places, place => Assert.True(row.Bay.Leg.Has(place), $"{place} in a row of leg {row.Bay.Leg.Index}")));
        Assert.Contains(rows, row => row.Bay == bays[0] && row.Places.Contains(new Along(5.99)));
    }

    /// <summary>The grid's own heads, a fifth taken out and some moved along or up: the rule is broken where a literal reading of it at many stations says so.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Cover_is_broken_where_its_literal_reading_breaks(int seed)
    {
        WallProject project = RandomRows.Project(RandomRows.Wall(seed), seed);
        (Bay[] bays, List<RowHeads> rows) = Rows(project);
        var random = new WallRandom((ulong)seed);
        double share = random.Of(0, 0.1, 0.3);
        var nails = new List<Nail>();
        foreach (RowHeads row in rows)
        {
            foreach (Along place in row.Places.Where(_ => !random.Chance(share)))
            {
                Along along = place + (random.Chance(0.2) ? random.Between(-0.8, 0.8, 0.01) : 0);
                double up = random.Chance(0.1) ? random.Between(-0.5, 0.5, 0.01) : 0;
                if (row.Bay.Leg.Has(along))
                    nails.Add(TestWall.MakeNail(project, row.Bay.Face, row.Bay.Section, RowNumber.Grid(1), 1, along.Number, row.ElevationAt(along).Number + up, NailKind.Production, row.Bay.Leg.Index) with { Mark = $"N{nails.Count}" });
            }
        }
        var layout = new NailLayout { Nails = nails, Rows = [], LeftOut = [], Score = new LayoutScore(new(0, null), new(0, null), new(0, null)) };
        int looked = 0;
        foreach (CoverTwin twin in CoverTwin.All(project, layout))
        {
            Bay bay = bays.Single(b => b.Start.Number == twin.Start && b.End.Number == twin.End);
            Head[] heads = [.. nails.Where(n => n.Section == bay.Section && bay.Leg.Has(n.Along)).Select(Head.Of)];
            List<CoverBreak> breaks = CoverRule.Breaks(bay, heads, strict: false);
            // Looked at a part at a time, the same is found.
            var middle = Along.Middle(bay.Start, bay.End);
            List<CoverBreak> halves = [.. CoverRule.Breaks(bay, heads, false, bay.FaceStart, middle), .. CoverRule.Breaks(bay, heads, false, middle, bay.FaceEnd)];
            Assert.Equal(breaks.Sum(b => b.End - b.Start), halves.Sum(b => b.End - b.Start), 0.05 * (1 + breaks.Count));
            // The least length that is uncovered counts each place once.
            List<CoverBreak> strict = CoverRule.Breaks(bay, heads, strict: true);
            double counted = Enumerable.Range(0, 2000).Count(i => bay.FaceStart + (bay.FaceEnd - bay.FaceStart) * (i + 0.5) / 2000 is var s && strict.Any(b => b.Start <= s && s < b.End)) * (bay.FaceEnd - bay.FaceStart) / 2000;
            Assert.Equal(counted, CoverRule.Uncovered(bay, heads), 0.03 * (1 + strict.Count));
            foreach (double s in twin.Samples())
            {
                Along at = new(s);
                if (at < bay.FaceStart || at > bay.FaceEnd || project.Walls[0].Openings.Any(o => s > o.Start - 0.05 && s < o.End + 0.05) || bay.GreatestMitreRun > 0)
                    continue;
                bool near = breaks.Any(b => b.Start - 0.05 <= at && at <= b.End + 0.05), deep = breaks.Any(b => b.Start + 0.05 < at && at < b.End - 0.05);
                Assert.False(twin.IsBroken(s) && !near, $"broken at {s}, not found");
                Assert.False(twin.IsHeld(s) && deep, $"found broken at {s}, where it holds");
                looked++;
            }
        }
        Assert.True(looked > 0 || bays.All(b => b.GreatestMitreRun > 0));
    }

    /// <summary>Distances to the outline of a straight wall, read off points 0.01 apart on it.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Distances_to_the_outline_are_those_to_its_points(int seed)
    {
        var random = new WallRandom((ulong)seed * 31);
        (WallProject project, _) = new TestWall
        {
            Elements = [new LayoutElement.Tangent(60)],
            Start = 4,
            End = 50,
            Top = [new(4, random.Between(108, 114, 0.5)), new(15, random.Between(107, 114, 0.5)), new(20, random.Between(107, 114, 0.5)), new(20, 112), new(36, random.Between(107, 114, 0.5)), new(50, 110)],
            Steps = [new(4, 100), new(18, random.Between(98, 104, 0.5)), new(30, random.Between(98, 104, 0.5)), new(41, 101)],
            Openings = [new Opening("Culvert", 24, 27, 103, 106, TestWall.Spot)],
        }.Make();
        Wall wall = project.Walls[0] with { ClosedStretches = [new ClosedStretch(32, 34, 102, 105, "pipe", default), new ClosedStretch(44, 45, null, null, "pole", default)] };
        const double edge = 1;
        var outline = new FaceOutline(new Face(wall), edge);
        List<(double X, double Z)> top = [.. Points(wall.Top.Points)], bottom = [.. Points(wall.Bottom.Points)];
        Opening opening = wall.Openings[0];
        int held = 0, kept = 0;
        for (int i = 0; i < 400; i++)
        {
            double x = random.Between(4.05, 49.95, 0.001), low = wall.Bottom.At(x), high = wall.Top.At(x), z = random.Between(low - 1, high + 1, 0.001);
            double toTop = Least(top, x, z), toBottom = Least(bottom, x, z), toEnd = Math.Min(ToEnd(4, x, z), ToEnd(50, x, z)), least = Math.Min(Math.Min(toTop, toBottom), toEnd);
            bool inside = z <= high && z >= low;
            (double distance, string which) = outline.Nearest(HeadAt(x, z));
            Assert.Equal(inside ? least : -least, distance, 0.006);
            Assert.Equal(least, which switch { "top" => toTop, "bottom" => toBottom, _ => toEnd }, 0.006);
            double dx = Math.Max(opening.Start - x, x - opening.End), dz = Math.Max(opening.Bottom - z, z - opening.Top), toOpening = dx > 0 && dz > 0 ? Math.Sqrt(dx * dx + dz * dz) : Math.Max(dx, dz);
            Assert.Equal(toOpening, outline.ToOpening(opening, HeadAt(x, z)), 1e-9);
            bool closed = x is > 32 and < 34 && z is > 102 and < 105 || x is > 44 and < 45;
            double slack = Math.Min(Math.Min(toTop, toBottom), toOpening) - edge;
            if (Math.Abs(slack) > 0.01)
            {
                Assert.Equal(inside && slack > 0 && !closed, outline.Holds(HeadAt(x, z), 0));
                held += inside && slack > 0 && !closed ? 1 : 0;
                kept += closed ? 1 : 0;
            }
            // The highest and the lowest place for a head over a station: the first that keeps clear, going in from top or bottom.
            double highest = Enumerable.Range(0, 1600).Select(k => high - k * 0.005).FirstOrDefault(h => Least(top, x, h) >= edge, double.NaN);
            double atMost = outline.HighestAllowed(Place(x)).Number, atLeast = outline.LowestAllowed(Place(x)).Number;
            if (Math.Abs(atMost - highest) > 0.02)
                Assert.Fail($"highest over {x}: {atMost} and {highest}");
            double lowest = Enumerable.Range(0, 1600).Select(k => low + k * 0.005).FirstOrDefault(h => Least(bottom, x, h) >= edge, double.NaN);
            if (Math.Abs(atLeast - lowest) > 0.02)
                Assert.Fail($"lowest over {x}: {atLeast} and {lowest}");
        }
        Assert.True(held > 100 && kept > 3, $"{held} held, {kept} closed");

        double ToEnd(double end, double x, double z)
        {
            double low = end == 50 ? wall.Bottom.Before(end) : wall.Bottom.At(end), high = end == 50 ? wall.Top.Before(end) : wall.Top.At(end), over = Math.Max(0, Math.Max(low - z, z - high));
            return Math.Sqrt((end - x) * (end - x) + over * over);
        }

        IEnumerable<(double X, double Z)> Points(IReadOnlyList<ProfilePoint> points)
        {
            IReadOnlyList<ProfilePoint> whole = points[^1].Along < 50 ? [.. points, new ProfilePoint(50, points[^1].Elevation)] : points;
            for (int i = 0; i + 1 < whole.Count; i++)
            {
                double run = whole[i + 1].Along - whole[i].Along, rise = whole[i + 1].Elevation - whole[i].Elevation;
                int count = 1 + (int)(Math.Sqrt(run * run + rise * rise) / 0.01);
                for (int k = 0; k <= count; k++)
                    yield return (whole[i].Along + run * k / count, whole[i].Elevation + rise * k / count);
            }
        }

        static double Least(List<(double X, double Z)> points, double x, double z)
        {
            double best = double.PositiveInfinity;
            foreach ((double px, double pz) in points)
                best = Math.Min(best, (px - x) * (px - x) + (pz - z) * (pz - z));
            return Math.Sqrt(best);
        }
    }

    // 100 ft in sections of 40 and 60. Two a section: at a quarter and three quarters of each. Three for the wall as a whole: at a sixth, a half and five sixths of it.
    [Fact]
    public void Verification_test_nails_are_spread_evenly()
    {
        Wall wall = new TestWall { Limits = [40], Tests = new TestNails(2, 0.05, false, false) }.MakeWall();
        Assert.Equal([("A", 10.0, 1), ("A", 30.0, 2), ("B", 55.0, 1), ("B", 85.0, 2)], Plan(wall));
        Wall whole = new TestWall { Limits = [40], Tests = new TestNails(3, 0.05, false, true) }.MakeWall();
        Assert.Equal([("A", 16.667, 1), ("B", 50.0, 1), ("B", 83.333, 2)], Plan(whole));
        Wall later = MovedWallTests.Moved(new TestWall { Limits = [40], Tests = new TestNails(3, 0.05, false, true) }).MakeWall();
        Assert.Equal([("A", 30.417, 1), ("B", 63.75, 1), ("B", 97.083, 2)], Plan(later));
        // One section has its own two, the other takes part in the wall's three, of which only the most that any section asks for are made.
        Wall mixed = whole with { Sections = [whole.Sections[0] with { TestNails = new TestNails(2, 0.05, false, false) }, whole.Sections[1]] };
        Assert.Equal([("A", 16.667, 1), ("B", 50.0, 1), ("B", 83.333, 2), ("A", 10.0, 2), ("A", 30.0, 3)], Plan(mixed));

        static IEnumerable<(string, double, int)> Plan(Wall wall) => VerificationPlan.Of(wall).Select(p => (p.Section.Name, Math.Round(p.Target.Number, 3), p.Number));
    }

    // Grid rows at 118, 113, 108 and 103: 116.5 lies three tenths down from row 1, 119 eight tenths down from a row 0 at 123, 101.5 three tenths down from row 4.
    [Fact]
    public void Part_rows_are_numbered_by_how_far_down_they_lie()
    {
        WallProject project = RandomRows.Project(new TestWall { Tests = TestNails.None }, 0) is var p ? p with { Walls = [p.Walls[0] with { Sections = [p.Walls[0].Sections[0] with { Rows = RowKind.Level, Pattern = Pattern.Square }] }] } : null!;
        (Bay[] bays, List<RowHeads> rows) = Rows(project);
        RowHeads[] grid = [.. rows.Where(r => !r.IsPart)];
        Assert.Equal([118.0, 113, 108, 103], grid.Select(r => r.Level));
        RowHeads Part(double level) => new(bays[0], 0, true, level, [], [Place(50)]);
        Dictionary<RowHeads, RowNumber> few = RowNumbering.Of([.. grid, Part(116.5), Part(119), Part(101.5)]);
        Assert.Equal(["0.8", "1", "1.3", "2", "3", "4", "4.3"], few.OrderByDescending(r => r.Key.Level).Select(r => r.Value.ToString()));
        // Forty part rows in one gap: each a number of its own between those of the grid rows, in order wherever tenths are not taken twice.
        RowHeads[] many = [.. Enumerable.Range(1, 40).Select(i => Part(Math.Round(118 - i * 0.12, 2)))];
        Dictionary<RowHeads, RowNumber> numbers = RowNumbering.Of([.. grid, .. many]);
        Assert.Equal(grid.Length + 40, numbers.Values.Distinct().Count());
        Assert.All(many, r => Assert.True(numbers[r].CompareTo(RowNumber.Grid(1)) > 0 && numbers[r].CompareTo(RowNumber.Grid(2)) < 0));
    }

    // Top 110, down to 100.5 at 40 and up again over a bottom of 100: under 2 ft where the top is under 102, between 30 + 8 / 0.95 and 50 - 8 / 0.95.
    [Fact]
    public void Where_the_face_is_lower_than_twice_the_edge_no_nail_fits()
    {
        WallProject project = RandomRows.Project(new TestWall { Top = [new(0, 110), new(30, 110), new(40, 100.5), new(50, 110), new(100, 110)], Limits = [] }, 0);
        (Bay[] bays, _) = Rows(project);
        (Along start, Along end) = Assert.Single(CoverRule.NoNailHeight(bays[0]));
        Assert.Equal((38.421, 41.579), (Math.Round(start.Number, 3), Math.Round(end.Number, 3)));
        Assert.DoesNotContain(CoverRule.Breaks(bays[0], [], strict: false), b => b.Start.Number < 40 && b.End.Number > 40);
    }

    // Holes of 0.5 ft with 0.5 ft clear keep 1 ft from centre to centre, square to holes that fall by 10 degrees: 1 / cos 10 = 1.0154 ft of height one above the other,
    // 0.8 / cos 10 = 0.8123 ft where they stand 0.6 ft beside each other, none from 1 ft on.
    [Theory]
    [InlineData(50, 111.02, true)]
    [InlineData(50, 111.01, false)]
    [InlineData(50, 108.98, true)]
    [InlineData(49.4, 110.82, true)]
    [InlineData(50.6, 110.80, false)]
    [InlineData(51, 110, true)]
    [InlineData(50.99, 110, false)]
    public void Heads_beside_each_other_leave_room_for_parallel_holes(double along, double elevation, bool clear)
    {
        (Bay[] bays, _) = Rows(RandomRows.Project(new TestWall { Tests = TestNails.None }, 0));
        Assert.Equal(clear, PartRowBand.IsClear(bays[0], [HeadAt(20, 110), HeadAt(50, 110)], HeadAt(along, elevation)));
    }

    // min_gap of 2 ft is shared by two sections, 1 ft each; one of 1.2 ft between two others keeps 0.6 ft at each end, and its neighbours the rest.
    [Fact]
    public void Sections_share_the_least_gap_at_their_limits()
    {
        (Bay[] two, _) = Rows(RandomRows.Project(new TestWall { Limits = [40], Tests = TestNails.None }, 0));
        Assert.Equal((0.0, 1.0, 1.0, 0.0), (two[0].StartLimitClear, two[0].EndLimitClear, two[1].StartLimitClear, two[1].EndLimitClear));
        Assert.Equal((39.0, 38.5, 41.0, 41.5), (two[0].LastPlace(Height(110)).Number, two[0].LastPlace(Height(110), 1.5).Number, two[1].FirstPlace(Height(110)).Number, two[1].FirstPlace(Height(110), 1.5).Number));
        Assert.Equal((1.0, 99.0), (two[0].FirstPlace(Height(110)).Number, two[1].LastPlace(Height(110)).Number));
        (Bay[] three, _) = Rows(RandomRows.Project(new TestWall { Limits = [40, 41.2], Tests = TestNails.None }, 0));
        Assert.Equal([0, 1.4, 0.6, 0.6, 1.4, 0], three.SelectMany(b => new[] { b.StartLimitClear, b.EndLimitClear }).Select(c => Math.Round(c, 9)));
        (Bay[] wide, _) = Rows(RandomRows.Project(new TestWall { Limits = [40, 42.5], Tests = TestNails.None }, 0));
        Assert.Equal([0, 1.0, 1, 1, 1, 0], wide.SelectMany(b => new[] { b.StartLimitClear, b.EndLimitClear }).Select(c => Math.Round(c, 9)));
    }

    [Fact]
    public void A_part_row_without_a_grid_row_is_numbered_from_the_top()
    {
        (Bay[] bays, _) = Rows(RandomRows.Project(new TestWall { Tests = TestNails.None }, 0));
        Assert.Equal("0.4", RowNumbering.Of([new RowHeads(bays[0], 0, true, 118, [], [Place(50)])]).Values.Single().ToString());
    }
}
