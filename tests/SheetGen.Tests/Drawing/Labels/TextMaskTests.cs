using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Tests.Drawing.Elevation;
using Xunit;

namespace SheetGen.Tests.Drawing.Labels;

public class TextMaskTests
{
    /// <summary>Between two marks on one line that stand less than 0.6 of a letter apart no line shows: a piece of it would read as a hyphen, 2J-30-3-30.</summary>
    [Fact]
    public void Masks_of_marks_that_stand_near_each_other_meet()
    {
        SheetSet set = PlacedWall.Sheets(PlacedWall.Context(MarkWalls.TwoOnASmallSheet));
        Text[] marks = [.. set.Model.OfType<BlockReference>().Where(b => b.Shown is not null).Select(b => b.Shown!.Text)];
        Assert.NotEmpty(marks);
        Assert.All(marks, m =>
        {
            Box mask = Box.Around(TextMask.Of(m, set.Templates.Texts[m.Role]).Corners);
            double width = TextMeasure.Advance(m.Value, m.Height, set.Templates.Texts[m.Role]);
            Assert.True(mask.Width >= width + 0.6 * m.Height - 1e-9, $"{m.Value}: mask of {mask.Width} for letters of {width}");
            Assert.True(mask.Height < 1.5 * m.Height, m.Value);
        });
    }

    /// <summary>Masks hide what runs through letters and no line that passes just above them.</summary>
    [Theory]
    [InlineData("two walls")]
    [InlineData("metric")]
    [InlineData("arc")]
    public void A_mask_reaches_hardly_beyond_its_letters(string wall)
    {
        SheetSet set = SampleSheets.Compose(wall switch { "metric" => SampleWalls.Metric, "arc" => MarkWalls.Arc, _ => SampleWalls.TwoWalls });
        Text[] masked = [.. set.Model.OfType<Text>().Where(t => t.Masked)];

        Assert.True(masked.Length > 30, $"{masked.Length} texts");
        foreach (Text text in masked)
        {
            TextStyle style = set.Templates.Texts[text.Role];
            Point2[] corners = [.. TextMask.Of(text, style).Corners.Select(c => (c - text.Position).Turned(-text.Rotation * Math.PI / 180))];
            double width = TextMeasure.Advance(text.Value, text.Height, style);
            // All of the capitals, with a hair about them; before and behind them half the room of a word.
            Assert.InRange(corners.Max(c => c.Y) / text.Height, 1.001, 1.05);
            Assert.InRange(-corners.Min(c => c.Y) / text.Height, 0.1, 0.15);
            Assert.InRange(corners.Max(c => c.X) - corners.Min(c => c.X), width, width + 0.61 * text.Height);
        }
    }
}
