using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Composing;

/// <summary>General notes with the project's values, the legend and the list of sheets.</summary>
public static class NotesSheet
{
    /// <summary>One page; two where the notes need the legend's column.</summary>
    public static IReadOnlyList<IReadOnlyList<Primitive>> Pages(DrawingContext context, Box area, IReadOnlyList<(string Name, string Title)> sheets)
    {
        const double Gap = 10, ListGap = 6;
        int columns = area.Width > 450 ? 3 : 2;
        double width = (area.Width - Gap * (columns - 1)) / columns;
        var flow = new NoteFlow(context, area, width, Gap);
        foreach (NoteBlock block in context.Templates.Notes)
            flow.Add(block.Heading, [.. block.Notes.Select(n => NoteFields.Fill(n, context))]);
        bool beside = flow.Column + 1 < columns, under = !beside && flow.Y - Legend.Height >= area.Bottom;
        bool together = beside || under;
        double x = beside ? flow.X + width + Gap : under ? flow.X : area.Left;
        double top = under ? flow.Y : area.Top;
        var table = SheetTable.Of("SHEETS", ["SHEET", "TITLE"], [.. sheets.Select(s => (IReadOnlyList<string>)[s.Name, s.Title])]);
        var layout = new TableLayout(context);
        // The list stands beside the legend where a column is left for it and is needed or lies empty otherwise.
        bool columnLeft = x + 2 * width + Gap <= area.Right + 1e-6;
        bool below = top - Legend.Height - ListGap - layout.HeightOf(table) >= area.Bottom;
        IReadOnlyList<Primitive> legend = [.. Legend.Draw(context, new(x, top), width)];
        if (under && !below)
            return [[.. flow.Drawn, .. legend], [.. layout.Draw(table, new(area.Left, area.Top))]];
        Point2 place = !columnLeft || (below && !beside) ? new(x, top - Legend.Height - ListGap) : new(x + width + Gap, area.Top);
        legend = [.. legend, .. layout.Draw(table, place)];
        return together ? [[.. flow.Drawn, .. legend]] : [flow.Drawn, legend];
    }
}
