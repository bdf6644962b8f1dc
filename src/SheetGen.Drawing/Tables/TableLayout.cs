using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Tables;

/// <summary>Measures tables, cuts those that are too large, and draws each as a block of its own whose cells are attributes.</summary>
public sealed class TableLayout(DrawingContext context)
{
    private const double Padding = 1.6, Gap = 8;

    /// <summary>Rows below which a table is not cut.</summary>
    private const int FewestRows = 6;

    private TextStyle Style => context.StyleOf(TextRole.Table);

    private TextStyle HeadStyle => context.StyleOf(TextRole.Heading);

    private double RowHeight => Style.Height * 1.8;

    private double TitleHeight => HeadStyle.Height * 2.2;

    private readonly Dictionary<SheetTable, Measures> _measured = new(ReferenceEqualityComparer.Instance);

    /// <param name="Heads">Heads in lines: broken where they say so, else at spaces where they are wider than the cells below.</param>
    /// <param name="Widths">Widths of the columns; the last takes what the title needs more.</param>
    private sealed record Measures(IReadOnlyList<string>[] Heads, double[] Widths);

    private double HeadHeight(SheetTable table) => RowHeight * Measured(table).Heads.Max(h => h.Count);

    private double RemarkHeight(SheetTable table) =>
        table.Remark.Length == 0 ? 0 : Style.Height * (0.9 + RemarkLines(table).Count * TextMeasure.LinePitch);

    private IReadOnlyList<string> RemarkLines(SheetTable table) => TextMeasure.Wrap(table.Remark, WidthOf(table), Style.Height, Style);

    private static string TitleOf(SheetTable table) => table.Data.Title.ToUpperInvariant();

    public double WidthOf(SheetTable table) => Measured(table).Widths.Sum();

    public double HeightOf(SheetTable table) =>
        TitleHeight + HeadHeight(table) + table.Data.Rows.Count * RowHeight + RemarkHeight(table);

    /// <summary>A table's heads and widths; each table is asked many times and measured once.</summary>
    private Measures Measured(SheetTable table)
    {
        if (_measured.TryGetValue(table, out Measures? known))
            return known;
        int columns = table.Data.Columns.Count;
        var heads = new IReadOnlyList<string>[columns];
        var widths = new double[columns];
        for (int c = 0; c < columns; c++)
        {
            double cells = 0;
            foreach (IReadOnlyList<string> row in table.Data.Rows)
                cells = Math.Max(cells, TextMeasure.Measure(row[c], Style.Height, Style));
            string head = table.Data.Columns[c].Head;
            heads[c] = head.Contains('\n', StringComparison.Ordinal)
                ? head.Split('\n')
                : TextMeasure.Wrap(head.ToUpperInvariant(), Math.Max(14, cells), Style.Height, Style);
            widths[c] = 2 * Padding + Math.Max(cells, heads[c].Max(h => TextMeasure.Measure(h, Style.Height, Style)));
        }
        double title = TextMeasure.Measure(context.Say(Phrase.Continued, TitleOf(table)), HeadStyle.Height, HeadStyle);
        widths[^1] += Math.Max(0, title - widths.Sum());
        return _measured[table] = new Measures(heads, widths);
    }

    /// <summary>A table cut into parts no wider than a width; each begins with the columns of words that name its rows, two at the most.</summary>
    public IEnumerable<SheetTable> Narrowed(SheetTable table, double width)
    {
        double[] widths = Measured(table).Widths;
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
                    i == 0 ? table.Data.Title : context.Say(Phrase.Continued, table.Data.Title), [.. shown.Select(c => table.Data.Columns[c])],
                    [.. table.Data.Rows.Select(r => (IReadOnlyList<string>)[.. shown.Select(c => r[c])])]),
                i == groups.Count - 1 ? table.Remark : "");
        });
    }

    /// <summary>Tables as parts of sheets; the blocks are numbered in their order, pieces of a cut table by letters.</summary>
    public IReadOnlyList<SheetPart> Parts(IEnumerable<SheetTable> tables, double width) =>
        [.. tables.SelectMany(t => Narrowed(t, width)).Select((t, i) => PartOf(t, "TABLE-" + (i + 1).ToString("00", CultureInfo.InvariantCulture), t.Data.Title))];

    private SheetPart PartOf(SheetTable table, string block, string title)
    {
        int count = table.Data.Rows.Count;
        double height = HeightOf(table), around = height - count * RowHeight;
        // Sheets are packed in many ways, most of which cut a table at the same rows.
        var cuts = new Dictionary<int, (SheetPart, SheetPart)>();
        return new(PartKind.Table, WidthOf(table) + Gap, height + Gap, (at, _) => Draw(table, block, at))
        {
            Cut = room =>
            {
                int rows = (int)Math.Floor((room - Gap - around) / RowHeight + 1e-9);
                if (rows < FewestRows || rows >= count)
                    return null;
                rows = Math.Min(rows, Math.Max(FewestRows, count - 3));
                if (cuts.TryGetValue(rows, out (SheetPart, SheetPart) known))
                    return known;
                return cuts[rows] = (PartOf(Piece(table, title, ..rows), block, title) with { IsPiece = true },
                    PartOf(Piece(table, context.Say(Phrase.Continued, title), rows..), block + "X", title) with { IsPiece = true });
            },
        };
    }

    /// <summary>Some rows of a table with the columns of the whole, so that all its pieces read as one table; the rows are not copied, for a long table is cut on every sheet.</summary>
    public SheetTable Piece(SheetTable table, string title, Range rows)
    {
        ArraySegment<IReadOnlyList<string>> all = table.Data.Rows is ArraySegment<IReadOnlyList<string>> segment ? segment : new([.. table.Data.Rows]);
        SheetTable piece = table with { Data = table.Data with { Rows = all[rows], Title = title } };
        _measured[piece] = Measured(table);
        return piece;
    }

    /// <summary>A table as the reference of its block, its upper left corner at a point.</summary>
    public SheetContent Draw(SheetTable table, string block, Point2 at)
    {
        IReadOnlyList<string>[] rows = [.. table.Data.Rows];
        var cells = new List<BlockAttribute>();
        var values = new List<KeyValuePair<string, string>>();
        double[] widths = Measured(table).Widths;
        double top = -TitleHeight + 1, head = HeadHeight(table);
        for (int r = 0; r < rows.Length; r++)
        {
            double baseline = top - head - (r + 1) * RowHeight + 0.42 * Style.Height, x = 0;
            for (int c = 0; c < widths.Length; x += widths[c], c++)
            {
                bool isNumber = table.Data.Columns[c].IsNumeric;
                string tag = string.Create(CultureInfo.InvariantCulture, $"R{r + 1}C{c + 1}");
                var place = new Point2(isNumber ? x + widths[c] - Padding : x + Padding, baseline);
                cells.Add(new(tag, table.Data.Columns[c].Head.Replace('\n', ' '), place, Style.Height, true, TextRole.Table, LayerRole.TableText)
                {
                    Align = isNumber ? HorizontalAlign.Right : HorizontalAlign.Left,
                });
                values.Add(new(tag, rows[r][c]));
            }
        }
        return new SheetContent
        {
            Blocks = [new BlockDefinition(block, [.. Grid(table, widths)], cells, false)],
            Paper = [new BlockReference(LayerRole.Table, block, at, 1, 0, values)],
        };
    }

    /// <summary>Title, heads, lines and remark, about the upper left corner.</summary>
    private IEnumerable<Primitive> Grid(SheetTable table, double[] widths)
    {
        yield return new Text(LayerRole.TableText, TextRole.Heading, new(0, -HeadStyle.Height), HeadStyle.Height, TitleOf(table));
        int count = table.Data.Rows.Count;
        double right = widths.Sum(), top = -TitleHeight + 1, head = HeadHeight(table), bottom = top - head - count * RowHeight, x = 0;
        IReadOnlyList<string>[] heads = Measured(table).Heads;
        for (int c = 0; c < widths.Length; x += widths[c], c++)
        {
            yield return new Line(LayerRole.Table, new(x, top), new(x, bottom));
            for (int l = 0; l < heads[c].Count; l++)
                yield return Words(heads[c][l], new(x + widths[c] / 2, top - (l + 1) * RowHeight + 0.42 * Style.Height), HorizontalAlign.Center);
        }
        yield return new Line(LayerRole.Table, new(right, top), new(right, bottom));
        yield return new Line(LayerRole.Table, new(0, top), new(right, top));
        for (int r = 0; r <= count; r++)
            yield return new Line(LayerRole.Table, new(0, top - head - r * RowHeight), new(right, top - head - r * RowHeight));
        if (table.Remark.Length == 0)
            yield break;
        IReadOnlyList<string> lines = RemarkLines(table);
        for (int i = 0; i < lines.Count; i++)
            yield return Words(lines[i], new(0, bottom - Style.Height * (1.9 + i * TextMeasure.LinePitch)), HorizontalAlign.Left);
    }

    private Text Words(string value, Point2 at, HorizontalAlign align) =>
        new(LayerRole.TableText, TextRole.Table, at, Style.Height, value, align);
}
