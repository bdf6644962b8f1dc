using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing.Elevation;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

public class HalfSizeTests
{
    /// <summary>3/32 in, mm.</summary>
    private const double Least = 25.4 * 3 / 32;

    private static SheetSet Compose(bool half, out NailLayout layout)
    {
        WallProject project = SampleLayout.Read(SampleWalls.TwoWalls.Replace("scale: 10, ", half ? "half_size: true, " : "", StringComparison.Ordinal));
        layout = SampleLayout.Make(project);
        return SampleSheets.Compose(project, layout);
    }

    private static IEnumerable<Text> Texts(SheetSet set) => set.Sheets.SelectMany(s => SheetPicture.Of(set, s)).Select(p => p.Primitive).OfType<Text>();

    [Fact]
    public void Every_letter_is_large_enough_at_the_size_of_issue()
    {
        Assert.All(Texts(Compose(false, out _)), t => Assert.True(t.Height >= Least - 1e-6, $"{t.Value}: {t.Height}"));
        Assert.All(Texts(Compose(true, out _)), t => Assert.True(t.Height / 2 >= Least - 1e-6, $"{t.Value}: {t.Height}"));
    }

    [Fact]
    public void Every_nail_of_a_set_for_half_size_is_marked_unmistakably()
    {
        SheetSet set = Compose(true, out NailLayout layout);

        Assert.Equal("", string.Join("\n", DrawnMarks.Of(set, layout).Wrong.Take(40)));
    }

    /// <summary>The axis below every elevation has its stations, however large the letters.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_station_axis_is_labelled(bool half)
    {
        SheetSet set = Compose(half, out _);
        Sheet[] elevations = [.. set.Sheets.Where(s => s.Title.Contains("ELEVATION", StringComparison.Ordinal))];
        Assert.NotEmpty(elevations);
        foreach (Sheet sheet in elevations)
        {
            (Primitive Primitive, Box? Window)[] shown = [.. SheetPicture.Of(set, sheet).Where(p => p.Window is not null)];
            Line axis = shown.Where(p => p.Primitive is Line { Layer: LayerRole.Axis }).Select(p => (Line)p.Primitive).Where(l => Math.Abs(l.From.Y - l.To.Y) < 1e-6).MaxBy(l => (l.To - l.From).Length)!;
            int stations = shown.Count(p => p.Primitive is Text t && t.Value.Contains('+', StringComparison.Ordinal) && t.Position.Y < axis.From.Y && t.Position.Y > axis.From.Y - 3 * t.Height);
            Assert.True(stations > 1, $"{sheet.Name}: {stations} stations at the axis");
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Nothing_on_the_paper_leaves_its_border(bool half)
    {
        SheetSet set = Compose(half, out _);
        foreach (Sheet sheet in set.Sheets)
        {
            Box border = Box.Around(SheetPicture.Of(set, sheet).Where(p => p.Window is null && p.Primitive.Layer == LayerRole.Border).SelectMany(p => Extents.Points(p.Primitive)));
            double strip = SheetPicture.Of(set, sheet).Select(p => p.Primitive).OfType<Line>().Where(l => l.Layer == LayerRole.Border && l.From.X == l.To.X).Max(l => l.From.X);
            foreach ((Primitive primitive, Box? window) in SheetPicture.Of(set, sheet))
            {
                if (primitive is not Text text || (window is Box w && !w.Contains(text.Position)))
                    continue;
                Box room = text.Layer == LayerRole.TitleBlock ? border with { Left = strip } : border with { Right = strip };
                Assert.True(room.Contains(TextMeasure.BoxOf(text, set.Templates.Texts[text.Role])), $"{sheet.Name}: \"{text.Value}\"");
            }
        }
    }

    [Fact]
    public void A_small_sheet_says_that_it_is_not_for_half_size()
    {
        SheetSet set = SampleSheets.Compose(SampleWalls.Metric.Replace("sheets: {", "sheets: {half_size: true, ", StringComparison.Ordinal).Replace("ISO A1", "ISO A3", StringComparison.Ordinal));

        Assert.Contains(set.Findings, f => f.Message.Contains("half_size is not taken", StringComparison.Ordinal));
    }
}
