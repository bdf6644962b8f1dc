using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>Levels at which a part row's nail cures a lack of cover and keeps clear of the heads beside it, holes taken as parallel.</summary>
internal static class PartRowBand
{
    /// <summary>Least vertical distance between two heads, one above the other, whose holes are parallel.</summary>
    public static double LeastRise(Bay bay) => LeastApart(bay) / Math.Cos(Angles.ToRadians(bay.Section.Inclination));

    private static double LeastApart(Bay bay) =>
        bay.Section.HoleDiameter + bay.Rules.NailClearance + 2 * bay.Rules.Drift * bay.Section.Lengths.Max()
        + 2 * Lengths.Quantum(bay.Unit);

    /// <summary>The widest band of levels at a place that cures a lack and keeps clear of the outline and of other holes.</summary>
    public static (double From, double To) Of(Bay bay, FaceOutline outline, List<Head> heads, double along, CoverBreak lack)
    {
        Wall wall = bay.Wall;
        double top = wall.Top.At(along), bottom = wall.Bottom.At(along), spacing = bay.Section.VerticalSpacing;
        double shift = bay.Section.Rows == RowKind.Parallel ? top : 0;
        double low = outline.LowestAllowed(along), high = outline.HighestAllowed(along);
        double here = Math.Min(bottom, wall.Bottom.Lowest(lack.Start, lack.End));
        switch (lack.Lack)
        {
            case Lack.Nails:
                double target = Math.Min(high, Math.Max(low, top - bay.Rules.TopMax));
                low = Math.Max(low, top - bay.Rules.TopMax);
                high = Math.Max(Math.Min(high, here + bay.Rules.BottomMax), Math.Min(high, target));
                break;
            case Lack.Top:
                low = Math.Max(Math.Max(low, top - bay.Rules.TopMax), lack.Lower + shift + Tolerance.SameLength);
                if (lack.Lower + shift + spacing >= low)
                    high = Math.Min(high, lack.Lower + shift + spacing);
                break;
            case Lack.Bottom:
                high = Math.Min(Math.Min(high, here + bay.Rules.BottomMax), lack.Upper + shift - Tolerance.SameLength);
                if (lack.Upper + shift - spacing <= high)
                    low = Math.Max(low, lack.Upper + shift - spacing);
                break;
            default:
                low = Math.Max(low, lack.Upper + shift - spacing);
                high = Math.Min(high, lack.Lower + shift + spacing);
                if (high < low)
                {
                    low = Math.Max(outline.LowestAllowed(along), lack.Lower + shift);
                    high = Math.Min(outline.HighestAllowed(along), lack.Upper + shift);
                }
                break;
        }
        (double least, double most) = bay.LevelsAt(along, lack.Start, lack.End);
        (low, high) = Free(bay, outline, heads, along, Math.Max(low, least), Math.Min(high, most));
        return (low - shift, high - shift);
    }

    /// <summary>The widest part of a band of elevations that is clear of the heads beside it and of what is closed to nails.</summary>
    private static (double Low, double High) Free(Bay bay, FaceOutline outline, List<Head> heads, double along, double low, double high)
    {
        double apart = LeastApart(bay), cos = Math.Cos(Angles.ToRadians(bay.Section.Inclination));
        List<(double From, double To)> blocked = [.. outline.ClosedAt(along)];
        foreach (Head head in heads)
        {
            double dz = RiseBeside(apart, cos, head.Along - along);
            if (dz > 0)
                blocked.Add((head.Elevation - dz, head.Elevation + dz));
        }
        blocked.Sort();
        (double Low, double High) best = (low, low - 1);
        double from = low;
        foreach ((double start, double end) in blocked)
        {
            if (Math.Min(start, high) - from > best.High - best.Low)
                best = (from, Math.Min(start, high));
            from = Math.Max(from, end);
        }
        if (high - from > best.High - best.Low)
            best = (from, high);
        return best;
    }

    /// <summary>True where a head keeps so far from others that holes can start beside each other; that they drift apart is left to the search.</summary>
    public static bool IsClear(Bay bay, List<Head> heads, Head head)
    {
        double apart = bay.Section.HoleDiameter + bay.Rules.NailClearance, cos = Math.Cos(Angles.ToRadians(bay.Section.Inclination));
        return heads.TrueForAll(h =>
            Math.Abs(h.Elevation - head.Elevation) >= RiseBeside(apart, cos, h.Along - head.Along) - Tolerance.Rounding);
    }

    /// <summary>Least vertical distance from a head at a distance along the face, so that parallel holes keep apart; 0 where any will do.</summary>
    private static double RiseBeside(double apart, double cos, double along) =>
        Math.Abs(along) >= apart ? 0 : Math.Sqrt(apart * apart - along * along) / cos;
}
