using System.Globalization;
using SheetGen.Drawing.Placing;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Composing;

/// <summary>Draws tables as lines and single texts, and breaks long ones.</summary>
public sealed class TableLayout(DrawingContext context)
{
    private const double Padding = 1.6;

    private TextStyle Style => context.StyleOf(TextRole.Table);

    private TextStyle HeadStyle => context.StyleOf(TextRole.Heading);

    private double RowHeight => Style.Height * 2;

    private double TitleHeight => HeadStyle.Height * 2.2;

    private double HeadHeight(TableData table) => RowHeight * table.Columns.Max(c => c.Split('\n').Length);

    public double WidthOf(TableData table) => Math.Max(
        ColumnWidths(table).Sum(), TextMeasure.Measure(table.Title + " (CONTINUED)", HeadStyle.Height, HeadStyle));

    private double[] ColumnWidths(TableData table) =>
        [.. table.Columns.Select((c, i) => 2 * Padding + c.Split('\n').Concat(table.Rows.Select(r => r[i]))
            .Max(t => TextMeasure.Measure(t, Style.Height, Style)))];

    /// <summary>Rows that fit into a height, head included.</summary>
    public int RowsIn(TableData table, double height) =>
        (int)Math.Floor((height - TitleHeight - HeadHeight(table) - (table.Remark.Length > 0 ? RowHeight : 0)) / RowHeight + 1e-9);

    public double HeightOf(TableData table) =>
        TitleHeight + HeadHeight(table) + table.Rows.Count * RowHeight + (table.Remark.Length > 0 ? RowHeight : 0);

    /// <summary>Lays tables out in columns of an area, page by page; a table longer than the area goes on in the next column.</summary>
    public IReadOnlyList<IReadOnlyList<Primitive>> Pages(IEnumerable<TableData> tables, Box area)
    {
        var pages = new List<List<Primitive>> { new() };
        double x = area.Left, y = area.Top, widest = 0;
        void NextColumn(double width)
        {
            x += widest + 8;
            y = area.Top;
            widest = 0;
            if (x + width <= area.Right)
                return;
            pages.Add([]);
            x = area.Left;
        }
        foreach (TableData whole in tables)
        {
            TableData table = whole;
            while (true)
            {
                double width = WidthOf(table);
                int rows = RowsIn(table, y - area.Bottom);
                bool fits = rows >= table.Rows.Count;
                if (x + width > area.Right && x > area.Left || (!fits && rows < Math.Min(6, table.Rows.Count)))
                {
                    if (x == area.Left && y == area.Top && pages[^1].Count == 0)
                        rows = Math.Max(1, rows);
                    else
                    {
                        NextColumn(width);
                        continue;
                    }
                }
                TableData part = fits ? table : table with { Rows = [.. table.Rows.Take(rows)] };
                pages[^1].AddRange(Draw(part, new(x, y)));
                widest = Math.Max(widest, width);
                y -= HeightOf(part) + 7;
                if (fits)
                    break;
                table = table with { Rows = [.. table.Rows.Skip(rows)], Title = whole.Title + " (CONTINUED)" };
                NextColumn(width);
            }
        }
        return pages;
    }

    /// <summary>The table with its upper left corner at a point.</summary>
    public IEnumerable<Primitive> Draw(TableData table, Point2 at)
    {
        double[] widths = ColumnWidths(table);
        double right = at.X + widths.Sum();
        yield return new Text(LayerRole.TableText, TextRole.Heading, new(at.X, at.Y - HeadStyle.Height), HeadStyle.Height, table.Title);
        double top = at.Y - TitleHeight + 1;
        double head = HeadHeight(table);
        double bottom = top - head - table.Rows.Count * RowHeight;
        double x = at.X;
        for (int c = 0; c < widths.Length; c++)
        {
            yield return new Line(LayerRole.Table, new(x, top), new(x, bottom));
            string[] lines = table.Columns[c].Split('\n');
            for (int l = 0; l < lines.Length; l++)
                yield return Cell(lines[l], new(x + widths[c] / 2, top - (l + 1) * RowHeight + 0.5 * Style.Height), HorizontalAlign.Center);
            bool numbers = table.Rows.All(r => r[c].Length == 0 || IsNumber(r[c]));
            for (int r = 0; r < table.Rows.Count; r++)
            {
                double baseline = top - head - (r + 1) * RowHeight + 0.5 * Style.Height;
                if (table.Rows[r][c].Length > 0)
                {
                    yield return numbers
                        ? Cell(table.Rows[r][c], new(x + widths[c] - Padding, baseline), HorizontalAlign.Right)
                        : Cell(table.Rows[r][c], new(x + Padding, baseline), HorizontalAlign.Left);
                }
            }
            x += widths[c];
        }
        yield return new Line(LayerRole.Table, new(right, top), new(right, bottom));
        yield return new Line(LayerRole.Table, new(at.X, top), new(right, top));
        for (int r = 0; r <= table.Rows.Count; r++)
        {
            double y = top - head - r * RowHeight;
            yield return new Line(LayerRole.Table, new(at.X, y), new(right, y));
        }
        if (table.Remark.Length > 0)
            yield return Cell(table.Remark, new(at.X, bottom - RowHeight + 0.6 * Style.Height), HorizontalAlign.Left);
    }

    private Text Cell(string value, Point2 at, HorizontalAlign align) =>
        new(LayerRole.TableText, TextRole.Table, at, Style.Height, value, align);

    private static bool IsNumber(string text) =>
        double.TryParse(text.TrimEnd('\'', '"', '°', ' ', 'm', '%').Replace("+", "", StringComparison.Ordinal), NumberStyles.Float | NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out _);
}
