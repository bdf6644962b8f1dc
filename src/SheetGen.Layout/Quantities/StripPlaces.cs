using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Quantities;

/// <summary>Where a leg's face starts and ends along the layout line: outermost and innermost at any elevation.</summary>
internal readonly record struct StripExtent(double Start, double StartInner, double EndInner, double End);

/// <summary>
/// Places of drainage strips on a leg: as few as keep the greatest spacing, evenly, and no farther than half of it from the face's ends
/// at every elevation. Beside its even place a strip takes the middle between nail columns, or else a place clear of all holes, as far
/// as the spacing allows; where there is none, it touches as few as it can. Among all such places the chain with the least cost is
/// found by dynamic programming.
/// </summary>
internal static class StripPlaces
{
    private const double TouchCost = 1e6, OffMiddleCost = 0.5;

    /// <param name="reach">Greatest distance between strips along the layout line, over 0.</param>
    /// <param name="half">Half a strip's width.</param>
    /// <param name="blocked">Stretches where a strip's centre line would touch a hole, in order of their start.</param>
    public static IReadOnlyList<double> Of(StripExtent extent, double reach, double half, IReadOnlyList<(double From, double To)> blocked)
    {
        double width = extent.End - extent.Start;
        if (width <= 0)
            return [];
        int least = Math.Max(1, (int)Math.Ceiling(width / reach - Tolerance.Rounding));
        // Mitres that lean far may ask for one more at each end.
        for (int count = least; count <= least + 2; count++)
        {
            if (Chain(extent, reach, half, blocked, count) is { } chain)
                return chain;
        }
        return [.. Enumerable.Range(0, least).Select(i => Even(extent, least, i))];
    }

    private static double Even(StripExtent extent, int count, int i) => extent.Start + (extent.End - extent.Start) * (i + 0.5) / count;

    private static double[]? Chain(StripExtent extent, double reach, double half, IReadOnlyList<(double From, double To)> blocked, int count)
    {
        List<(double From, double To)> free = Free(extent, half, blocked);
        var layers = new List<List<Step>>();
        for (int i = 0; i < count; i++)
        {
            var layer = new List<Step>();
            foreach (Place place in Places(extent, reach, half, free, Even(extent, count, i)))
            {
                Step? best = null;
                if (i == 0)
                    best = place.At <= extent.Start + reach / 2 + Tolerance.Rounding ? new Step(place.At, place.Cost, -1) : null;
                else
                {
                    for (int k = 0; k < layers[i - 1].Count; k++)
                    {
                        Step before = layers[i - 1][k];
                        double gap = place.At - before.At;
                        if (gap > Tolerance.Rounding && gap <= Allowed(extent, reach, before.At, place.At) + Tolerance.Rounding && (best is null || before.Cost + place.Cost < best.Value.Cost))
                            best = new Step(place.At, before.Cost + place.Cost, k);
                    }
                }
                if (best is { } step && (i < count - 1 || place.At >= extent.End - reach / 2 - Tolerance.Rounding))
                    layer.Add(step);
            }
            if (layer.Count == 0)
                return null;
            layers.Add(layer);
        }
        var chain = new double[count];
        int at = layers[^1].IndexOf(layers[^1].MinBy(s => s.Cost));
        for (int i = count - 1; i >= 0; i--)
        {
            chain[i] = layers[i][at].At;
            at = layers[i][at].Before;
        }
        return chain;
    }

    /// <summary>Beside a strip that leaves the face at a leaning mitre, the next one is the first there: half the spacing from it.</summary>
    private static double Allowed(StripExtent extent, double reach, double before, double after) =>
        before < extent.StartInner - Tolerance.Rounding || after > extent.EndInner + Tolerance.Rounding ? reach / 2 : reach;

    private static IEnumerable<Place> Places(StripExtent extent, double reach, double half, List<(double From, double To)> free, double even)
    {
        double low = Math.Min(extent.Start + half, (extent.Start + extent.End) / 2), high = Math.Max(extent.End - half, (extent.Start + extent.End) / 2);
        double from = Math.Max(low, even - reach), to = Math.Min(high, even + reach);
        var places = new List<Place>();
        foreach ((double start, double end) in free.Where(f => f.To >= from && f.From <= to))
        {
            double middle = (start + end) / 2;
            foreach (double at in new[] { middle, start, end, even, extent.StartInner, extent.EndInner, extent.Start + reach / 2, extent.End - reach / 2 })
            {
                if (at >= start - Tolerance.Rounding && at <= end + Tolerance.Rounding && at >= from - Tolerance.Rounding && at <= to + Tolerance.Rounding)
                    places.Add(new Place(at, Math.Abs(at - even) / reach + (Math.Abs(at - middle) < Tolerance.Rounding ? 0 : OffMiddleCost)));
            }
        }
        foreach (double at in new[] { even, Math.Clamp(extent.StartInner, from, to), Math.Clamp(extent.EndInner, from, to), Math.Clamp(extent.Start + reach / 2, from, to), Math.Clamp(extent.End - reach / 2, from, to) })
            places.Add(new Place(at, TouchCost * (free.Exists(f => at >= f.From - Tolerance.Rounding && at <= f.To + Tolerance.Rounding) ? 0 : 1) + Math.Abs(at - even) / reach + OffMiddleCost));
        return places.OrderBy(p => p.At).ThenBy(p => p.Cost).DistinctBy(p => p.At);
    }

    private static List<(double From, double To)> Free(StripExtent extent, double half, IReadOnlyList<(double From, double To)> blocked)
    {
        var free = new List<(double From, double To)>();
        double open = extent.Start + half;
        foreach ((double from, double to) in blocked)
        {
            if (from > open + Tolerance.Rounding)
                free.Add((open, from));
            open = Math.Max(open, to);
        }
        if (extent.End - half > open + Tolerance.Rounding)
            free.Add((open, extent.End - half));
        return free;
    }

    private readonly record struct Place(double At, double Cost);

    /// <param name="Before">Index of the place before it; -1 for the first.</param>
    private readonly record struct Step(double At, double Cost, int Before);
}
