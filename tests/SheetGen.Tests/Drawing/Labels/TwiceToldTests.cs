using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using Xunit;

namespace SheetGen.Tests.Drawing.Labels;

public class TwiceToldTests
{
    [Fact]
    public void A_note_that_speaks_for_itself_stands_once()
    {
        DrawingContext context = PlacedWall.Context(SampleWalls.TwoWalls);
        var frame = new Box(0, 0, 1, 1);
        var labels = new ViewLabels(context, new Viewport(frame, new Point2(0, 0), 1), frame, "SN-03", null);

        labels.Note("ROW C-2");
        labels.Note("ROW C-3");
        foreach (int _ in new[] { 1, 2 })
            labels.Label(new LabelRequest([["A ROW WITHOUT ROOM"]], TextRole.Label, new Point2(0.5, 0.5), 0.1) { Note = "ROW C-2" });

        Assert.Equal(["ROW C-2", "ROW C-3"], labels.Told);
    }
}
