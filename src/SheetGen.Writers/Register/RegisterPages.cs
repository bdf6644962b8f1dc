using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Register;

/// <summary>Tables as pages of paper: columns as wide as what stands in them, long texts in several lines, heads on every page.</summary>
public sealed class RegisterPages
{
    private const double Margin = 12, Foot = 10, Pad = 1.4, WidestText = 70, TextHeight = 1.9, HeadHeight = 1.7, LineGap = 1.2;

    private readonly DrawingTemplates _templates = TemplateReader.Default();
    private readonly List<List<Primitive>> _pages = [];
    private readonly string _title;
    private readonly string _caution;
    private readonly bool _isMetric;
    private double _y;

    private RegisterPages(string title, string caution, bool isMetric) => (_title, _caution, _isMetric) = (title, caution, isMetric);

    private double Width => _isMetric ? 420 : 431.8;

    private double Height => _isMetric ? 297 : 279.4;

    /// <summary>The pages as a set of sheets that the sheets' own writers print.</summary>
    /// <param name="pictures">Pictures that fill a page each, drawn for the room that they are given.</param>
    public static SheetSet Make(string title, string summary, string caution, IReadOnlyList<RegisterTable> tables, bool isMetric, string version, IReadOnlyList<Func<Box, IEnumerable<Primitive>>>? pictures = null)
    {
        var pages = new RegisterPages(title, caution, isMetric);
        pages.NewPage();
        pages.Paragraph(summary, TextRole.Note, 2.4);
        foreach (Func<Box, IEnumerable<Primitive>> picture in pictures ?? [])
        {
            if (pages._y < pages.Height - 60)
                pages.NewPage();
            pages._pages[^1].AddRange(picture(new Box(Margin, Margin + Foot, pages.Width - Margin, pages._y)));
            pages._y = Margin + Foot;
        }
        foreach (RegisterTable table in tables.Where(t => t.Rows.Count > 0))
            pages.Table(table);
        return pages.ToSet(version);
    }

    private SheetSet ToSet(string version)
    {
        var sheets = new List<Sheet>();
        for (int i = 0; i < _pages.Count; i++)
        {
            string number = (i + 1).ToString(CultureInfo.InvariantCulture);
            _pages[i].Add(new Text(LayerRole.Note, TextRole.Note, new Point2(Width - Margin, Margin), 2, $"PAGE {number} OF {_pages.Count.ToString(CultureInfo.InvariantCulture)}", HorizontalAlign.Right));
            sheets.Add(new Sheet(number, _title, _isMetric ? "ISO A3" : "ANSI B", Width, Height, [], _pages[i]) { IsView = true });
        }
        return new SheetSet
        {
            Unit = _isMetric ? LengthUnit.Metre : LengthUnit.Foot,
            Title = _title,
            Number = "",
            Date = "",
            InputHash = "",
            Version = version,
            Templates = _templates,
            Blocks = [],
            DimensionStyles = [],
            Model = [],
            Sheets = sheets,
            Plan = [],
            Findings = [],
        };
    }

    private void NewPage()
    {
        _pages.Add([]);
        _y = Height - Margin;
        Put(TextRole.SheetTitle, Margin, _y - 4, 4, _title, HorizontalAlign.Left);
        _y -= 9;
        double foot = Margin + 6;
        foreach (string line in TextMeasure.Wrap(_caution, Width - 2 * Margin - 40, 1.9, Style(TextRole.Note)))
        {
            Put(TextRole.Note, Margin, foot - 2, 1.9, line, HorizontalAlign.Left);
            foot -= 3;
        }
    }

    private void Paragraph(string text, TextRole role, double height)
    {
        foreach (string line in TextMeasure.Wrap(text, Width - 2 * Margin, height, Style(role)))
        {
            Put(role, Margin, _y - height, height, line, HorizontalAlign.Left);
            _y -= height * TextMeasure.LinePitch;
        }
        _y -= 2;
    }

    private void Table(RegisterTable table)
    {
        int[] columns = [.. Enumerable.Range(0, table.Columns.Count).Where(c => table.Columns[c].IsPrinted)];
        double[] widths = Widths(table, columns);
        if (_y < Margin + Foot + 40)
            NewPage();
        _y -= 4;
        Put(TextRole.Heading, Margin, _y - 3.2, 3.2, table.Title.ToUpperInvariant(), HorizontalAlign.Left);
        _y -= 6.5;
        if (table.Note.Length > 0)
            Paragraph(table.Note, TextRole.Note, 2);
        Head(table, columns, widths);
        foreach (IReadOnlyList<RegisterCell> row in table.Rows)
        {
            IReadOnlyList<string>[] lines = [.. columns.Select((c, i) => Lines(row[c].Shown, widths[i] - 2 * Pad, TextHeight, TextRole.Table))];
            double height = RowHeight(lines.Max(l => l.Count), TextHeight);
            if (_y - height < Margin + Foot)
            {
                NewPage();
                Head(table, columns, widths);
            }
            Cells(lines, [.. columns.Select(c => table.Columns[c].IsNumeric)], [.. columns.Select(c => row[c].IsWarning)], widths, height, TextHeight, TextRole.Table);
        }
    }

    private void Head(RegisterTable table, int[] columns, double[] widths)
    {
        IReadOnlyList<string>[] lines = [.. columns.Select((c, i) => Lines(table.Columns[c].Head, widths[i] - 2 * Pad, HeadHeight, TextRole.Heading))];
        double height = RowHeight(lines.Max(l => l.Count), HeadHeight);
        Rule(widths.Sum());
        Cells(lines, [.. columns.Select(c => table.Columns[c].IsNumeric)], new bool[columns.Length], widths, height, HeadHeight, TextRole.Heading);
    }

    private void Cells(IReadOnlyList<string>[] lines, bool[] numeric, bool[] warns, double[] widths, double height, double textHeight, TextRole role)
    {
        double x = Margin;
        for (int i = 0; i < widths.Length; i++)
        {
            double y = _y - LineGap - textHeight;
            foreach (string line in lines[i])
            {
                Put(warns[i] ? TextRole.Heading : role, numeric[i] ? x + widths[i] - Pad : x + Pad, y, warns[i] ? Math.Min(textHeight, HeadHeight) : textHeight, line, numeric[i] ? HorizontalAlign.Right : HorizontalAlign.Left, LayerRole.TableText);
                y -= textHeight + LineGap;
            }
            x += widths[i];
        }
        _y -= height;
        Rule(widths.Sum());
    }

    private void Rule(double width) => _pages[^1].Add(new Line(LayerRole.Table, new Point2(Margin, _y), new Point2(Margin + width, _y)));

    private static double RowHeight(int lines, double textHeight) => lines * (textHeight + LineGap) + LineGap;

    /// <summary>As wide as the widest content up to a limit; where that is wider than the paper, texts give way and then all alike.</summary>
    private double[] Widths(RegisterTable table, int[] columns)
    {
        double room = Width - 2 * Margin;
        double[] least = [.. columns.Select(c => 2 * Pad + table.Columns[c].Head.Split(' ').Max(w => Measure(w, HeadHeight, TextRole.Heading)))];
        double[] wanted = [.. columns.Select((c, i) => Math.Max(least[i], 2 * Pad + Math.Min(table.Columns[c].IsNumeric ? double.MaxValue : WidestText, table.Rows.Max(r => Measure(r[c].Shown, TextHeight, TextRole.Heading)))))];
        for (double limit = WidestText; wanted.Sum() > room && limit > 12; limit -= 2)
            wanted = [.. wanted.Select((w, i) => table.Columns[columns[i]].IsNumeric ? w : Math.Max(Math.Min(w, limit), Math.Min(w, least[i])))];
        double factor = Math.Min(1, room / wanted.Sum());
        return [.. wanted.Select(w => w * factor)];
    }

    /// <summary>Lines no wider than the room; a word that is wider is broken.</summary>
    private List<string> Lines(string text, double room, double height, TextRole role)
    {
        var lines = new List<string>();
        foreach (string line in TextMeasure.Wrap(text, room, height, Style(role)))
        {
            string rest = line;
            while (rest.Length > 1 && Measure(rest, height, role) > room + 0.01)
            {
                int fits = rest.Length - 1;
                while (fits > 1 && Measure(rest[..fits], height, role) > room)
                    fits--;
                lines.Add(rest[..fits]);
                rest = rest[fits..];
            }
            lines.Add(rest);
        }
        return lines;
    }

    private TextStyle Style(TextRole role) => _templates.Texts[role];

    private double Measure(string text, double height, TextRole role) => TextMeasure.Measure(text, height, Style(role));

    private void Put(TextRole role, double x, double y, double height, string text, HorizontalAlign align, LayerRole layer = LayerRole.Note)
    {
        if (text.Length > 0)
            _pages[^1].Add(new Text(layer, role, new Point2(x, y), height, text, align));
    }
}
