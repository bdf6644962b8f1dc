using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// Places the marks of a view's nails before anything else is written. A row takes one side of its heads and one form for all its marks,
/// the cheapest over sides and forms; where a nail has no room so, it alone takes a shorter form, then another place, then a leader.
/// A mark without a leader is always nearer to its own head than to any other. The end nails of a row show the fullest form that fits,
/// so that a row of bare columns is named at both its ends.
/// </summary>
public sealed class MarkPlacer
{
    /// <summary>Room between a symbol and its mark, mm.</summary>
    private const double Gap = 0.45;

    /// <summary>Room about a mark, mm.</summary>
    private const double Margin = 0.3;

    /// <summary>Room between a mark and a match line, or another edge of the view, mm.</summary>
    private const double FromEdge = 1.2;

    /// <summary>By how much the own head must be nearer than any other, mm.</summary>
    private const double Nearer = 0.35;

    /// <summary>What a nail costs that takes a shorter form than its row, and one that finds no place on its row's side.</summary>
    private const double Shortened = 1, Failed = 4;

    private static readonly double[] FormCosts = [0, 0.35, 0.7];

    /// <summary>Sides of the head (-1 below, 1 above, 0 beside) with shifts along the row in half widths of the mark.</summary>
    private static readonly (int Side, double Shift, double Cost)[] RowPlaces =
    [
        (-1, 0, 0), (1, 0, 0.04), (-1, 0.5, 0.12), (-1, -0.5, 0.12), (1, 0.5, 0.14), (1, -0.5, 0.14), (0, 1, 0.3), (0, -1, 0.3),
    ];

    private static readonly double[] Shifts = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1];

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
    /// <param name="first">Nails whose marks found no room after those of the rows, and now come before them in their shortest form.</param>
    public static MarkSet Place(ElevationView view, IReadOnlySet<string>? first = null) => new MarkPlacer(view).Run(first ?? new HashSet<string>());

    private MarkSet Run(IReadOnlySet<string> first)
    {
        Nail[][] rows = [.. NailLabels.RowGroups(_view.Nails, new Face(_view.Wall)).OrderByDescending(r => r.Max(n => n.Elevation))];
        foreach (Nail nail in _view.Nails.Where(n => first.Contains(n.Mark)))
        {
            bool tellsRow = nail.Kind == NailKind.Verification || rows.Any(r => IsEnd(r, nail));
            if (TryNear(nail, -1, [FormsOf(nail, tellsRow)[^1]]) || TryLeader(nail, tellsRow))
                _done.Add(nail.Mark);
        }
        var left = new List<(Nail Nail, int Side, int Form, bool IsEnd)>();
        foreach (Nail[] row in rows)
        {
            ((int Side, double Shift, double Cost) place, int form) = Cheapest(row);
            List<PlacedMark> marks = Try(row, place, form).Marks;
            foreach (PlacedMark mark in marks)
                Keep(mark);
            _done.UnionWith(marks.Select(m => m.Nail.Mark));
            left.AddRange(row.Where(n => !_done.Contains(n.Mark)).Select(n => (n, place.Side, form, IsEnd(row, n))));
        }
        left.AddRange(_view.Nails.Where(n => n.Kind == NailKind.Verification && !_done.Contains(n.Mark)).Select(n => (n, -1, 0, true)));
        (Nail Nail, int Side, int Form, bool IsEnd)[] far = [.. left.Where(l => !TryNear(l.Nail, l.Side, l.Form, l.IsEnd))];
        Nail[] missing = [.. far.Where(l => !TryLeader(l.Nail, l.IsEnd) && !TryNear(l.Nail, l.Side, l.Form, false) && !TryLeader(l.Nail, false)).Select(l => l.Nail)];
        // Not left out even so: it stands on something else, and that is reported.
        _placed.AddRange(missing.Select(n => new PlacedMark(n, TextAt(n, MarkForms.Of(n)[^1], -1, 0), null)));
        return new(_placed, missing, rows.Count(IsUnnamed));
    }

    /// <summary>A nail at the end of its row tells the row, too.</summary>
    private static string[] FormsOf(Nail nail, bool isEnd) => [.. MarkForms.Of(nail).Where(f => !isEnd || MarkForms.TellsRow(f))];

    private static bool IsEnd(Nail[] row, Nail nail) => nail == row[0] || nail == row[^1];

    private bool IsUnnamed(Nail[] row)
    {
        Dictionary<string, string> shown = _placed.Where(p => row.Contains(p.Nail)).ToDictionary(p => p.Nail.Mark, p => p.Text.Value);
        bool Tells(Nail nail) => shown.TryGetValue(nail.Mark, out string? text) && MarkForms.TellsRow(text);
        return shown.Values.Any(v => !MarkForms.TellsRow(v)) && !(Tells(row[0]) && Tells(row[^1]));
    }

    private ((int, double, double) Place, int Form) Cheapest(Nail[] row)
    {
        ((int, double, double) Place, int Form) best = (RowPlaces[0], FormCosts.Length - 1);
        double least = double.PositiveInfinity;
        foreach ((int Side, double Shift, double Cost) place in RowPlaces)
        {
            for (int form = 0; form < FormCosts.Length; form++)
            {
                double fixedCost = row.Length * (place.Cost + FormCosts[form]);
                if (fixedCost >= least)
                    break;
                double cost = fixedCost + Try(row, place, form).Cost;
                if (cost < least)
                    (least, best) = (cost, (place, form));
            }
        }
        return best;
    }

    /// <summary>The marks of a row on one side, each in the row's form or, where that does not fit, a shorter one.</summary>
    private (List<PlacedMark> Marks, double Cost) Try(Nail[] row, (int Side, double Shift, double Cost) place, int form)
    {
        var marks = new List<PlacedMark>();
        double cost = 0;
        Box? last = null;
        foreach (Nail nail in row.Where(n => !_done.Contains(n.Mark)))
        {
            bool isEnd = IsEnd(row, nail);
            string[] forms = FormsOf(nail, isEnd);
            double[] shifts = isEnd && place.Side != 0 ? Shifts : [place.Shift];
            PlacedMark? found = null;
            for (int f = isEnd ? 0 : Math.Min(form, forms.Length - 1); f < forms.Length && found is null; f++)
            {
                foreach (double shift in shifts)
                {
                    Text text = TextAt(nail, forms[f], place.Side, shift);
                    Box box = BoxOf(text);
                    if ((last is not null && last.Value.Overlaps(box.Grown(2 * Margin))) || !IsFree(nail, box))
                        continue;
                    found = new(nail, text, null);
                    last = box;
                    if (f > form)
                        cost += Shortened;
                    break;
                }
            }
            if (found is not null)
                marks.Add(found);
            else
                cost += Failed;
        }
        return (marks, cost);
    }

    private bool TryNear(Nail nail, int rowSide, int form, bool isEnd)
    {
        string[] all = FormsOf(nail, isEnd);
        return TryNear(nail, rowSide, isEnd ? all : all[Math.Min(form, all.Length - 1)..]);
    }

    private bool TryNear(Nail nail, int rowSide, string[] forms)
    {
        foreach (int side in new[] { rowSide, -1, 1, 0 }.Distinct())
        {
            foreach (string value in forms)
            {
                foreach (double shift in side == 0 ? [1, -1] : Shifts)
                {
                    Text text = TextAt(nail, value, side, shift);
                    if (!IsFree(nail, BoxOf(text)))
                        continue;
                    Keep(new(nail, text, null));
                    return true;
                }
            }
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
        Crowd.Add(BoxOf(mark.Text).Grown(Margin));
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

    private bool IsFree(Nail nail, Box box) =>
        _view.Viewport.Frame.Grown(-FromEdge).Contains(box) && Crowd.IsFree(box.Grown(Margin)) && IsOwned(nail, box);

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
