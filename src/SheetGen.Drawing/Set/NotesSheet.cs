using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Tables;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

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
        var table = SheetTable.Of("SHEETS", ["SHEET", "TITLE"], [.. sheets.Select(s => (IReadOnlyList<string>)[s.Name, s.Title])]);
        var layout = new TableLayout(context);
        double legendAndList = Legend.Height(context) + ListGap + layout.HeightOf(table);
        bool beside = flow.Column + 1 < columns, under = !beside && flow.Y - legendAndList >= area.Bottom;
        double x = beside ? flow.X + width + Gap : under ? flow.X : area.Left;
        double top = under ? flow.Y : area.Top;
        // The list stands beside the legend where a column is left for it and is needed or lies empty otherwise.
        bool columnLeft = x + 2 * width + Gap <= area.Right + 1e-6;
        bool below = top - legendAndList >= area.Bottom;
        Point2 place = !columnLeft || (below && !beside) ? new(x, top - Legend.Height(context) - ListGap) : new(x + width + Gap, area.Top);
        IReadOnlyList<Primitive> legend = [.. Legend.Draw(context, new(x, top), width), .. layout.Draw(table, place)];
        return beside || under ? [[.. flow.Drawn, .. legend]] : [flow.Drawn, legend];
    }
}
