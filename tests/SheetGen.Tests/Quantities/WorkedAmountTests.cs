using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Quantities;

/// <summary>Amounts worked by hand that mutation testing found unseen.</summary>
public sealed class WorkedAmountTests
{
    private static QuantityTable Measure(TestWall wall)
    {
        (WallProject project, NailLayout layout) = wall.Make();
        return TakeOff.Measure(project, layout);
    }

    private static double Total(QuantityTable table, string name) => table.Totals[name].Amount!.Value;

    [Fact]
    public void Defaults_are_those_of_the_unit()
    {
        Assert.Equal([10.0, 10, 3], Units(StripTakeOff.DefaultSpacing));
        Assert.Equal([1.5, 1.5, 0.5], Units(LiftTakeOff.DefaultBelowRow));
        Assert.Equal([3.0, 3, 1], Units(StockPlan.DefaultLeastPiece));

        static double[] Units(Func<LengthUnit, double> of) => [of(LengthUnit.Foot), of(LengthUnit.SurveyFoot), of(LengthUnit.Metre)];
    }

    // No nails in the way: at their even places. One nail's hole closes (2, 3) of a strip's 10: the middle of the wider stretch that is left, (3, 9.5).
    // Closed from 4 to 8 with 5 to each end at most: only 5 is left, and it touches. With 10 between strips and 5 to each end, and 4 to 4.9 and 13.1 to 14 closed,
    // the pair at the inner edges of the closed stretches is the nearest to the even places 4.5 and 13.5.
    [Theory]
    [InlineData(30, 10, "", "5 15 25")]
    [InlineData(31, 10, "", "3.875 11.625 19.375 27.125")]
    [InlineData(10, 20, "2 3", "6.25")]
    [InlineData(10, 20, "7 8", "3.75")]
    [InlineData(10, 10, "4 8", "5")]
    [InlineData(18, 10, "4 4.9,13.1 14", "4.9 13.1")]
    public void Strips_stand_where_the_holes_leave_room(double width, double reach, string blocked, string places)
    {
        (double, double)[] closed = [.. blocked.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(Pair)];
        foreach (double shift in (double[])[0, 40])
        {
            IReadOnlyList<double> at = StripPlaces.Of(new StripExtent(shift, shift, shift + width, shift + width), reach, 0.5, [.. closed.Select(c => (c.Item1 + shift, c.Item2 + shift))]);
            Assert.Equal(places.Split(' ').Select(p => double.Parse(p, System.Globalization.CultureInfo.InvariantCulture)), at.Select(a => Math.Round(a - shift, 9)));
        }

        static (double, double) Pair(string text)
        {
            double[] ends = [.. text.Split(' ').Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];
            return (ends[0], ends[1]);
        }
    }

    /// <summary>Every strip keeps the spacing and its room at the ends, whatever is closed; there are as few as that asks for, and on most walls none touches a hole.</summary>
    [Fact]
    public void Random_strips_keep_spacing_and_ends()
    {
        var random = new Random(5);
        int clear = 0;
        for (int round = 0; round < 300; round++)
        {
            double start = random.Next(0, 50), width = 4 + random.NextDouble() * 40, reach = 6 + random.NextDouble() * 6, half = 0.5;
            var blocked = new List<(double From, double To)>();
            for (double at = start + random.NextDouble() * 4; at < start + width; at += 2.2 + random.NextDouble() * 4)
                blocked.Add((at - 0.75, at + 0.75));
            var extent = new StripExtent(start, start, start + width, start + width);
            IReadOnlyList<double> strips = StripPlaces.Of(extent, reach, half, blocked);
            Assert.Equal(Math.Max(1, (int)Math.Ceiling(width / reach - 1e-9)), strips.Count);
            Assert.InRange(strips[0] - start, Math.Min(half, width / 2) - 1e-6, reach / 2 + 1e-6);
            Assert.InRange(start + width - strips[^1], Math.Min(half, width / 2) - 1e-6, reach / 2 + 1e-6);
            for (int i = 1; i < strips.Count; i++)
                Assert.InRange(strips[i] - strips[i - 1], 1e-6, reach + 1e-6);
            int touching = strips.Count(s => blocked.Any(b => b.From < s - 1e-6 && s + 1e-6 < b.To));
            clear += touching == 0 ? 1 : 0;
        }
        Assert.True(clear > 150, $"only {clear} walls with all strips clear");
    }

    /// <summary>Cut from stock: every piece is there, as often as wanted; no stock bar is overfull; coupled pieces are not shorter than the least; the sums agree.</summary>
    [Fact]
    public void A_cutting_plan_holds_every_piece_once()
    {
        var random = new Random(11);
        for (int round = 0; round < 200; round++)
        {
            double[] stock = random.Next(2) == 0 ? [20] : [20, random.Next(24, 60)];
            double? least = random.Next(3) switch { 0 => null, 1 => 5, _ => 25 };
            BarCut[] bars =
            [
                .. Enumerable.Range(0, random.Next(1, 5)).Select(i => new TestWall { Length = 10 + random.Next(1, 160) / 4.0, End = 5 + 5 * random.Next(1, 8), Tests = TestNails.None }).SelectMany(w => Measure(w with { Drainage = null, Facing = null, Lifts = null }).Bars),
            ];
            (WallProject project, _) = new TestWall { Rates = new Rates { StockLengths = stock, LeastPiece = least } }.Make();
            CuttingPlan plan = StockPlan.Make(project, bars)!;
            double longest = stock.Max(), held = Math.Min(least ?? 3, longest / 2);
            Assert.Equal(held, plan.LeastPiece);
            Assert.Equal(bars.Sum(b => b.CutLength * b.Count), plan.Used, 1e-3);
            Assert.All(plan.Patterns, p => Assert.InRange(p.Drop, -1e-6, p.StockLength));
            var wanted = bars.SelectMany(b => Enumerable.Repeat(b, b.Count)).SelectMany(b => Coupled(b.CutLength, longest, held)).GroupBy(p => p).ToDictionary(g => g.Key, g => g.Count());
            var cut = plan.Patterns.SelectMany(p => p.Pieces.Select(q => (q, p.Count))).GroupBy(p => p.q).ToDictionary(g => g.Key, g => g.Sum(p => p.Count));
            Assert.Equal(wanted.OrderBy(p => p.Key), cut.OrderBy(p => p.Key));
        }

        // By hand: whole stock bars and a rest; a rest under the least takes what it lacks from the bar before it.
        static IEnumerable<double> Coupled(double cut, double longest, double least)
        {
            var pieces = new List<double>();
            while (cut > longest + 1e-6)
            {
                pieces.Add(longest);
                cut -= longest;
            }
            if (pieces.Count > 0 && cut < least)
            {
                pieces[^1] -= least - cut;
                cut = least;
            }
            return pieces.Append(cut).Select(p => Math.Round(p, 6));
        }
    }

    // The lengths of an Euler spiral's face: the line's length less the angle it turns by times the offset, since each place stands on its own circle. Radius 100 to 60
    // over 40 turns by 40 x (1/100 + 1/60) / 2 = 0.53333.
    [Theory]
    [InlineData(2, Turn.Right, 40 - 2 * 0.5333333333333333)]
    [InlineData(2, Turn.Left, 40 + 2 * 0.5333333333333333)]
    [InlineData(-1, Turn.Right, 40 + 0.5333333333333333)]
    public void Face_behind_a_spiral(double offset, Turn turn, double length)
    {
        QuantityTable table = Measure(new TestWall { Elements = [new LayoutElement.Spiral(100, 60, 40, turn)], End = 40, FaceOffset = offset, Tests = TestNails.None });
        Assert.Equal(20 * length, Total(table, QuantityName.FaceArea), 0.01);
    }

    // The gap of 0.5 in front of the shotcrete and the facing of 5.5 in before it stand, in the middle, 0.25 and 0.5 + 5.5 / 24 in front of an arc of 80: on the outside of it.
    [Theory]
    [InlineData(Turn.Right, 1)]
    [InlineData(Turn.Left, -1)]
    public void Gap_and_facing_before_an_arc_are_measured_in_their_middle(Turn turn, int sign)
    {
        QuantityTable table = Measure(new TestWall { Elements = [new LayoutElement.Arc(80, 40, turn)], End = 40, Tests = TestNails.None });
        Assert.Equal(0.5 * 20 * 40 * (1 + sign * 0.25 / 80), Total(table, QuantityName.GapVolume), 6);
        Assert.Equal(5.5 / 12 * 20 * 40 * (1 + sign * (0.5 + 5.5 / 24) / 80), Total(table, QuantityName.FacingVolume), 6);
        Assert.Equal(20 * 40 * (1 + sign * (0.5 + 5.5 / 12) / 80), Total(table, QuantityName.PanelFaceArea), 6);
    }

    // Courses of 5 ft on a wall 15 ft high, more or less. Within two quanta (0.02 ft) a panel is a full one; 0.03 over is a course of its own.
    [Theory]
    [InlineData(115, 30, 0)]
    [InlineData(115.015, 30, 0)]
    [InlineData(114.985, 30, 0)]
    [InlineData(114.97, 20, 10)]
    [InlineData(115.03, 30, 10)]
    public void A_panel_is_full_within_two_quanta(double top, int full, int special)
    {
        QuantityTable table = Measure(new TestWall { Top = [new(0, top)], Panels = new Panels(10, 5, 0) });
        Assert.Equal((full, special, 0), ((int)Total(table, QuantityName.PanelsFull), (int)Total(table, QuantityName.PanelsSpecial), (int)Total(table, QuantityName.PanelsPartial)));
        Assert.Equal(100 * (top - 100), Total(table, QuantityName.PanelArea), 6);
    }

    // The lowest course stands 2 ft high over the first 20 ft: special, yet the full panels are P1.
    [Fact]
    public void Full_panels_are_the_first_kind()
    {
        QuantityTable table = Measure(new TestWall { Steps = [new(0, 103), new(20, 100)], Panels = new Panels(10, 5, 0) });
        Assert.All(table.PanelPieces.Where(p => p.Size == PanelSize.Full), p => Assert.Equal("P1", p.Mark));
        Assert.Equal((PanelSize.SpecialHeight, "P2"), (table.PanelPieces[0].Size, table.PanelPieces[0].Mark));
    }

    // Steel of 490 lb/ft3: 24.5 ft of #8 (0.79 in2) weigh 24.5 x 0.79 / 144 x 490 that way, and 24.5 x 2.67 lb as published (ASTM A615).
    [Fact]
    public void The_second_ways_are_what_they_say()
    {
        IReadOnlyList<CheckLine> lines = Measure(new TestWall { Tests = TestNails.None, Panels = new Panels(10, 5, 0) }).Checks;
        CheckLine weight = lines.Single(c => c.Name == QuantityName.BarWeight);
        Assert.Equal(80 * 24.5 * 0.79 / 144 * 490, weight.Second!.Value, 6);
        Assert.Equal(80 * 24.5 * 2.67, weight.First, 6);
        Assert.Equal(0.01, weight.Limit);
        Assert.All(lines.Where(c => c.Name is QuantityName.FaceArea or QuantityName.ShotcreteVolume or QuantityName.PanelArea), c => Assert.InRange(c.Limit!.Value, 0, 0.002));
        Assert.All(lines.Where(c => c.Name is QuantityName.FaceLength or QuantityName.GroutVolume), c => Assert.InRange(c.Limit!.Value, 0, 1e-7));
        Assert.All(lines, c => Assert.Equal(c.First, c.Second!.Value, c.Name == QuantityName.BarWeight ? 0.01 * c.First : 1e-6 * c.First));
        CheckLine metric = Measure(new TestWall { Unit = LengthUnit.Metre, Tests = TestNails.None }).Checks.Single(c => c.Name == QuantityName.BarWeight);
        Assert.Equal(metric.First, metric.Second!.Value, 0.01 * metric.First);
        Assert.Equal("kg", metric.Unit);
    }

    // Level holes: a nail at the very limit of two layers (108) is in the lower one. Rows at 118, 113, 108, 103, 20 nails of 24 ft each.
    [Fact]
    public void A_level_hole_lies_in_one_layer()
    {
        var boring = new Boring("B-1", new Vector2D(-10, 50), 116, 105, null, [new BoringLayer(108, "clay", null), new BoringLayer(105, "sand", null)]);
        QuantityTable table = Measure(new TestWall { Inclination = 0, Borings = [boring], Tests = TestNails.None });
        var byLayer = table.Soils.GroupBy(s => s.Layer).ToDictionary(g => g.Key, g => g.Sum(s => s.Length));
        Assert.Equal(new Dictionary<string, double> { ["above boring B-1"] = 480, ["clay"] = 480, ["sand"] = 480, ["below boring B-1"] = 480 }, byLayer);
    }

    // 10 degrees down: 24 ft fall by 4.16756; a row at 113 runs from 113 to 108.83244, 3 ft of height above 110 and 1.16756 below.
    [Fact]
    public void A_hole_is_cut_at_the_layers_limits()
    {
        var boring = new Boring("B-1", new Vector2D(-10, 50), 130, 90, null, [new BoringLayer(110, "clay", null), new BoringLayer(90, "sand", null)]);
        QuantityTable table = Measure(new TestWall { Borings = [boring], Tests = TestNails.None, Rates = new Rates { Drilling = new Dictionary<string, double> { ["clay"] = 40 } } });
        double fall = 24 * Math.Sin(Math.PI / 18);
        SoilLength[] second = [.. table.Soils.Where(s => s.Lift == 2)];
        Assert.Equal(["clay", "sand"], second.Select(s => s.Layer));
        Assert.Equal(20 * 24 * 3 / fall, second[0].Length, 6);
        Assert.Equal(20 * 24 * (fall - 3) / fall, second[1].Length, 6);
        Assert.Equal(second[0].Length / 40, second[0].Hours!.Value, 9);
        Assert.Null(second[1].Hours);
    }

    // 0.9 A fy (GEC 7 (2015), eq. 9.2 as transcribed), with 75 ksi = 517.107 MPa.
    [Fact]
    public void Test_plans_and_limits_of_bars()
    {
        Bar bar = BarTable.Find("#8", 75)!;
        Assert.Equal(0.9 * 0.79 * 75, TestTakeOff.BarLimit(bar, LengthUnit.Foot), 9);
        Assert.Equal(0.9 * bar.AreaSquareMillimetres * 75 * 6.894757293168361 / 1000, TestTakeOff.BarLimit(bar, LengthUnit.Metre), 9);
        TestPlan plan = Measure(new TestWall()).Tests[0];
        Assert.Equal((1, 1, 4, ""), (plan.Asked, plan.Verification, plan.Proof, plan.Note));
        (WallProject project, NailLayout layout) = new TestWall { Tests = new TestNails(2, 0.05, false, false) }.Make();
        TestPlan shortPlan = TakeOff.Measure(project, layout with { Nails = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification)] }).Tests[0];
        Assert.Equal((2, 0, "2 of 2 verification test nails found no place: the engineer has to choose where"), (shortPlan.Asked, shortPlan.Verification, shortPlan.Note));
        Assert.Equal((0, 0), (TestTakeOff.ProofCount(0, 20), TestTakeOff.ProofCount(0.05, 0)));
    }

    // Coping along a top that rises by 3 in 4 over 40 ft, then drops by 10 at once and goes on level: slopes count, the drop does not.
    [Fact]
    public void Coping_follows_the_slope_and_not_the_drop()
    {
        QuantityTable table = Measure(new TestWall { Top = [new(0, 110), new(40, 140), new(40, 130), new(100, 130)] });
        Assert.Equal(50 + 60, Total(table, QuantityName.CopingLength), 6);
    }
}
