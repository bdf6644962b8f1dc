using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Review;

/// <summary>A report as pages of plain data: heads, paragraphs, tables and pictures, put one below the other and onto new pages where they do not fit.</summary>
public sealed class ReviewBook(ReviewInfo info, ReviewPaper paper, string title)
{
    public const double TextHeight = 2.3, HeadHeight = 3.2;
    private const double Margin = 14, HeadRoom = 13, FootRoom = 9, Pitch = 1.75, Padding = 1.2;
    private const string Caution = "A draft for review by the engineer of record; not sealed. Local codes and the project's specifications govern. Verify obstructions and utilities before drilling.";

    private readonly List<(string Title, List<Primitive> Content)> _pages = [];
    private readonly Dictionary<string, string> _said = [];
    private double _y;

    public ReviewInfo Info => info;

    public double Left => Margin;

    public double Width => paper.Width - 2 * Margin;

    public double Height => paper.Height - 2 * Margin - HeadRoom - FootRoom;

    /// <summary>Where the next thing starts, from the lower edge of the page.</summary>
    public double Y => _y;

    public int PageCount => _pages.Count;

    private static double Bottom => Margin + FootRoom;

    private TextStyle Plain => info.Templates.Texts[TextRole.Note];

    private TextStyle Bold => info.Templates.Texts[TextRole.Heading];

    /// <summary>Starts a page.</summary>
    /// <param name="name">What its bookmark says.</param>
    public void Page(string name) => Next(Said(name));

    private void Next(string name)
    {
        _pages.Add((name, []));
        _y = paper.Height - Margin - HeadRoom;
    }

    /// <summary>A text in the language of the sheets.</summary>
    private string Said(string english)
    {
        if (!_said.TryGetValue(english, out string? text))
            _said[english] = text = info.Templates.Language.Report(english);
        return text;
    }

    /// <summary>Starts a page where less than a height is left.</summary>
    public void Need(double height)
    {
        if (_pages.Count == 0)
            Page(title);
        else if (_y - height < Bottom)
            Next(_pages[^1].Title);
    }

    public void Add(Primitive primitive) => _pages[^1].Content.Add(primitive);

    public void Space(double height) => _y -= height;

    public void Heading(string text)
    {
        Need(12 * HeadHeight);
        _y -= HeadHeight * 1.6;
        Write(text, Left, _y, HeadHeight, bold: true);
        _y -= HeadHeight * 0.8;
    }

    public void Paragraph(string text)
    {
        foreach (string line in TextMeasure.Wrap(Said(text), Width, TextHeight, Plain))
        {
            Need(TextHeight * Pitch);
            _y -= TextHeight * Pitch;
            Put(line, Left, _y, TextHeight, false, HorizontalAlign.Left);
        }
    }

    public void Write(string text, double x, double y, double height = TextHeight, bool bold = false, HorizontalAlign align = HorizontalAlign.Left) =>
        Put(Said(text), x, y, height, bold, align);

    private void Put(string text, double x, double y, double height, bool bold, HorizontalAlign align) =>
        Add(new Text(LayerRole.Note, bold ? TextRole.Heading : TextRole.Note, new(x, y), height, Shown(text), align));

    /// <summary>A table over the whole width; cells are wrapped, rows are never cut, heads are repeated on every page.</summary>
    /// <param name="columns">Heads with their share of the width.</param>
    public void Table(IReadOnlyList<(string Head, double Share)> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        double sum = columns.Sum(c => c.Share);
        double[] widths = [.. columns.Select(c => c.Share / sum * Width)];
        void Heads()
        {
            _y -= 1.5;
            Row([.. columns.Select(c => Said(c.Head))], widths, bold: true);
        }
        Need(6 * TextHeight * Pitch);
        Heads();
        foreach (IReadOnlyList<string> row in rows.Select(r => (IReadOnlyList<string>)[.. r.Select(Said)]))
        {
            double height = HeightOf(row, widths, Plain);
            if (_y - height < Bottom)
            {
                Next(_pages[^1].Title);
                Heads();
            }
            Row(row, widths, bold: false);
        }
        _y -= 2;
    }

    /// <summary>The pages as sheets.</summary>
    public SheetSet Set()
    {
        if (_pages.Count == 0)
            Page(title);
        return new SheetSet
        {
            Unit = info.Unit,
            Title = $"{Said(title)}: {info.Title}",
            Number = info.Number,
            Date = info.Date,
            InputHash = info.InputHash,
            Version = info.Version,
            Templates = info.Templates,
            Blocks = [],
            DimensionStyles = [],
            Model = [],
            Plan = [],
            Findings = [],
            Sheets = [.. _pages.Select((p, i) => new Sheet(
                (i + 1).ToString(CultureInfo.InvariantCulture), p.Title, paper.Name, paper.Width, paper.Height, [], [.. Frame(i), .. p.Content]) { IsView = true })],
        };
    }

    private double HeightOf(IReadOnlyList<string> cells, double[] widths, TextStyle style) =>
        cells.Select((c, i) => TextMeasure.Wrap(c, widths[i] - 2 * Padding, TextHeight, style).Count).Max() * TextHeight * Pitch + 1.2;

    private void Row(IReadOnlyList<string> cells, double[] widths, bool bold)
    {
        TextStyle style = bold ? Bold : Plain;
        double height = HeightOf(cells, widths, style), x = Left;
        for (int c = 0; c < cells.Count; c++)
        {
            IReadOnlyList<string> lines = TextMeasure.Wrap(cells[c], widths[c] - 2 * Padding, TextHeight, style);
            for (int l = 0; l < lines.Count; l++)
                Put(lines[l], x + Padding, _y - (l + 1) * TextHeight * Pitch + 0.6, TextHeight, bold, HorizontalAlign.Left);
            x += widths[c];
        }
        Add(Polyline.Rectangle(LayerRole.Table, new Box(Left, _y - height, Left + widths.Sum(), _y)));
        x = Left;
        foreach (double width in widths[..^1])
        {
            x += width;
            Add(new Line(LayerRole.Table, new(x, _y - height), new(x, _y)));
        }
        _y -= height;
    }

    /// <summary>Head and foot of a page.</summary>
    private IEnumerable<Primitive> Frame(int page)
    {
        double top = paper.Height - Margin, right = paper.Width - Margin;
        yield return new Text(LayerRole.Title, TextRole.Heading, new(Margin, top - 4), 3.6, Shown(Said(title)));
        yield return new Text(LayerRole.Title, TextRole.Note, new(Margin, top - 9), TextHeight, Shown($"{info.Title}  {info.Number}  {info.Date}".TrimEnd()));
        yield return new Text(LayerRole.Title, TextRole.Note, new(right, top - 4), TextHeight, Said(string.Create(CultureInfo.InvariantCulture, $"page {page + 1} of {_pages.Count}")), HorizontalAlign.Right);
        yield return new Text(LayerRole.Title, TextRole.Note, new(right, top - 9), TextHeight, Said($"SheetGen {info.Version}, input {info.InputHash[..Math.Min(8, info.InputHash.Length)]}"), HorizontalAlign.Right);
        yield return new Line(LayerRole.Border, new(Margin, top - 11), new(right, top - 11));
        IReadOnlyList<string> lines = TextMeasure.Wrap(Said(Caution), paper.Width - 2 * Margin, 2, Plain);
        for (int i = 0; i < lines.Count; i++)
            yield return new Text(LayerRole.Note, TextRole.Note, new(Margin, Margin + (lines.Count - 1 - i) * 3.2), 2, lines[i]);
    }

    /// <summary>Signs that move or hide nothing.</summary>
    private static string Shown(string text) => new([.. text.Select(c => char.IsControl(c) ? ' ' : c)]);
}
