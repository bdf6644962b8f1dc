using System.Globalization;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Elevation;

/// <summary>One window of an elevation as it will lie on its sheet, with the marks and callouts of its nails.</summary>
/// <param name="View">The view with the callouts in its labels and all that stands in it in its crowd: other labels find places around those.</param>
public sealed record PlannedWindow(ElevationStrip Strip, SheetWindow Window, Viewport Viewport, MarkSet Marks, ElevationView View)
{
    /// <summary>Nails that cannot be told, or were not called out as they should be before other ways were taken: a larger scale is better than those.</summary>
    public required int Faults { get; init; }
}

/// <summary>
/// What is decided of the elevations before anything is drawn: scale, windows, marks and callouts. The scale is the usual one unless those
/// have no room at it; then the next larger at which each nail can be told, and at which the elevations fit the sheets.
/// </summary>
public sealed record ElevationPlan(SheetScale Scale, IReadOnlyList<ElevationStrip> Strips, IReadOnlyList<PlannedWindow> Windows)
{
    /// <summary>Share of the nails whose marks may stand off with leaders before a larger scale is taken.</summary>
    private const double LeaderShare = 0.03;

    public IReadOnlyList<Finding> Findings { get; private init; } = [];

    private int Faults => Windows.Sum(w => w.Faults);

    private const int MostTries = 6;

    /// <summary>Nails that a finding names in its words.</summary>
    private const int MostNamed = 12;

    /// <summary>Marks that stand off and callouts among the notes: all can be told, yet a larger scale would tell them better.</summary>
    private int Leaders => Windows.Sum(w => w.Marks.Leaders + w.View.Labels.Marked.Count);

    private int Nails => Windows.Sum(w => w.Marks.Marks.Count);

    public static ElevationPlan Make(DrawingContext context, Box area)
    {
        SheetScale usual = StripPlanner.Choose(context, area);
        bool given = context.Project.Sheets.Scale is not null;
        ElevationPlan first = At(context, area, usual), best = first;
        IEnumerable<SheetScale> larger = SheetScale.Customary(context.Templates, context.Project.Unit)
            .Where(s => s.Value < usual.Value).OrderByDescending(s => s.Value);
        foreach (SheetScale scale in larger)
        {
            bool isGood = best.Faults == 0 && (given || best.Leaders <= LeaderShare * best.Nails + 1);
            if (isGood || !new SheetRooms(context, area, scale).Fit)
                break;
            ElevationPlan next = At(context, area, scale);
            if ((next.Faults, next.Leaders).CompareTo((best.Faults, best.Leaders)) < 0)
                best = next;
        }
        return best with { Findings = [.. Reports(context, first, best, given)] };
    }

    private static IEnumerable<Finding> Reports(DrawingContext context, ElevationPlan first, ElevationPlan best, bool given)
    {
        if (given && best.Scale != first.Scale)
        {
            yield return new Finding
            {
                Code = FindingCode.Sheet,
                Severity = Severity.Warning,
                Message = $"at {first.Scale.Words(context)} marks or callouts of nails have no room: {best.Scale.Words(context)} is taken",
            };
        }
        string[] missing = [.. best.Windows.SelectMany(w => w.Marks.Missing).Select(n => n.Mark)];
        if (missing.Length > 0)
        {
            yield return new Finding
            {
                Code = FindingCode.Sheet,
                Severity = Severity.Error,
                Nails = missing,
                Message = string.Create(CultureInfo.InvariantCulture,
                    $"no scale gives the {(missing.Length == 1 ? "mark of 1 nail" : FormattableString.Invariant($"marks of {missing.Length} nails"))} room, {(missing.Length == 1 ? "it stands" : "they stand")} on something else: {string.Join(", ", missing.Take(MostNamed))}{(missing.Length > MostNamed ? " and others" : "")}; choose a larger sheet"),
            };
        }
    }

    private static ElevationPlan At(DrawingContext context, Box area, SheetScale scale)
    {
        var rooms = new SheetRooms(context, area, scale);
        IReadOnlyList<ElevationStrip> strips = StripPlanner.Strips(context, scale, area);
        return new(scale, strips, [.. strips.SelectMany(s =>
        {
            Primitive[] lines = [.. ElevationModel.Draw(context, s)];
            double[] heads = [.. context.NailsOf(s.Wall).Select(n => n.Along).Order()];
            double step = context.Project.Unit == LengthUnit.Metre ? 1 : 5;
            return SheetWindow.Cut(s.Wall, Math.Max(step, (rooms.Longest - s.Developed.Jumps) / s.Developed.Most), heads, 2 * NailSymbols.Ring * scale.UnitsPerMillimetre, step).Select(w => Window(rooms, s, w, lines));
        })]);
    }

    /// <summary>
    /// Places marks, then callouts; where a callout finds no room, again with that callout first, at last with unresolved neighbours
    /// called out together. Where a nail that may not be drilled still has none, its callout is placed before the marks, if that costs no
    /// mark, else it stands near the mark that it names, without a leader. The best of these tries counts; what has no room in it stands among the notes by its mark, and is a fault where the nail may not be drilled.
    /// </summary>
    private static PlannedWindow Window(SheetRooms rooms, ElevationStrip strip, SheetWindow window, IReadOnlyList<Primitive> lines)
    {
        (DrawingContext context, _, SheetScale scale) = rooms;
        Viewport viewport = rooms.ElevationOf(strip, window);
        Box frame = SheetRooms.LabelFrame(strip, window, viewport);
        HashSet<string> first = [], repeated = [];
        MarkSet? marks = null;
        ElevationView? best = null;
        for (int left = MostTries - 1; ; left--)
        {
            ElevationView view = Empty();
            if (marks is null)
                (view, marks) = Marked(view);
            else
                view.Keep(marks);
            new ElevationLabels(view).Axis();
            new NailLabels(view, scale.DimensionStyle).Callouts(first, left < MostTries / 2);
            IReadOnlyList<string> failed = view.Labels.NailsWithoutCallout;
            if (best is null || failed.Count < best.Labels.NailsWithoutCallout.Count)
                best = view;
            if (left == 0 || failed.Count == 0)
                break;
            first.UnionWith(failed);
            // What failed twice fails a third time: go on to the groups.
            left = Math.Min(left, failed.All(repeated.Contains) ? MostTries / 2 : left);
            repeated.UnionWith(failed);
        }
        HashSet<string> stopped = [.. best.Nails.Where(context.IsStopped).Select(n => n.Mark)];
        int faults = marks.Faults + best.Labels.NailsWithoutCallout.Count(stopped.Contains);
        if (faults > marks.Faults && CalloutsBeforeMarks(stopped) is var (other, found) && found.Faults <= marks.Faults)
            (best, marks) = (other, found);
        best.Labels.WithoutLeader(stopped.Contains);
        best.Labels.NoteByMark(m => !stopped.Contains(m));
        foreach (string mark in best.Labels.NailsWithoutCallout)
            best.Labels.NoteFirst(context.Say(Phrase.DoNotDrillMark, mark) + ", " + context.Say(Phrase.AskEngineer));
        return new(strip, window, viewport, marks, best) { Faults = faults };

        ElevationView Empty()
        {
            var view = new ElevationView(context, strip, window, viewport, new ViewLabels(context, viewport, frame, "", window.Wall));
            view.Crowd(lines);
            new WallDimensions(view, scale.DimensionStyle).Ends();
            return view;
        }

        // Where marks find no room after the rows', again with these first: on the sides that the rows have, at last on any.
        (ElevationView, MarkSet) Marked(ElevationView view)
        {
            MarkSet found = MarkPlacer.Place(view);
            HashSet<string> early = [.. found.Missing.Select(n => n.Mark)];
            MarkSet last = found;
            for (int left = MostTries; left > 0 && last.Missing.Count > 0; left--)
            {
                ElevationView again = Empty();
                last = left > MostTries / 2 ? MarkPlacer.Place(again, found.Sides, early) : MarkPlacer.Place(again, null, early, true);
                early.UnionWith(last.Missing.Select(n => n.Mark));
                if ((last.Missing.Count, last.Unnamed).CompareTo((found.Missing.Count, found.Unnamed)) < 0)
                    (view, found) = (again, last);
            }
            return (view, found);
        }

        (ElevationView, MarkSet)? CalloutsBeforeMarks(HashSet<string> of)
        {
            ElevationView view = Empty();
            var labels = new NailLabels(view, scale.DimensionStyle);
            labels.Stopped(of);
            if (view.Labels.NailsWithoutCallout.Count > 0)
                return null;
            MarkSet found = MarkPlacer.Place(view);
            new ElevationLabels(view).Axis();
            labels.Callouts([], false, of);
            return view.Labels.NailsWithoutCallout.Any(of.Contains) ? null : (view, found);
        }
    }
}
