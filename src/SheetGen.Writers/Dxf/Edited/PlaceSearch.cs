using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>
/// Finds how an edited drawing lies over the one that was written. What nobody edits, the outlines of the elevations, tells it; where these
/// are gone, the nails themselves, most of which stand where they stood.
/// </summary>
/// <param name="tolerance">How far a point may be off, in units of the drawing that was written.</param>
internal sealed class PlaceSearch(double tolerance)
{
    /// <summary>Bounds of what is looked at, so that a hostile drawing costs no more than another.</summary>
    private const int MostDrawn = 20_000, MostSampled = 400, MostVotes = 400_000, MostShifts = 6;

    private static readonly double[] Usual = [1, 12, 1 / 12.0, 0.3048, 1 / 0.3048, 304.8, 25.4, 1 / 25.4, 1000, 0.001, 100, 0.01];

    /// <summary>Points that are known to belong together: where a nail stands, and where it stood.</summary>
    public IReadOnlyList<(DxfPoint Drawn, DxfPoint Was)> Pairs { get; init; } = [];

    /// <summary>Nails of which it is not known which is which: where they stand, and where all of them stood.</summary>
    public (IReadOnlyList<DxfPoint> Drawn, IReadOnlyList<DxfPoint> Was) Nails { get; init; } = ([], []);

    /// <summary>Corners of outlines: of the edited drawing, and of the elevations as they were written.</summary>
    public (IReadOnlyList<DxfPoint> Drawn, IReadOnlyList<DxfPoint> Was) Outlines { get; init; } = ([], []);

    /// <summary>Scales and turns that are tried beside none and those of the pairs.</summary>
    public IEnumerable<double> Scales { get; init; } = [];

    public IEnumerable<double> Turns { get; init; } = [];

    /// <summary>The turn of the nails' symbols, which decides where two places fit alike, as with a wall that looks the same upside down.</summary>
    public double? Likely { get; init; }

    /// <summary>The place that most agree on; null where nothing agrees on any, or two places fit alike.</summary>
    public DrawingPlace? Find()
    {
        DxfPoint[] outlineWas = Sample(Outlines.Was, MostSampled), nailWas = Sample(Nails.Was, MostSampled);
        DxfPoint[] outlineDrawn = Sample(Outlines.Drawn, MostDrawn), nailDrawn = Sample(Nails.Drawn, MostDrawn);
        (double ratio, double angle) = OfPairs();
        var fits = new List<(DrawingPlace Place, int Outline, int Nails)>();
        foreach (double scale in new[] { 1, ratio }.Concat(Scales.Select(Rounded)).Where(s => s > 0 && double.IsFinite(s)).Distinct())
        {
            var outlines = new PointGrid(outlineDrawn, tolerance * scale);
            var nails = new PointGrid(nailDrawn, tolerance * scale);
            foreach (double turn in new[] { 0, angle }.Concat(Turns.Select(RoundedTurn)).Where(double.IsFinite).Distinct())
            {
                var unmoved = new DrawingPlace(scale, turn, default);
                void Try(DxfPoint shift)
                {
                    // What is scaled or turned about the origin was not moved: then the shift is nothing but rounding.
                    DrawingPlace place = unmoved with { Shift = shift.Length <= tolerance * scale ? default : shift };
                    int agreeing = Pairs.Count(p => (place.Back(p.Drawn) - p.Was).Length <= tolerance) + nailWas.Count(w => nails.Has(place.Unmoved(w) + place.Shift));
                    fits.Add((place, outlineWas.Count(w => outlines.Has(place.Unmoved(w) + place.Shift)), agreeing));
                }
                Try(default);
                // The usual drawing lies as it lay; nothing further is tried then.
                if (outlineWas.Length > 0 && fits[0].Outline == outlineWas.Length)
                    return DrawingPlace.Same;
                foreach (DxfPoint shift in Voted(unmoved, outlineDrawn, outlineWas).Concat(Voted(unmoved, nailDrawn, nailWas)).Append(PairShift(unmoved)))
                    Try(shift);
            }
        }
        if (outlineWas.Length > 0 && Best(fits.Where(f => 2 * f.Outline >= outlineWas.Length), f => (f.Outline, f.Nails)) is { } outlined)
            return outlined;
        // Without outlines the nails decide; a drawing that lies as it lay needs one, any other place half of them.
        int stand = fits.Max(f => f.Nails);
        if (fits[0].Nails == stand || Best(fits, f => (f.Nails, 0)) is not { } found || (Pairs.Count == 0 && 2 * stand < Math.Min(nailDrawn.Length, nailWas.Length)))
            return fits[0].Nails > 0 ? DrawingPlace.Same : null;
        return found;
    }

    /// <summary>The place that fits best; null where there is none, or two that do not lie alike and nothing decides between them.</summary>
    private DrawingPlace? Best(IEnumerable<(DrawingPlace Place, int Outline, int Nails)> fits, Func<(DrawingPlace Place, int Outline, int Nails), (int, int)> by)
    {
        DrawingPlace[] first = [.. fits.GroupBy(by).OrderByDescending(g => g.Key).Take(1).SelectMany(g => g).Select(f => f.Place)];
        if (Likely is { } likely && first.Any(p => p.Turn == RoundedTurn(likely)))
            first = [.. first.Where(p => p.Turn == RoundedTurn(likely))];
        return first.Length > 0 && first.All(p => Alike(p, first[0])) ? first[0] : null;
    }

    private bool Alike(DrawingPlace a, DrawingPlace b) =>
        Math.Abs(a.Scale / b.Scale - 1) < 1e-6 && Math.Abs(a.Turn - b.Turn) < 1e-6 && (a.Shift - b.Shift).Length <= 4 * tolerance * a.Scale;

    /// <summary>The shifts that most pairs of a point that stands and one that stood tell.</summary>
    private IEnumerable<DxfPoint> Voted(DrawingPlace unmoved, DxfPoint[] drawn, DxfPoint[] was)
    {
        if (drawn.Length == 0 || was.Length == 0)
            return [];
        DxfPoint[] sample = [.. Sample(was, Math.Clamp(MostVotes / drawn.Length, 20, 60)).Select(unmoved.Unmoved)];
        double cell = 10 * tolerance * unmoved.Scale;
        var votes = new Dictionary<(long, long), List<DxfPoint>>();
        foreach (DxfPoint d in drawn)
        {
            foreach (DxfPoint w in sample)
            {
                DxfPoint shift = d - w;
                (long, long) key = ((long)Math.Round(shift.X / cell), (long)Math.Round(shift.Y / cell));
                if (!votes.TryGetValue(key, out List<DxfPoint>? list))
                    votes[key] = list = [];
                list.Add(shift);
            }
        }
        return votes.OrderByDescending(v => v.Value.Count).ThenBy(v => v.Key).Take(MostShifts).Select(v => Middle(v.Value));
    }

    private DxfPoint PairShift(DrawingPlace unmoved) => Pairs.Count == 0 ? default : Middle([.. Pairs.Select(p => p.Drawn - unmoved.Unmoved(p.Was))]);

    /// <summary>The scale and the turn that most pairs of far nails tell.</summary>
    private (double Scale, double Turn) OfPairs()
    {
        var ratios = new List<double>();
        var turns = new List<double>();
        for (int i = 0; i < Pairs.Count; i++)
        {
            (DxfPoint Drawn, DxfPoint Was) a = Pairs[i], b = Pairs[(i + Pairs.Count / 2) % Pairs.Count];
            DxfPoint was = b.Was - a.Was, drawn = b.Drawn - a.Drawn;
            if (was.Length <= 1e-6)
                continue;
            ratios.Add(drawn.Length / was.Length);
            double turn = Math.IEEERemainder((Math.Atan2(drawn.Y, drawn.X) - Math.Atan2(was.Y, was.X)) * 180 / Math.PI, 360);
            // No usual turn lies where the figures jump.
            turns.Add(turn < -135 ? turn + 360 : turn);
        }
        return ratios.Count == 0 ? (1, 0) : (Rounded(Median(ratios)), RoundedTurn(Median(turns)));
    }

    /// <summary>A scale that a person would give, where it is within rounding of one.</summary>
    private static double Rounded(double scale)
    {
        double usual = Array.Find(Usual, u => Math.Abs(scale / u - 1) < 1e-6);
        return usual > 0 ? usual : scale;
    }

    private static double RoundedTurn(double turn) => Math.Abs(turn - Math.Round(turn)) < 1e-6 ? Math.Round(turn) : turn;

    private static DxfPoint Middle(List<DxfPoint> points) => new(Median(points.Select(p => p.X)), Median(points.Select(p => p.Y)));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : sorted[sorted.Length / 2];
    }

    private static DxfPoint[] Sample(IReadOnlyList<DxfPoint> all, int most) =>
        all.Count <= most ? [.. all] : [.. Enumerable.Range(0, most).Select(i => all[(int)((long)i * all.Count / most)])];
}
