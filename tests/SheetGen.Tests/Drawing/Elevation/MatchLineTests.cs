using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Drawing.Elevation;

/// <summary>Where an elevation is cut in two, and what stands near the cut.</summary>
public class MatchLineTests
{
    private static Wall Long => SampleLayout.Read(SampleWalls.TwoWalls).Walls[0];

    private static double[] Cuts(double longest, double[] heads, double clear) =>
        [.. SheetWindow.Cut(Long, longest, heads, clear, 5).SkipLast(1).Select(w => w.End)];

    [Fact]
    public void Where_nails_stand_at_every_panel_break_and_round_station_a_finer_station_is_taken()
    {
        double[] heads = [.. Long.PanelBreaks.Concat(Enumerable.Range(0, 40).Select(i => Long.Start + 5.0 * i)).Order()];

        double[] cuts = Cuts(45, heads, 1.4);

        Assert.NotEmpty(cuts);
        Assert.All(cuts, c => Assert.True(heads.Min(h => Math.Abs(h - c)) >= 1.4, $"{c} runs through marks"));
        Assert.All(cuts, c => Assert.Equal(Math.Round(Long.LayoutLine.Stationing.Printed(c).Number), Long.LayoutLine.Stationing.Printed(c).Number, 6));
    }

    [Fact]
    public void Where_no_station_is_free_the_middle_of_the_widest_gap_is_taken()
    {
        double[] heads = [.. Enumerable.Range(0, 400).Select(i => Long.Start + 0.45 * i).Where(h => h < Long.Start + 30.1 || h > Long.Start + 30.8)];

        double cut = Cuts(45, heads, 2)[0];

        Assert.Equal(Long.Start + (29.7 + 31.05) / 2, cut, 6);
    }

    [Fact]
    public void A_panel_break_far_off_does_not_shorten_a_sheet_that_a_round_station_fills()
    {
        double far = Long.Start + 0.4 * 45;
        double[] heads = [.. Long.PanelBreaks.Where(b => Math.Abs(b - far) > 3)];

        Assert.True(Cuts(45, heads, 1)[0] > Long.Start + 30);
    }

    /// <summary>Sample walls on small sheets: no symbol of a nail is cut in two by a match line, and no mark of a section.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void No_symbol_is_cut_in_two_at_a_match_line(bool metric)
    {
        string yaml = metric
            ? SampleWalls.Metric.Replace("ISO A1", "ISO A3", StringComparison.Ordinal)
            : SampleWalls.TwoWalls.Replace("scale: 10", "scale: 5", StringComparison.Ordinal).Replace("ANSI D", "ANSI B", StringComparison.Ordinal);
        SheetSet set = SampleSheets.Compose(yaml);

        int lines = 0, arrows = 0;
        foreach (Sheet sheet in set.Sheets.Where(s => s.IsView && s.Viewports.Count > 0))
        {
            Viewport view = sheet.Viewports[0];
            double[] xs = [.. sheet.Paper.OfType<Line>().Where(l => l.Layer == LayerRole.MatchLine && l.From.X == l.To.X && Math.Abs(l.From.Y - view.Frame.Bottom) < 1e-6).Select(l => l.From.X)];
            lines += xs.Length;
            foreach (BlockReference nail in set.Model.OfType<BlockReference>().Where(b => b.Nail is not null))
            {
                Point2 at = view.ToPaper.Apply(nail.Position);
                if (at.Y > view.Frame.Bottom && at.Y < view.Frame.Top)
                    Assert.All(xs, x => Assert.True(Math.Abs(at.X - x) > NailSymbols.Radius, $"{sheet.Name}: {nail.Nail} is cut"));
            }
            // The arrows of cuts are whole, on paper, and point to the left of one who stands in front.
            Fill[] heads = Arrows(sheet);
            arrows += heads.Length;
            Assert.All(heads, h => Assert.True(h.Outline[0].Point.X < h.Outline[1].Point.X));
        }
        Assert.True(lines > 0 && arrows > 0);
        Assert.DoesNotContain(set.Model.OfType<Fill>(), f => f.Layer == LayerRole.Title);
    }

    /// <summary>The heads of the arrows at the station axis; the north arrow stands elsewhere.</summary>
    private static Fill[] Arrows(Sheet sheet) =>
        [.. sheet.Paper.OfType<Fill>().Where(f => f.Layer == LayerRole.Title && Math.Abs(f.Outline[0].Point.Y - sheet.Viewports[0].Frame.Bottom - 11) < 1e-6)];

    [Fact]
    public void Seen_from_behind_the_arrows_of_cuts_point_the_other_way()
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls);
        NailLayout layout = SampleLayout.Make(project);
        SheetSet set = SampleSheets.Compose(project with { Sheets = project.Sheets with { FromBehind = true } }, layout);

        Fill[] heads = [.. set.Sheets.Where(s => s.IsView).SelectMany(Arrows)];

        Assert.NotEmpty(heads);
        Assert.All(heads, h => Assert.True(h.Outline[0].Point.X > h.Outline[1].Point.X));
    }
}
