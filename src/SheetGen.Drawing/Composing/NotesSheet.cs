using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Composing;

/// <summary>General notes with the project's values, the legend and the list of sheets.</summary>
public static class NotesSheet
{
    public static IEnumerable<Primitive> Draw(DrawingContext context, Box area, IReadOnlyList<(string Name, string Title)> sheets)
    {
        double gap = 10;
        int columns = area.Width > 450 ? 3 : 2;
        double width = (area.Width - gap * (columns - 1)) / columns;
        var flow = new NoteFlow(context, area, width, gap);
        foreach (NoteBlock block in context.Templates.Notes)
            flow.Add(block.Heading, [.. block.Notes.Select(n => NoteFields.Fill(n, context))]);
        flow.Column(columns - 1);
        foreach (Primitive p in flow.Drawn.Concat(Legend.Draw(context, new(flow.X, area.Top), width)))
            yield return p;
        var table = new TableData("SHEETS", ["SHEET", "TITLE"], [.. sheets.Select(s => (IReadOnlyList<string>)[s.Name, s.Title])]);
        var layout = new TableLayout(context);
        foreach (Primitive p in layout.Draw(table, new(flow.X, area.Top - Legend.Height - 10)))
            yield return p;
    }
}
