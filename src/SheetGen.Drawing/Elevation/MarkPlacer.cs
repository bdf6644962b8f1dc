using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// Places the marks of a view's nails before anything else is written. A row, on all its legs, takes one side of its heads for all its marks
/// and one form, the cheapest over sides and forms; where a nail has no room so, its mark is shifted along the row or shortened, and at last
/// stands off with a leader: to the other side of its head it goes only where even that has no room.
/// A mark without a leader is always nearer to its own head than to any other. The end nails of a row show the fullest form that fits,
/// so that a row of bare columns is named at both its ends.
/// </summary>
public sealed class MarkPlacer
{
    /// <summary>Room between a symbol and its mark, mm.</summary>
    private const double Gap = 0.45;

    /// <summary>Room above and below a mark, mm.</summary>
    private const double Margin = 0.3;

    /// <summary>Room between a mark and a match line, or another edge of the view, mm.</summary>
    private const double FromEdge = 1.2;

    /// <summary>By how much the own head must be nearer than any other, mm.</summary>
    private const double Nearer = 0.35;

    /// <summary>What a nail costs whose mark stands otherwise than its row's, that takes a shorter form than its row, and that finds no place on its row's side.</summary>
    private const double Shifted = 0.15, Shortened = 1, Failed = 4;

    private static readonly double[] FormCosts = [0, 0.35, 0.7];

    /// <summary>Sides of the head (-1 below, 1 above, 0 beside) with shifts along the row in half widths of the mark.</summary>
    private static readonly RowPlace[] RowPlaces =
    [
        new(-1, 0, 0), new(1, 0, 0.04), new(-1, 0.5, 0.12), new(-1, -0.5, 0.12), new(1, 0.5, 0.14), new(1, -0.5, 0.14), new(0, 1, 0.3), new(0, -1, 0.3),
    ];

    private readonly ElevationView _view;
    private readonly TextStyle _style;
    private readonly List<PlacedMark> _placed = [];
    private readonly HashSet<string> _done = [];
    private readonly List<(Point2 At, string Mark)> _heads;

    private MarkPlacer(ElevationView view)
    {
        _view = view;
        _style = view.Context.StyleOf(TextRole.Label);
        _heads = [.. view.Context.NailsOf(view.Wall).Select(n => (view.At(n.Along, n.Elevation), n.Mark)).OrderBy(h => h.Item1.X)];
    }

    private Crowd Crowd => _view.Labels.Placer.Crowd;

    /// <param name="view">A view whose crowd knows its lines and heads; the marks are added to it.</param>
    /// <param name="sides">Sides that rows have already; a row that is not among them takes any.</param>
    /// <param name="mayHop">True where a mark goes to the other side of its head before it stands off with a leader.</param>
    /// <param name="first">Nails whose marks found no room after those of the rows, and now come before them in their shortest form.</param>
    public static MarkSet Place(ElevationView view, IReadOnlyDictionary<string, RowPlace>? sides = null, IReadOnlySet<string>? first = null, bool mayHop = false) =>
        new MarkPlacer(view).Run(sides ?? new Dictionary<string, RowPlace>(), first ?? new HashSet<string>(), mayHop);

    private MarkSet Run(IReadOnlyDictionary<string, RowPlace> known, IReadOnlySet<string> first, bool mayHop)
    {
        Row[] rows = [.. RowsOf(_view).OrderByDescending(r => r.Nails.Max(n => n.Elevation))];
        foreach (Nail nail in _view.Nails.Where(n => first.Contains(n.Mark)))
        {
            bool tellsRow = nail.Kind == NailKind.Verification || rows.Any(r => r.IsEnd(nail));
            string[] shortest = [FormsOf(nail, tellsRow)[^1]];
            RowPlace own = known.GetValueOrDefault(MarkForms.RowOf(nail), RowPlaces[0]);
            bool isPlaced = TryNear(nail, own, shortest) || (mayHop && SidesOnly.Any(p => TryNear(nail, p, shortest))) || TryLeader(nail, tellsRow);
            if (isPlaced)
                _done.Add(nail.Mark);
        }
        var sides = new Dictionary<string, RowPlace>();
        var left = new List<(Nail Nail, RowPlace Place, bool IsEnd)>();
        foreach (Row row in rows)
        {
            RowTry best = Cheapest(row, known.GetValueOrDefault(row.Name));
            sides.Add(row.Name, best.Place);
            foreach (PlacedMark mark in best.Marks)
                Keep(mark);
            _done.UnionWith(best.Marks.Select(m => m.Nail.Mark));
            left.AddRange(row.Nails.Where(n => !_done.Contains(n.Mark)).Select(n => (n, best.Place, row.IsEnd(n))));
        }
        foreach (Nail test in _view.Nails.Where(n => n.Kind == NailKind.Verification && !_done.Contains(n.Mark)))
        {
            if (!TryAnySide(test, true))
                left.Add((test, RowPlaces[0], true));
        }
        bool OffRow(Nail nail, bool isEnd) => mayHop ? TryAnySide(nail, isEnd) || TryLeader(nail, isEnd) : TryLeader(nail, isEnd) || TryAnySide(nail, isEnd);
        (Nail Nail, RowPlace Place, bool IsEnd)[] far = [.. left.Where(l => !OffRow(l.Nail, l.IsEnd))];
        Nail[] missing = [.. far.Where(l => !TryNear(l.Nail, l.Place, FormsOf(l.Nail, false)) && !OffRow(l.Nail, false)).Select(l => l.Nail)];
        // Not left out even so: it stands on something else, and that is reported.
        _placed.AddRange(missing.Select(n => new PlacedMark(n, TextAt(n, MarkForms.Of(n)[^1], -1, 0), null)));
        return new(_placed, missing, rows.Sum(r => r.Legs.Count(IsUnnamed)), sides);
    }

    /// <summary>The nails of a row, and those of each of its legs in order of station.</summary>
    private sealed record Row(string Name, Nail[][] Legs)
    {
        public Nail[] Nails { get; } = [.. Legs.SelectMany(l => l)];

        public bool IsEnd(Nail nail) => Legs.Any(l => nail == l[0] || nail == l[^1]);
    }

    private static IEnumerable<Row> RowsOf(ElevationView view) =>
        NailLabels.RowGroups(view.Nails, new Face(view.Wall)).GroupBy(l => MarkForms.RowOf(l[0])).Select(g => new Row(g.Key, [.. g.OrderBy(l => l[0].Along)]));

    /// <summary>A nail at the end of its row tells the row, too.</summary>
    private static string[] FormsOf(Nail nail, bool isEnd) => [.. MarkForms.Of(nail).Where(f => !isEnd || MarkForms.TellsRow(f))];

    private bool IsUnnamed(Nail[] row)
    {
        Dictionary<string, string> shown = _placed.Where(p => row.Contains(p.Nail)).ToDictionary(p => p.Nail.Mark, p => p.Text.Value);
        bool Tells(Nail nail) => shown.TryGetValue(nail.Mark, out string? text) && MarkForms.TellsRow(text);
        return shown.Values.Any(v => !MarkForms.TellsRow(v)) && !(Tells(row[0]) && Tells(row[^1]));
    }

    /// <param name="known">The side that the row has already; null for any.</param>
    private RowTry Cheapest(Row row, RowPlace? known)
    {
        RowTry? best = null;
        foreach (RowPlace place in RowPlaces.Where(p => known is null || known.IsSameSide(p)))
        {
            for (int form = 0; form < FormCosts.Length; form++)
            {
                double fixedCost = row.Nails.Length * (place.Cost + FormCosts[form]);
                if (best is not null && fixedCost >= best.Cost)
                    break;
                RowTry next = Try(row, place, form, fixedCost);
                if (best is null || next.Cost < best.Cost)
                    best = next;
            }
        }
        return best!;
    }

    private sealed record RowTry(RowPlace Place, List<PlacedMark> Marks, double Cost);

    /// <summary>The marks of a row on one side, each in the row's form or, where that does not fit, shifted or in a shorter one.</summary>
    private RowTry Try(Row row, RowPlace place, int form, double cost)
    {
        var marks = new List<PlacedMark>();
        Box? last = null;
        foreach (Nail nail in row.Nails.Where(n => !_done.Contains(n.Mark)))
        {
            bool isEnd = row.IsEnd(nail);
            string[] forms = FormsOf(nail, isEnd);
            int least = isEnd ? 0 : Math.Min(form, forms.Length - 1);
            PlacedMark? found = null;
            foreach ((int f, double shift) in forms.Index().Skip(least).SelectMany(f => place.ShiftsAlong.Select(s => (f.Index, s))))
            {
                Text text = TextAt(nail, forms[f], place.Side, shift);
                Box box = BoxOf(text);
                if ((last is not null && last.Value.Overlaps(WithRoom(box))) || !IsFree(nail, box))
                    continue;
                found = new(nail, text, null);
                last = WithRoom(box);
                cost += f > form ? Shortened : shift != place.Shift && !isEnd ? Shifted : 0;
                break;
            }
            if (found is not null)
                marks.Add(found);
            else
                cost += Failed;
        }
        return new(place, marks, cost);
    }

    private bool TryAnySide(Nail nail, bool isEnd) => SidesOnly.Any(p => TryNear(nail, p, FormsOf(nail, isEnd)));

    /// <summary>A place of each side.</summary>
    private static IEnumerable<RowPlace> SidesOnly => RowPlaces.Where(p => p.Side == 0 || p.Shift == 0);

    private bool TryNear(Nail nail, RowPlace place, string[] forms)
    {
        foreach (Text text in forms.SelectMany(f => place.ShiftsAlong.Select(s => TextAt(nail, f, place.Side, s))))
        {
            if (!IsFree(nail, BoxOf(text)))
                continue;
            Keep(new(nail, text, null));
            return true;
        }
        return false;
    }

    private bool TryLeader(Nail nail, bool isEnd)
    {
        Point2 at = _view.At(nail.Along, nail.Elevation);
        foreach (string value in FormsOf(nail, isEnd))
        {
            PlacedLabel? label = _view.Labels.Placer.Place(new LabelRequest([[value]], TextRole.Label, at, Reach(nail) + 0.1)
            {
                Nail = nail.Mark,
                LeaderFrom = 0,
                Reach = 60,
                EndMargin = EndRoom,
            });
            if (label is null)
                continue;
            Text text = label.Texts[0];
            Box box = TextMeasure.BoxOf(text, _style);
            var middle = new Point2(box.Center.X, text.Position.Y);
            Text mark = text with { Position = middle, Align = HorizontalAlign.Center, Masked = true };
            // Up to the letters themselves, so that the eye sees what it leads to.
            Point2 end = BoxOf(mark).Nearest(at);
            Point2 start = at + (end - at) * (Reach(nail) / (end - at).Length);
            _placed.Add(new(nail, mark, Leader.OnPaper(start, end) with { Nail = nail.Mark }));
            return true;
        }
        return false;
    }

    private void Keep(PlacedMark mark)
    {
        _placed.Add(mark);
        Crowd.Add(WithRoom(BoxOf(mark.Text)));
    }

    private static double Reach(Nail nail) => NailSymbols.Footprint(nail, 1).First().Width / 2;

    private Text TextAt(Nail nail, string value, int side, double shift)
    {
        double width = TextMeasure.Measure(value, _style.Height, _style);
        // One height for a whole row, whether a nail of it has a second ring or not.
        double away = Math.Max(NailSymbols.Ring, Reach(nail)) + Gap;
        Point2 middle = side == 0
            ? new(shift * (away + width / 2), 0)
            : new(shift * width / 2, side * (away + _style.Height / 2));
        Point2 at = _view.At(nail.Along, nail.Elevation) + middle - new Point2(0, _style.Height / 2);
        return new(LayerRole.Label, TextRole.Label, at, _style.Height, value, HorizontalAlign.Center) { Nail = nail.Mark, Masked = true };
    }

    /// <summary>The box of a mark's letters: capitals and digits, nothing below the line.</summary>
    private Box BoxOf(Text text)
    {
        double half = TextMeasure.Measure(text.Value, text.Height, _style) / 2;
        return new(text.Position.X - half, text.Position.Y, text.Position.X + half, text.Position.Y + text.Height);
    }

    /// <summary>Room at each end of a mark, as far as its mask reaches, mm.</summary>
    private double EndRoom => TextMask.EndRoom * _style.Height;

    /// <summary>A mark's box with the room that is kept about it.</summary>
    private Box WithRoom(Box box) => new(box.Left - EndRoom, box.Bottom - Margin, box.Right + EndRoom, box.Top + Margin);

    private bool IsFree(Nail nail, Box box) =>
        _view.Viewport.Frame.Grown(-FromEdge).Contains(box) && Crowd.IsFree(WithRoom(box)) && IsOwned(nail, box);

    private bool IsOwned(Nail nail, Box box)
    {
        Point2 own = _view.At(nail.Along, nail.Elevation), center = box.Center;
        double near = (box.Nearest(own) - own).Length, middle = (center - own).Length;
        double reach = middle + Nearer;
        for (int i = FirstFrom(center.X - reach - box.Width / 2); i < _heads.Count && _heads[i].At.X <= center.X + reach + box.Width / 2; i++)
        {
            (Point2 other, string mark) = _heads[i];
            if (mark != nail.Mark && ((box.Nearest(other) - other).Length < near + Nearer || (center - other).Length < middle + Nearer))
                return false;
        }
        return true;
    }

    private int FirstFrom(double x)
    {
        int low = 0, high = _heads.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_heads[middle].At.X < x)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
