using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Quantities;

public class FacingTests
{
    private static QuantityTable Measure(TestWall wall)
    {
        (WallProject project, NailLayout layout) = wall.Make();
        return TakeOff.Measure(project, layout);
    }

    [Fact]
    public void Panels_stand_in_level_courses_from_the_lowest_bottom()
    {
        QuantityTable table = Measure(new TestWall
        {
            End = 45,
            Elements = [new LayoutElement.Tangent(45)],
            Top = [new(0, 115), new(30, 115), new(45, 118)],
            Steps = [new(0, 100), new(20, 102.5)],
            Panels = new Panels(10, 5, 0),
            Breaks = [10, 20, 30, 40],
        });
        // Columns 0-10 and 10-20: three full panels each. 20-30: 2.5, 5, 5. 30-40 and 40-45: 2.5, 5, 5 and a sloping top course.
        Assert.Equal(6 + 2 + 2, table.Panels.Where(p => p.Size == PanelSize.Full).Sum(p => p.Count));
        Assert.Equal(2, table.Panels.Where(p => p.Size == PanelSize.Partial).Sum(p => p.Count));
        Assert.Equal(5, table.Panels.Where(p => p.Size == PanelSize.SpecialHeight).Sum(p => p.Count));
        PanelCount sloping = Assert.Single(table.Panels, p => p.Course == 4 && p.Width == 5);
        Assert.Equal((2.0, 3.0), (sloping.StartHeight, sloping.EndHeight));
        Assert.Equal(45, table.Totals[QuantityName.PadLength].Amount!.Value, 9);
        Assert.Equal(1, table.Totals[QuantityName.PadSteps].Amount);
    }

    [Fact]
    public void Panels_restart_at_a_corner()
    {
        QuantityTable table = Measure(new TestWall
        {
            Elements = [new LayoutElement.Tangent(55), new LayoutElement.Bend(Turn.Right, 30), new LayoutElement.Tangent(45)],
            Top = [new(0, 110)],
            Panels = new Panels(10, 5, 0),
            Breaks = [10, 20, 30, 40, 50, 55, 65, 75, 85, 95],
        });
        Assert.Equal(2 * 9, table.Panels.Where(p => p.Size == PanelSize.Full).Sum(p => p.Count));
        Assert.Equal(4, table.Panels.Where(p => p.Size == PanelSize.Partial).Sum(p => p.Count));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(3.5)]
    [InlineData(1.75)]
    public void Strips_are_no_farther_apart_than_allowed_and_say_what_they_touch(double spacing)
    {
        QuantityTable table = Measure(new TestWall { Spacing = spacing });
        double[] at = [.. table.Strips.Select(s => s.Along)];
        Assert.True(at[0] <= 5 + 1e-9 && at[^1] >= 95 - 1e-9);
        for (int i = 1; i < at.Length; i++)
            Assert.InRange(at[i] - at[i - 1], 1e-6, 10 + 1e-9);
        foreach (DrainStrip strip in table.Strips)
        {
            IEnumerable<string> near = table.Nails.Where(n => Math.Abs(n.Nail.Along - strip.Along) < 0.75 - 1e-9).Select(n => n.Nail.Mark);
            Assert.Equal(near.Order(), strip.Touches.Order());
            Assert.Equal(20, strip.Length, 9);
        }
    }

    [Fact]
    public void A_strip_ends_at_an_opening_and_goes_on_behind_it()
    {
        QuantityTable table = Measure(new TestWall { Openings = [new Opening("Culvert", 10, 40, 106, 112, TestWall.Spot)] });
        Assert.All(table.Strips, s => Assert.Equal(s.Along is > 10 and < 40 ? 14 : 20, s.Length, 9));
        Assert.Contains(table.Strips, s => s.Along is > 10 and < 40);
    }

    [Fact]
    public void Strip_that_cannot_be_clear_names_the_nails()
    {
        QuantityTable table = Measure(new TestWall { Spacing = 1.25, Tests = TestNails.None });
        Assert.All(table.Strips, s => Assert.NotEmpty(s.Touches));
    }

    [Fact]
    public void Lifts_cut_the_whole_face_once()
    {
        QuantityTable table = Measure(new TestWall { Steps = [new(0, 100), new(40, 102.5)], Top = [new(0, 118), new(60, 121.5)], Limits = [60] });
        Assert.Equal(table.Totals[QuantityName.FaceArea].Amount!.Value, table.Lifts.Sum(l => l.CutArea), 6);
        Assert.All(table.Lifts, l => Assert.Equal(l.Exposed > 4, l.IsTooHigh));
        Assert.Null(table.Totals[QuantityName.ExcavationVolume].Amount);
    }

    [Fact]
    public void Level_wall_is_cut_row_by_row()
    {
        QuantityTable table = Measure(new TestWall());
        // Rows at depths 2, 7, 12, 17, each cut 1.5 below; the last cut is 18.5 to 20.
        Assert.Equal([350.0, 500, 500, 500, 150], table.Lifts.Select(l => Math.Round(l.CutArea, 6)));
        Assert.Equal([3.5, 5, 5, 5, 1.5], table.Lifts.Select(l => Math.Round(l.Exposed, 6)));
        Assert.Null(table.Lifts[^1].Row);
    }

    [Fact]
    public void Excavation_by_average_end_area_of_the_sections_in_front()
    {
        CrossSectionPoint[] ground = [new(0, 120), new(20, 120), new(40, 100)];
        QuantityTable table = Measure(new TestWall { CrossSections = [new CrossSection(0, ground), new CrossSection(100, ground)] });
        Assert.Equal(100 * (20 * 20 + 20 * 20 / 2), table.Totals[QuantityName.ExcavationVolume].Amount!.Value, 3);
    }

    // By hand: lifts of 3.5, 5, 5, 5 and 1.5 ft; the ground in front is 20 ft wide at 0 and 10 ft wide at 100, upright at its end.
    [Fact]
    public void Excavation_lift_by_lift_as_by_hand()
    {
        QuantityTable table = Measure(new TestWall
        {
            CrossSections = [new CrossSection(0, [new(0, 120), new(20, 120)]), new CrossSection(100, [new(0, 120), new(10, 120)])],
        });
        Assert.Equal(
            [(3.5 * 20 + 3.5 * 10) / 2 * 100, 7500, 7500, 7500, (1.5 * 20 + 1.5 * 10) / 2 * 100],
            table.Lifts.Select(l => Math.Round(l.Volume!.Value, 3)));
    }

    // By hand: a wall whose top rises from 0 to 12 ft over 50 ft and falls again, before ground 10 ft wide at any height, is a wedge:
    // 10 x 12 x 100 / 2. The lifts that end in a wedge are wedges too, not pyramids.
    [Fact]
    public void Excavation_before_a_top_that_runs_out_is_a_wedge()
    {
        CrossSectionPoint[] ground = [new(0, 130), new(10, 130)];
        QuantityTable table = Measure(new TestWall
        {
            Top = [new(0, 100), new(50, 112), new(100, 100)],
            CrossSections = [new CrossSection(30, ground)],
        });
        Assert.Equal(6000, table.Totals[QuantityName.ExcavationVolume].Amount!.Value, 2);
    }

    // By hand: cross sections in the middle of the wall only; the last one goes on to the wall's end, sections limits do not matter.
    [Fact]
    public void Excavation_does_not_depend_on_the_sections()
    {
        var wall = new TestWall
        {
            CrossSections = [new CrossSection(20, [new(0, 120), new(20, 120)]), new CrossSection(60, [new(0, 120), new(10, 120)])],
        };
        double byHand = 20 * (20 * 20 + 40 * 15 + 40 * 10);
        Assert.Equal(byHand, Measure(wall).Totals[QuantityName.ExcavationVolume].Amount!.Value, 2);
        Assert.Equal(byHand, Measure(wall with { Limits = [37] }).Totals[QuantityName.ExcavationVolume].Amount!.Value, 2);
    }

    [Fact]
    public void The_cut_below_a_row_is_said_to_be_a_default()
    {
        Assert.Contains("default", Measure(new TestWall { Lifts = new Lifts(null, 4, 24) }).Totals[QuantityName.LiftCount].Note, StringComparison.Ordinal);
        Assert.Equal("", Measure(new TestWall()).Totals[QuantityName.LiftCount].Note);
        Assert.Equal([3.5, 5, 5, 5, 1.5], Measure(new TestWall { Lifts = null }).Lifts.Select(l => Math.Round(l.Exposed, 6)));
    }

    // boneyardtools.com: 50 and 70 ft2, 100 ft apart: 6000 ft3.
    [Fact]
    public void End_areas_published_single_stretch()
    {
        QuantityTable table = Measure(new TestWall
        {
            CrossSections = [new CrossSection(0, [new(0, 130), new(2.5, 130)]), new CrossSection(100, [new(0, 130), new(3.5, 130)])],
        });
        Assert.Equal(6000, table.Totals[QuantityName.ExcavationVolume].Amount!.Value, 6);
    }

    // Vose, Handbook of Railroad Construction, art. 108: base 20, slopes 1.5:1, cuts 0, 5, 10, 15, 0 ft every 50 ft. End areas exactly
    // 56,250 ft3, zero ends counted as mean areas (the book's rounded areas print 56,200). The cut's areas stand here as ground 20 ft high.
    [Fact]
    public void End_areas_published_railroad_cut()
    {
        static double Area(double h) => 20 * h + 1.5 * h * h;
        double[] depths = [0, 5, 10, 15, 0];
        QuantityTable table = Measure(new TestWall
        {
            End = 200,
            Elements = [new LayoutElement.Tangent(200)],
            CrossSections = [.. depths.Select((h, i) => new CrossSection(50 * i, [new(0, 130), new(Math.Max(1e-9, Area(h) / 20), 130)]))],
        });
        Assert.Equal(56250, table.Totals[QuantityName.ExcavationVolume].Amount!.Value, 4);
    }

    [Theory]
    [InlineData(24.5, 60, 10, 0, 5)]
    [InlineData(60, 60, 3, 0, 3)]
    [InlineData(70, 60, 4, 1, 5)]
    [InlineData(30, 20, 4, 1, 6)]
    public void Stock_bars_and_couplers(double cut, double stock, int count, int couplers, int bars)
    {
        Assert.Equal(bars, BarList.StockBars(cut, stock, count));
        Assert.Equal(couplers, NailTakeOff.CeilingOf(cut / stock) - 1);
    }
}
