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
    public static (double From, double To) Of(Bay bay, FaceOutline outline, List<Head> heads, Along along, CoverBreak lack)
    {
        Wall wall = bay.Wall;
        double spacing = bay.Section.VerticalSpacing;
        Elevation top = wall.Top.At(along), levelZero = bay.Section.Rows == RowKind.Parallel ? top : default;
        Elevation upper = levelZero + lack.Upper, lower = levelZero + lack.Lower;
        Elevation low = outline.LowestAllowed(along), high = outline.HighestAllowed(along);
        Elevation here = Elevation.Min(wall.Bottom.At(along), wall.Bottom.Lowest(lack.Start, lack.End));
        switch (lack.Lack)
        {
            case Lack.Nails:
                Elevation target = Elevation.Min(high, Elevation.Max(low, top - bay.Rules.TopMax));
                low = Elevation.Max(low, top - bay.Rules.TopMax);
                high = Elevation.Max(Elevation.Min(high, here + bay.Rules.BottomMax), Elevation.Min(high, target));
                break;
            case Lack.Top:
                low = Elevation.Max(Elevation.Max(low, top - bay.Rules.TopMax), lower + Tolerance.SameLength);
                if (lower + spacing >= low)
                    high = Elevation.Min(high, lower + spacing);
                break;
            case Lack.Bottom:
                high = Elevation.Min(Elevation.Min(high, here + bay.Rules.BottomMax), upper - Tolerance.SameLength);
                if (upper - spacing <= high)
                    low = Elevation.Max(low, upper - spacing);
                break;
            default:
                low = Elevation.Max(low, upper - spacing);
                high = Elevation.Min(high, lower + spacing);
                if (high < low)
                {
                    low = Elevation.Max(outline.LowestAllowed(along), lower);
                    high = Elevation.Min(outline.HighestAllowed(along), upper);
                }
                break;
        }
        (Elevation least, Elevation most) = bay.ElevationsAt(along, lack.Start, lack.End);
        (low, high) = Free(bay, outline, heads, along, Elevation.Max(low, least), Elevation.Min(high, most));
        return (low - levelZero, high - levelZero);
    }

    /// <summary>The widest part of a band of elevations that is clear of the heads beside it and of what is closed to nails.</summary>
    private static (Elevation Low, Elevation High) Free(Bay bay, FaceOutline outline, List<Head> heads, Along along, Elevation low, Elevation high)
    {
        double apart = LeastApart(bay), cos = Math.Cos(Angles.ToRadians(bay.Section.Inclination));
        List<(Elevation From, Elevation To)> blocked = [.. outline.ClosedAt(along)];
        foreach (Head head in heads)
        {
            double dz = RiseBeside(apart, cos, head.Along - along);
            if (dz > 0)
                blocked.Add((head.Elevation - dz, head.Elevation + dz));
        }
        blocked.Sort();
        (Elevation Low, Elevation High) best = (low, low - 1);
        Elevation from = low;
        foreach ((Elevation start, Elevation end) in blocked)
        {
            if (Elevation.Min(start, high) - from > best.High - best.Low)
                best = (from, Elevation.Min(start, high));
            from = Elevation.Max(from, end);
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
    private static double RiseBeside(double apart, double cos, double beside) =>
        Math.Abs(beside) >= apart ? 0 : Math.Sqrt(apart * apart - beside * beside) / cos;
}
