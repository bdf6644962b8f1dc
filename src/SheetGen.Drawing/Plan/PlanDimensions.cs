using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Plan;

/// <summary>
/// The dimensions of a plan: layout line to face, face to the limit of the longest nail, and the least distance from the face to each right of
/// way or easement. Each is measured square to the face at the bottom of the wall, as it is drawn.
/// </summary>
/// <param name="labels">Takes what is said in words.</param>
/// <param name="inModel">Takes the dimensions; shares the placer of the labels.</param>
/// <param name="toPaper">From plan points to the paper of the labels.</param>
/// <param name="isAlone">True for a box on the paper that no other view of the plan shows: dimensions stand in model space, which all plans share.</param>
public sealed class PlanDimensions(
    DrawingContext context, SheetWindow window, ViewLabels labels, ViewLabels inModel, Func<Vector2D, Point2> toPaper, string style, Func<Box, bool> isAlone)
{
    private const int Places = 32;

    private readonly DimensionPlacer _placer = new(context, inModel, style) { HasArrows = true };
    private readonly Face _face = new(window.Wall);

    private LayoutLine Line => window.Wall.LayoutLine;

    private Box Frame => labels.Placer.Frame;

    private Vector2D OnFace(double along) => Line.PointAt(along) + _face.NormalAt(along) * _face.OffsetAt(window.Wall.Bottom.At(along));

    private bool IsSeen(Vector2D point) => Frame.Contains(toPaper(point));

    /// <summary>Stations of the window where a dimension may stand, the middle first.</summary>
    private IEnumerable<double> Stations()
    {
        double length = window.End - window.Start, middle = (window.Start + window.End) / 2;
        return Enumerable.Range(1, Places - 1).Select(i => window.Start + length * i / Places).OrderBy(a => Math.Abs(a - middle));
    }

    /// <summary>The face offset, once for each wall's window; in words where no dimension has room.</summary>
    public void Offset()
    {
        (Vector2D On, Vector2D Face)[] places = [.. Stations().Select(a => (Line.PointAt(a), OnFace(a))).Where(p => IsSeen(p.Item1) && IsSeen(p.Item2))];
        if (places.All(p => (p.Face - p.On).Length < Lengths.Quantum(context.Print.Unit)))
            return;
        foreach ((Vector2D on, Vector2D face) in places)
        {
            if (Try(on, face, context.Say(Phrase.DimOffset, DimensionPlacer.Measured)))
                return;
        }
        (Vector2D a, Vector2D b) = places[0];
        InWords(context.Say(Phrase.FaceOffset, context.Print.Distance((b - a).Length)), (a + b) * 0.5);
    }

    /// <summary>The limit of the longest nails of each design section on each leg.</summary>
    /// <returns>Those that have no dimension.</returns>
    public IReadOnlyList<NailLimit> Limits(IReadOnlyList<NailLimit> limits) =>
        [.. limits.Where(l => !Stations().Any(a => a > l.Start && a < l.End && Try(OnFace(a), Line.PointAt(a) + _face.NormalAt(a) * l.Offset, DimensionPlacer.Measured)))];

    /// <summary>Names the limits, those with a dimension once for all; with their distance from the face where they have none.</summary>
    public void NameLimits(IReadOnlyList<NailLimit> limits, IReadOnlyList<NailLimit> inWords)
    {
        NailLimit? named = limits.Except(inWords).MaxBy(l => l.Line.Count(IsSeen));
        NailLimit[] shown = [.. limits.Where(l => l.Line.Any(IsSeen))];
        foreach (NailLimit limit in limits.Where(l => l == named || inWords.Contains(l)))
        {
            Vector2D[] seen = [.. limit.Line.Where(IsSeen)];
            if (seen.Length == 0)
                continue;
            string words = inWords.Contains(limit) ? Words(limit, shown, false) : context.Say(Phrase.LegendNailLimit);
            string note = inWords.Contains(limit) ? Words(limit, shown, true) : words;
            labels.LabelOneOf([.. new[] { 0.5, 0.3, 0.7, 0.15, 0.85 }.Select(k => seen[(int)(k * (seen.Length - 1))]).Distinct()
                .Select(p => new LabelRequest([[words]], TextRole.Label, toPaper(p), 0.6) { LeaderFrom = 2.6, Toward = Away(p), Otherwise = note })]);
        }
    }

    /// <summary>A limit in words: with its design section where the view shows those of others, and with its stations where that has several.</summary>
    /// <param name="isNote">True for words that stand among the notes of the sheet, apart from what they speak of: they always name it.</param>
    private string Words(NailLimit limit, IReadOnlyList<NailLimit> shown, bool isNote)
    {
        string distance = context.Print.Distance(limit.FromFace);
        string zone = (context.Project.Walls.Count > 1 ? window.Wall.Name + " " + limit.Section.Name : limit.Section.Name).ToUpperInvariant();
        if (shown.Count(l => l.Section == limit.Section) > 1)
            return context.Say(Phrase.LongestNailAt, distance, zone, context.Say(Phrase.StationRange, context.Print.Station(window.Wall, limit.Start), context.Print.Station(window.Wall, limit.End)));
        return isNote || shown.Count > 1 ? context.Say(Phrase.LongestNailOf, distance, zone) : context.Say(Phrase.LongestNail, distance);
    }

    /// <summary>Direction from the wall to a point behind it, on the paper.</summary>
    private double Away(Vector2D point)
    {
        Point2 way = toPaper(point) - toPaper(OnFace(Math.Clamp(LayoutProjection.Locate(Line, point).Along, window.Wall.Start, window.Wall.End - 1e-6)));
        return Math.Atan2(way.Y, way.X);
    }

    /// <summary>Rights of way and easements behind the stretch shown: how near they come to the face, also where they lie beyond the view.</summary>
    /// <returns>Those that are named with it.</returns>
    public IReadOnlySet<Obstruction> Boundaries()
    {
        var named = new HashSet<Obstruction>(ReferenceEqualityComparer.Instance);
        foreach (Obstruction o in context.Project.Obstructions.Where(o => o.Kind == ObstructionKind.Boundary))
        {
            (Vector2D Face, Vector2D Point)[] behind = [.. Stations().Append(window.Start).Append(window.End - 1e-6).Select(a => (a, Behind(o, a))).Where(p => p.Item2 is not null).Select(p => (OnFace(p.a), p.Item2!.Value))];
            if (behind.Length == 0)
                continue;
            double least = behind.Min(p => (p.Point - p.Face).Length);
            (Vector2D Face, Vector2D Point)[] nearest = [.. behind.Where(p => (p.Point - p.Face).Length < least + Lengths.Quantum(context.Print.Unit) / 2)];
            if (nearest.Any(p => Try(p.Face, p.Point, context.Say(Phrase.DimLeast, DimensionPlacer.Measured))))
                continue;
            (Vector2D face, Vector2D point) = nearest[0];
            Vector2D at = Enumerable.Range(0, 101).Select(i => face + (point - face) * (1 - i / 100.0)).FirstOrDefault(IsSeen, face);
            string words = context.Say(IsSeen(point) ? Phrase.BoundaryFromFace : Phrase.BoundaryBeyond, PlanLabels.NameOf(o, context), context.Print.Distance(least));
            if (IsSeen(at))
                InWords(words, at, o.Name);
            else
                labels.Note(words);
            named.Add(o);
        }
        return named;
    }

    /// <summary>The point of a boundary square behind the face at a station, the nearest where it has several; null where it has none.</summary>
    private Vector2D? Behind(Obstruction o, double along)
    {
        Vector2D face = OnFace(along), normal = _face.NormalAt(along);
        Vector2D? best = null;
        double least = double.PositiveInfinity;
        for (int k = 0; k + 1 < o.Shape.Count; k++)
        {
            Vector2D from = o.Shape[k].Plan, way = o.Shape[k + 1].Plan - from, to = face - from;
            double cross = way.E * normal.N - way.N * normal.E;
            if (Math.Abs(cross) < 1e-12)
                continue;
            double t = (to.E * normal.N - to.N * normal.E) / cross, behind = (from + way * t - face).Dot(normal);
            if (t is >= 0 and <= 1 && behind >= 0 && behind < least)
                (least, best) = (behind, from + way * t);
        }
        return best;
    }

    private bool Try(Vector2D from, Vector2D to, string words)
    {
        Point2 a = toPaper(from), b = toPaper(to);
        // A dimension line across a nail would be taken for one.
        return Frame.Contains(a) && Frame.Contains(b) && !CrossedNails.Any(context.Layout.Nails, from, to) && _placer.TryAligned(a, b, (to - from).Length, words, null, isAlone);
    }

    private void InWords(string words, Vector2D at, string? obstruction = null) =>
        labels.Label(new LabelRequest([[words]], TextRole.Label, toPaper(at), 0.6) { LeaderFrom = 2.6, Obstruction = obstruction, Otherwise = words });
}
