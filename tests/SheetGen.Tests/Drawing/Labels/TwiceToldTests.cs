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

    /// <summary>A callout among the notes once read "NAIL TEST NAIL B-V-1".</summary>
    [Fact]
    public void A_callout_among_the_notes_says_nail_once()
    {
        DrawingContext context = PlacedWall.Context(SampleWalls.TwoWalls);
        var frame = new Box(0, 0, 1, 1);
        var labels = new ViewLabels(context, new Viewport(frame, new Point2(0, 0), 1), frame, "SN-03", null);
        foreach (string words in new[] { "TEST NAIL A-V-1", "A-1-04 L 20'" })
            labels.Label(new LabelRequest([[words]], TextRole.Callout, new Point2(0.5, 0.5), 0.1) { Nail = "A" }, true);

        labels.NoteByMark(_ => true);

        Assert.Equal(["TEST NAIL A-V-1", "NAIL A-1-04 L 20'"], labels.Marked);
    }
}
