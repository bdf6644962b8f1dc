using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Tables;

/// <summary>Draws tables as lines and single texts, and breaks long ones.</summary>
public sealed class TableLayout(DrawingContext context)
{
    private const double Padding = 1.6, Gap = 7;

    private TextStyle Style => context.StyleOf(TextRole.Table);

    private TextStyle HeadStyle => context.StyleOf(TextRole.Heading);

    private double RowHeight => Style.Height * 1.8;

    private double TitleHeight => HeadStyle.Height * 2.2;

    private double HeadHeight(SheetTable table) => RowHeight * Heads(table).Max(h => h.Count);

    public double WidthOf(SheetTable table) => Math.Max(
        ColumnWidths(table).Sum(), TextMeasure.Measure(table.Data.Title.ToUpperInvariant() + " (CONTINUED)", HeadStyle.Height, HeadStyle));

    private double[] ColumnWidths(SheetTable table) =>
        [.. Heads(table).Select((h, i) => 2 * Padding + h.Concat(table.Data.Rows.Select(r => r[i]))
            .Max(t => TextMeasure.Measure(t, Style.Height, Style)))];

    /// <summary>Heads in lines: broken where they say so, else at spaces where they are wider than the cells below.</summary>
    private IReadOnlyList<IReadOnlyList<string>> Heads(SheetTable table) =>
        [.. table.Data.Columns.Select((c, i) => c.Head.Contains('\n', StringComparison.Ordinal)
            ? c.Head.Split('\n')
            : TextMeasure.Wrap(c.Head.ToUpperInvariant(), Math.Max(14, table.Data.Rows.Select(r => TextMeasure.Measure(r[i], Style.Height, Style)).DefaultIfEmpty(0).Max()), Style.Height, Style))];

    /// <summary>Rows that fit into a height, head included.</summary>
    public int RowsIn(SheetTable table, double height) =>
        (int)Math.Floor((height - TitleHeight - HeadHeight(table) - (table.Remark.Length > 0 ? RowHeight : 0)) / RowHeight + 1e-9);

    public double HeightOf(SheetTable table) =>
        TitleHeight + HeadHeight(table) + table.Data.Rows.Count * RowHeight + (table.Remark.Length > 0 ? RowHeight : 0);

    /// <summary>A table cut into parts no wider than a width; each begins with the columns of words that name its rows, two at the most.</summary>
    public IEnumerable<SheetTable> Narrowed(SheetTable table, double width)
    {
        double[] widths = ColumnWidths(table);
        if (widths.Sum() <= width)
            return [table];
        int keys = Math.Min(2, table.Data.Columns.TakeWhile(c => !c.IsNumeric).Count());
        double room = width - widths.Take(keys).Sum();
        int parts = (int)Math.Ceiling(widths.Skip(keys).Sum() / room);
        double share = widths.Skip(keys).Sum() / parts;
        var groups = new List<List<int>> { new() };
        double taken = 0;
        for (int c = keys; c < widths.Length; c++)
        {
            bool full = taken + widths[c] > room || (taken >= share && groups.Count < parts);
            if (full && groups[^1].Count > 0)
            {
                groups.Add([]);
                taken = 0;
            }
            groups[^1].Add(c);
            taken += widths[c];
        }
        return groups.Select((group, i) =>
        {
            int[] shown = [.. Enumerable.Range(0, keys), .. group];
            return new SheetTable(
                new TableData(
                    i == 0 ? table.Data.Title : table.Data.Title + " (CONTINUED)", [.. shown.Select(c => table.Data.Columns[c])],
                    [.. table.Data.Rows.Select(r => (IReadOnlyList<string>)[.. shown.Select(c => r[c])])]),
                i == groups.Count - 1 ? table.Remark : "");
        });
    }

    /// <summary>
    /// Lays tables out page by page: first those wider than half of the area, then the others in columns; a table longer than the area
    /// goes on in the next column.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<Primitive>> Pages(IEnumerable<SheetTable> tables, Box area)
    {
        SheetTable[] narrow = [.. tables.SelectMany(t => Narrowed(t, area.Width))];
        SheetTable[] wide = [.. narrow.TakeWhile(t => WidthOf(t) > area.Width / 2 && t.Data.Rows.Count <= 12)];
        var first = new List<Primitive>();
        double below = area.Top;
        int across = 0;
        foreach (SheetTable table in wide.TakeWhile(t => below - HeightOf(t) > area.Bottom + area.Height / 2))
        {
            first.AddRange(Draw(table, new(area.Left, below)));
            below -= HeightOf(table) + Gap;
            across++;
        }
        return Columns(narrow.Skip(across), area, below, first);
    }

    private List<List<Primitive>> Columns(IEnumerable<SheetTable> tables, Box area, double firstTop, List<Primitive> first)
    {
        var pages = new List<List<Primitive>> { first };
        double x = area.Left, y = firstTop, widest = 0;
        double Top() => pages.Count == 1 ? firstTop : area.Top;
        void NextColumn(double width)
        {
            x += widest + 8;
            widest = 0;
            if (x + width > area.Right)
            {
                pages.Add([]);
                x = area.Left;
            }
            y = Top();
        }
        foreach (SheetTable whole in tables)
        {
            SheetTable table = whole;
            while (true)
            {
                double width = WidthOf(table);
                int rows = RowsIn(table, y - area.Bottom);
                bool fits = rows >= table.Data.Rows.Count;
                if (x + width > area.Right && x > area.Left || (!fits && rows < Math.Min(6, table.Data.Rows.Count)))
                {
                    if (x == area.Left && y == area.Top)
                        rows = Math.Max(1, rows);
                    else
                    {
                        NextColumn(width);
                        continue;
                    }
                }
                SheetTable part = fits ? table : table with { Data = table.Data with { Rows = [.. table.Data.Rows.Take(rows)] } };
                pages[^1].AddRange(Draw(part, new(x, y)));
                widest = Math.Max(widest, width);
                y -= HeightOf(part) + Gap;
                if (fits)
                    break;
                table = table with { Data = table.Data with { Rows = [.. table.Data.Rows.Skip(rows)], Title = whole.Data.Title + " (CONTINUED)" } };
                NextColumn(width);
            }
        }
        return pages;
    }

    /// <summary>The table with its upper left corner at a point.</summary>
    public IEnumerable<Primitive> Draw(SheetTable table, Point2 at)
    {
        double[] widths = ColumnWidths(table);
        double right = at.X + widths.Sum();
        yield return new Text(LayerRole.TableText, TextRole.Heading, new(at.X, at.Y - HeadStyle.Height), HeadStyle.Height, table.Data.Title.ToUpperInvariant());
        double top = at.Y - TitleHeight + 1;
        double head = HeadHeight(table);
        double bottom = top - head - table.Data.Rows.Count * RowHeight;
        IReadOnlyList<IReadOnlyList<string>> heads = Heads(table);
        double x = at.X;
        for (int c = 0; c < widths.Length; c++)
        {
            yield return new Line(LayerRole.Table, new(x, top), new(x, bottom));
            IReadOnlyList<string> lines = heads[c];
            for (int l = 0; l < lines.Count; l++)
                yield return Cell(lines[l], new(x + widths[c] / 2, top - (l + 1) * RowHeight + 0.42 * Style.Height), HorizontalAlign.Center);
            bool numbers = table.Data.Columns[c].IsNumeric;
            for (int r = 0; r < table.Data.Rows.Count; r++)
            {
                double baseline = top - head - (r + 1) * RowHeight + 0.42 * Style.Height;
                if (table.Data.Rows[r][c].Length > 0)
                {
                    yield return numbers
                        ? Cell(table.Data.Rows[r][c], new(x + widths[c] - Padding, baseline), HorizontalAlign.Right)
                        : Cell(table.Data.Rows[r][c], new(x + Padding, baseline), HorizontalAlign.Left);
                }
            }
            x += widths[c];
        }
        yield return new Line(LayerRole.Table, new(right, top), new(right, bottom));
        yield return new Line(LayerRole.Table, new(at.X, top), new(right, top));
        for (int r = 0; r <= table.Data.Rows.Count; r++)
        {
            double y = top - head - r * RowHeight;
            yield return new Line(LayerRole.Table, new(at.X, y), new(right, y));
        }
        if (table.Remark.Length > 0)
            yield return Cell(table.Remark, new(at.X, bottom - RowHeight + 0.6 * Style.Height), HorizontalAlign.Left);
    }

    private Text Cell(string value, Point2 at, HorizontalAlign align) =>
        new(LayerRole.TableText, TextRole.Table, at, Style.Height, value, align);
}
