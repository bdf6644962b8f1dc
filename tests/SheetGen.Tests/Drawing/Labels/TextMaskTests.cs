using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
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
}
