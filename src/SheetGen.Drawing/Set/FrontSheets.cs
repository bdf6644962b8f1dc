using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Tables;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>The first sheets: notes with the project's values, legend, abbreviations and the sheet index, down columns; what is left is free for views.</summary>
public sealed class FrontSheets
{
    private const double Gap = 10, BlockGap = 6;

    private readonly DrawingContext _context;
    private readonly ColumnFlow _flow;
    private readonly List<(int Page, Point2 At, Func<Point2, IReadOnlyList<(string, string)>, SheetContent> Draw)> _placed = [];

    private readonly bool _cutsLists;

    private readonly Box _area;

    /// <summary>The sheets of the index's pieces and their rooms, as wide as a column: its titles are not known yet.</summary>
    private readonly List<(int Page, Box Room)> _index = [];

    /// <param name="cutsLists">True where a list goes on in the next column.</param>
    /// <param name="needsViews">True where the last sheet must have room for a key plan: where it has none, another sheet follows.</param>
    private FrontSheets(DrawingContext context, Box area, int sheets, bool cutsLists, bool needsViews)
    {
        (_context, _area, _cutsLists) = (context, area, cutsLists);
        double letters = context.StyleOf(TextRole.Note).Height / 2.6;
        _flow = new ColumnFlow(area, Math.Max(2, (int)(area.Width / (180 * letters))), Gap);
        foreach (NoteBlock block in context.Templates.Notes)
            Notes(block.Heading, [.. block.Notes.Select(n => NoteFields.Fill(n, context))]);
        List(context.Say(Phrase.Legend), [.. Legend.Entries(context, _flow.Width)]);
        List(context.Say(Phrase.Abbreviations), [.. Abbreviations.Entries(context)]);
        IndexOf(sheets);
        if (needsViews && FrontViews.KeyIn(context, Free(), area) is null)
            _flow.NextPage();
    }

    /// <summary>The index in one column where it has room in one; else it fills columns.</summary>
    private void IndexOf(int sheets)
    {
        var layout = new TableLayout(_context);
        double HeightOf(int rows) => layout.HeightOf(Index([.. Enumerable.Repeat(("", ""), rows)]));
        double around = HeightOf(0), row = HeightOf(1) - around;
        bool isWhole = HeightOf(sheets) <= _flow.Height;
        for (int first = 0, count, piece = 1; first < sheets; first += count, piece++)
        {
            int fit = (int)Math.Floor((_flow.Room - around) / row + 1e-9);
            if (isWhole || sheets - first <= fit)
                count = sheets - first;
            else
                count = fit >= FewestRows ? fit : Math.Min(sheets - first, (int)Math.Floor((_flow.Height - around) / row + 1e-9));
            (int from, int to, int number) = (first, first + count, piece);
            double height = HeightOf(count);
            (int page, Point2 place) = _flow.Take(height);
            _index.Add((page, new(place.X, place.Y - height, place.X + _flow.Width, place.Y)));
            string title = _context.Say(Phrase.SheetIndex), words = from == 0 ? title : _context.Say(Phrase.Continued, title);
            string block = number == 1 ? "TABLE-INDEX" : FormattableString.Invariant($"TABLE-INDEX-{number}");
            _placed.Add((page, place, (at, rows) => rows.Count <= from ? SheetContent.Of([]) : layout.Draw(layout.Piece(Index(rows), words, from..Math.Min(to, rows.Count)), block, at)));
            _flow.Skip(BlockGap);
        }
    }

    /// <summary>Rows below which a piece of the index stands nowhere at the foot of a column.</summary>
    private const int FewestRows = 6;

    /// <summary>How many sheets they take.</summary>
    public int Count => _flow.Page + 1;

    /// <summary>What is left of the last of them.</summary>
    internal FreeRoom Free()
    {
        FreeRoom free = FreeRoom.Beside(_context, _area, Draw([])[^1], 1.5 * _context.StyleOf(TextRole.Label).Height);
        foreach ((_, Box room) in _index.Where(p => p.Page == Count - 1))
            free.Take(room.Grown(_context.StyleOf(TextRole.Label).Height));
        return free;
    }

    /// <summary>Plans them for a set with so many other sheets: lists are cut only where that saves a sheet.</summary>
    /// <param name="needsViews">True where a key plan must have room.</param>
    public static FrontSheets Plan(DrawingContext context, Box area, int others, bool needsViews)
    {
        FrontSheets whole = Plan(context, area, others, false, needsViews), cut = Plan(context, area, others, true, needsViews);
        return cut.Count < whole.Count ? cut : whole;
    }

    private static FrontSheets Plan(DrawingContext context, Box area, int others, bool cutsLists, bool needsViews)
    {
        for (int count = 1; ; count++)
        {
            var front = new FrontSheets(context, area, count + others, cutsLists, needsViews);
            if (front.Count <= count)
                return front;
        }
    }

    /// <summary>The sheets with the index of all sheets of the set: names and titles.</summary>
    public IReadOnlyList<SheetContent> Draw(IReadOnlyList<(string Name, string Title)> index) =>
        [.. Enumerable.Range(0, Count).Select(page => SheetContent.Together([.. _placed.Where(p => p.Page == page).Select(p => p.Draw(p.At, index))]))];

    private SheetTable Index(IReadOnlyList<(string Name, string Title)> sheets) => SheetTable.Of(
        _context.Say(Phrase.SheetIndex), _context.Say(Phrase.SheetIndexHeads).Split('/'), [.. sheets.Select(s => (IReadOnlyList<string>)[s.Name, s.Title])]);

    private void Put(double height, Func<Point2, IEnumerable<Primitive>> draw, double with = 0)
    {
        (int page, Point2 place) = _flow.Take(height, with);
        _placed.Add((page, place, (at, _) => SheetContent.Of(draw(at))));
    }

    /// <summary>A list, whole or cut; fewer than three of its entries stand alone nowhere.</summary>
    private void List(string heading, IReadOnlyList<ListEntry> entries)
    {
        Heading(heading, entries.Take(_cutsLists ? FewestTogether : entries.Count).Sum(e => e.Height));
        for (int i = 0; i < entries.Count; i++)
            Put(entries[i].Height, entries[i].Draw, i == entries.Count - FewestTogether ? entries.Skip(i + 1).Sum(e => e.Height) : 0);
        _flow.Skip(_context.StyleOf(TextRole.Heading).Height * 1.5);
    }

    private const int FewestTogether = 3;

    /// <param name="with">Height of what must stand below it in the same column.</param>
    private void Heading(string words, double with)
    {
        double height = _context.StyleOf(TextRole.Heading).Height;
        Put(height * 1.8, at => [_context.Write(LayerRole.Note, TextRole.Heading, at - new Point2(0, height), words)], with);
    }

    private void Notes(string heading, IReadOnlyList<string> notes)
    {
        TextStyle head = _context.StyleOf(TextRole.Heading), style = _context.StyleOf(TextRole.Note);
        double pitch = style.Height * TextMeasure.LinePitch, indent = 3.2 * style.Height;
        Heading(heading, 3 * pitch);
        for (int i = 0; i < notes.Count; i++)
        {
            IReadOnlyList<string> lines = TextMeasure.Wrap(notes[i], _flow.Width - indent, style.Height, style);
            string number = (i + 1).ToString(CultureInfo.InvariantCulture) + ".";
            Put(lines.Count * pitch + style.Height * 0.7, at =>
            [
                Line(at, 1, number),
                .. lines.Select((l, k) => Line(at + new Point2(indent, 0), k + 1, l)),
            ]);
        }
        _flow.Skip(head.Height * 1.5);

        Text Line(Point2 at, int line, string words) => _context.Write(LayerRole.Note, TextRole.Note, at - new Point2(0, line * pitch), words);
    }
}
