using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Quantities;

public class TakeOffTests
{
    private static QuantityTable Measure(TestWall wall)
    {
        (WallProject project, NailLayout layout) = wall.Make();
        return TakeOff.Measure(project, layout);
    }

    private static double Total(QuantityTable table, string name) =>
        table.Totals[name].Amount ?? throw new InvalidOperationException(name + ": " + table.Totals[name].Note);

    private static void Near(double expected, double actual, double tolerance = 1e-9) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance * Math.Max(1, Math.Abs(expected)), $"expected {expected:R}, got {actual:R}");

    [Fact]
    public void A_plain_wall_measures_as_by_hand()
    {
        QuantityTable table = Measure(new TestWall());
        Near(2000, Total(table, QuantityName.FaceArea));
        Assert.Equal(20 * 4, Total(table, QuantityName.NailCount));
        Assert.Equal(80 * 24, Total(table, QuantityName.PayLength));
        Assert.Equal(40, Total(table, QuantityName.Projection));
        Assert.Equal(80 * 24.5, Total(table, QuantityName.BarLength));
        Near(80 * 24.5 * 2.670, Total(table, QuantityName.BarWeight));
        Near(2000.0 / 3, Total(table, QuantityName.ShotcreteVolume));
        Near(100, Total(table, QuantityName.CopingLength));
        Assert.Equal(4, Total(table, QuantityName.ProofCount));
        Assert.Equal(1, Total(table, QuantityName.VerificationCount));
    }

    [Fact]
    public void Trapezoid_with_steps_is_the_sum_of_its_trapezoids()
    {
        QuantityTable table = Measure(new TestWall
        {
            Top = [new(0, 118), new(60, 121.5), new(100, 121.5)],
            Steps = [new(0, 102), new(40, 102.5)],
            Limits = [60],
        });
        double a = 60 * (118 + 121.5) / 2 - 40 * 102 - 20 * 102.5, b = 40 * 121.5 - 40 * 102.5;
        Near(a, table.Sections[0].Amounts[QuantityName.FaceArea].Amount!.Value);
        Near(b, table.Sections[1].Amounts[QuantityName.FaceArea].Amount!.Value);
        Near(a + b, Total(table, QuantityName.ElevationArea));
        Near(Math.Sqrt(60 * 60 + 3.5 * 3.5) + 40, Total(table, QuantityName.CopingLength));
        Assert.Equal(16, table.Sections[0].LeastHeight, 9);
        Assert.Equal(19, table.Sections[0].GreatestHeight, 9);
    }

    [Theory]
    [InlineData(Turn.Left, Turn.Right, 1)]
    [InlineData(Turn.Right, Turn.Right, -1)]
    [InlineData(Turn.Left, Turn.Left, -1)]
    public void Face_behind_an_arc_is_a_piece_of_a_cylinder(Turn turn, Turn side, int grows)
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Arc(250, 100, turn)],
            Side = side,
            FaceOffset = 10,
        });
        Near(100.0 * 20 * (250 + grows * 10) / 250, Total(table, QuantityName.FaceArea));
    }

    [Fact]
    public void Battered_face_is_measured_up_its_slope()
    {
        QuantityTable table = Measure(new TestWall { Batter = new Batter(8, 104) });
        Near(2000 / Math.Cos(Angles.ToRadians(8)), Total(table, QuantityName.FaceArea));
        Near(2000, Total(table, QuantityName.ElevationArea));
    }

    [Fact]
    public void Battered_face_on_an_arc_is_a_frustum_of_a_cone()
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Arc(250, 100, Turn.Left)],
            Batter = new Batter(8, 100),
        });
        double lean = 20 * Math.Tan(Angles.ToRadians(8)), slant = 20 / Math.Cos(Angles.ToRadians(8));
        double angle = 100.0 / 250;
        Near(angle / 2 * (250 + 250 + lean) * slant, Total(table, QuantityName.FaceArea));
    }

    [Theory]
    [InlineData(Turn.Right, 1)]
    [InlineData(Turn.Left, -1)]
    public void Corner_cuts_both_legs_at_the_mitre(Turn turn, int outside)
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(60), new LayoutElement.Bend(turn, 30), new LayoutElement.Tangent(40)],
            FaceOffset = 3,
        });
        double cut = 3 * Math.Tan(Angles.ToRadians(15));
        Near(20 * (100 - outside * 2 * cut), Total(table, QuantityName.FaceArea));
        Near(100 - outside * 2 * cut, Total(table, QuantityName.CopingLength));
    }

    [Fact]
    public void Battered_corner_is_cut_along_a_sloping_mitre()
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(60), new LayoutElement.Bend(Turn.Right, 30), new LayoutElement.Tangent(40)],
            Batter = new Batter(6, 100),
        });
        double lean = Math.Tan(Angles.ToRadians(6)), half = Math.Tan(Angles.ToRadians(15));
        double flat = 100 * 20 - 2 * (lean * half * 20 * 20 / 2);
        Near(flat / Math.Cos(Angles.ToRadians(6)), Total(table, QuantityName.FaceArea));
    }

    [Fact]
    public void Openings_are_deducted_and_grade_divides_the_face()
    {
        QuantityTable table = Measure(new TestWall
        {
            Grade = [new(0, 104), new(100, 106)],
            Openings = [new Opening("Culvert", 20, 26, 106, 112, TestWall.Spot)],
        });
        Near(2000, Total(table, QuantityName.FaceAreaGross));
        Near(36, Total(table, QuantityName.OpeningArea));
        Near(1964, Total(table, QuantityName.FaceArea));
        Near(100 * (16 + 14) / 2.0 - 36, Total(table, QuantityName.ExposedArea));
    }

    [Fact]
    public void Cells_of_the_heads_fill_the_face()
    {
        QuantityTable table = Measure(new TestWall
        {
            Top = [new(0, 118), new(60, 121.5)],
            Steps = [new(0, 102), new(40, 102.5)],
            Limits = [60],
        });
        Near(Total(table, QuantityName.FaceArea), table.Nails.Sum(n => n.Area ?? 0), 1e-6);
        Near(25, Measure(new TestWall()).Nails.Single(n => n.Nail.Mark == "A-2-05").Area!.Value);
        Assert.All(table.Nails.Where(n => n.IsSacrificial), n => Assert.Null(n.Area));
    }

    // ASTM A615/A615M Table 1, public copies: nominal weight and area of #8; grout of a 6 in hole, 30 ft: 5.89049 ft3 bare,
    // 5.72590 ft3 less the bar (arithmetic), 130 % take 7.65763 ft3 on the bare hole (FHWA-NHI-14-007, 9.3.4, as transcribed).
    [Fact]
    public void Grout_of_a_thirty_foot_hole()
    {
        QuantityTable table = Measure(new TestWall { Length = 30, Rates = new Rates { GroutOverrun = 1.3 } });
        NailQuantity nail = table.Nails[0];
        Assert.Equal(5.89049, nail.HoleVolume, 5);
        Assert.Equal(5.72590, nail.Grout, 5);
        Assert.Equal(7.65763, nail.HoleVolume * 1.3, 5);
        Near(1.3 * Total(table, QuantityName.GroutVolume), Total(table, QuantityName.GroutWithOverrun));
        Assert.Equal(2.670 * 30.5, nail.Weight!.Value, 9);
    }

    [Fact]
    public void Pay_length_from_the_back_leaves_the_bar_as_long()
    {
        QuantityTable table = Measure(new TestWall { From = PayLengthFrom.BackOfShotcrete });
        NailQuantity nail = table.Nails[0];
        double along = 1.0 / 3 / Math.Cos(Angles.ToRadians(10));
        Near(24 - along, nail.PayLength);
        Near(24.5, nail.BarLength);
        Near(nail.BarLength, nail.PayLength + nail.Projection + nail.ShotcreteAlong);
    }

    [Fact]
    public void Pay_length_from_the_back_of_a_shotcrete_without_thickness_is_incomplete()
    {
        QuantityTable table = Measure(new TestWall { From = PayLengthFrom.BackOfShotcrete, Facing = null });
        Quantity pay = table.Totals[QuantityName.PayLength];
        Near(Total(table, QuantityName.FaceLength), pay.Amount!.Value);
        Assert.Equal("facing: shotcrete", Assert.Single(pay.Missing).Key);
        Assert.Equal(QuantityState.Incomplete, pay.State);
        Assert.Empty(Measure(new TestWall { Facing = null }).Totals[QuantityName.PayLength].Missing);
    }

    [Fact]
    public void Shotcrete_loss_counts_on_what_is_supplied()
    {
        QuantityTable table = Measure(new TestWall { Rates = new Rates { ShotcreteLoss = 0.2 } });
        Near(1.25 * Total(table, QuantityName.ShotcreteVolume), Total(table, QuantityName.ShotcreteSupplied));
    }

    [Fact]
    public void What_is_not_given_is_said_and_not_assumed()
    {
        QuantityTable table = Measure(new TestWall { Facing = null, Drainage = null, Lifts = null });
        Assert.Null(table.Totals[QuantityName.ShotcreteVolume].Amount);
        Assert.Equal("no shotcrete thickness (facing: shotcrete): Wall 1", table.Totals[QuantityName.ShotcreteVolume].Note);
        Assert.Null(table.Totals[QuantityName.ExposedArea].Amount);
        Assert.Null(table.Totals[QuantityName.GroutWithOverrun].Amount);
        Assert.Null(table.Totals[QuantityName.PanelCount].Amount);
        Assert.Equal(QuantityState.NotAsked, table.Totals[QuantityName.StripCount].State);
        Assert.Contains("default", Measure(new TestWall { Drainage = new(null, null) }).Totals[QuantityName.StripCount].Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_amount_of_nails_names_its_nails()
    {
        QuantityTable table = Measure(new TestWall { Limits = [50] });
        Assert.Equal(table.Nails.Where(n => !n.IsSacrificial).Select(n => n.Nail.Mark), table.Totals[QuantityName.PayLength].Trace);
        Assert.Equal(["100+00.00 to 100+50.00", "100+50.00 to 101+00.00"], table.Totals[QuantityName.FaceArea].Trace);
    }

    [Fact]
    public void Grid_stations_reconcile()
    {
        (WallProject project, NailLayout layout) = new TestWall().Make();
        Nail gone = layout.Nails[3];
        NailLayout thinned = layout with
        {
            Nails = [.. layout.Nails.Where(n => n != gone)],
            LeftOut = [new LeftOut(gone.Mark, gone.Wall, gone.Section, gone.Row, gone.Column, gone.Along, gone.Elevation, "shaft")],
        };
        QuantityTable table = TakeOff.Measure(project, thinned);
        GridCount row = table.Sections[0].Grid[0];
        Assert.Equal((20, 1, 0, 19, 0), (row.GridStations, row.LeftOut, row.Added, row.Nails, row.Difference));
        NonTypicalGap gap = Assert.Single(table.Sections[0].Gaps);
        Assert.Equal(10, gap.Gap, 9);
        Assert.True(table.Sections[0].GreatestArea > 30);
    }

    [Fact]
    public void Second_ways_agree()
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(30), new LayoutElement.Arc(250, 30, Turn.Left), new LayoutElement.Bend(Turn.Right, 30), new LayoutElement.Tangent(40)],
            FaceOffset = 2,
            Batter = new Batter(5, 100),
            Top = [new(0, 118), new(60, 121.5)],
            Steps = [new(0, 102), new(40, 102.5)],
            Limits = [50],
        });
        Assert.All(table.Checks.Where(c => c.Limit < 0.2), c =>
            Assert.True(Math.Abs(c.First - c.Second!.Value) <= c.Limit * Math.Abs(c.First) + 1e-9, $"{c.Text}: {c.First} against {c.Second} ({c.Way})"));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(20, 1)]
    [InlineData(21, 2)]
    [InlineData(100, 5)]
    [InlineData(137, 7)]
    [InlineData(400, 20)]
    public void Five_percent_of_the_nails_rounded_up(int nails, int tests) => Assert.Equal(tests, TestTakeOff.ProofCount(0.05, nails));

    // FHWA-NHI-14-007 eq. 9.1 and 9.7 as transcribed; arithmetic: 6 in hole and 15 psi give 3.39292 kip/ft; #8 Gr 75 caps the bond
    // length at 15.717 ft, #10 Gr 75 at 25.266 ft; 10 ft of bond give 33.929 kip.
    [Fact]
    public void Test_loads_follow_the_bond()
    {
        var rates = new Rates { DesignBond = Math.PI * 6 * 15 * 12 / 1000, TestFreeLength = 3 };
        var asked = new TestNails(1, 0.05, false, false);
        SoilTest test = Measure(new TestWall { Rates = rates, Tests = asked }).Effect.Tests[0];
        Assert.Equal(15.717, test.Cap, 3);
        Assert.Equal(10, test.Bonded, 9);
        Assert.Equal(33.929, test.Load, 3);
        SoilTest thick = Measure(new TestWall { Rates = rates, Tests = asked, Bar = BarTable.Find("#10", 75)! }).Effect.Tests[0];
        Assert.Equal(25.266, thick.Cap, 3);
    }
}
