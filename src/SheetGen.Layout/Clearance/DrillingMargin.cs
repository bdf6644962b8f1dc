using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// How far a hole may stray about its head before it touches something: the least of free(u) / u over the depth, free(u) being the
/// distance of the axis point less the radii, without drift. A ratio m is reached where a hole that widens by m for each unit of depth
/// just touches; Dinkelbach's iteration (from memory) takes the exact clear distance of such widening holes and ends at the least ratio.
/// </summary>
internal static class DrillingMargin
{
    private const int MostSteps = 100;

    /// <summary>The smaller of a ratio met before and that to another hole; 0 where they touch.</summary>
    public static double Ratio(in Hole hole, in Hole other, double before)
    {
        Hole still = other with { Drift = 0 };
        double ratio = before;
        for (int step = 0; step < MostSteps && ratio > 0; step++)
        {
            Nearest near = HoleDistance.Between(hole with { Drift = ratio }, still);
            if (!Improves(near, ref ratio))
                break;
        }
        return ratio;
    }

    /// <summary>The smaller of a ratio met before and that to a solid; 0 where they touch.</summary>
    public static double Ratio(in Hole hole, Solid solid, double before)
    {
        double ratio = before;
        for (int step = 0; step < MostSteps && ratio > 0; step++)
        {
            Nearest near = HoleDistance.ToSolid(hole with { Drift = ratio }, solid);
            if (!Improves(near, ref ratio))
                break;
        }
        return ratio;
    }

    /// <summary>The angle in degrees of a ratio: 90 from 1 on.</summary>
    public static double Degrees(double ratio) => Model.Units.Angles.ToDegrees(Math.Asin(Math.Clamp(ratio, 0, 1)));

    private static bool Improves(Nearest near, ref double ratio)
    {
        if (near.Clear >= -ClearanceTolerance.RatioMet)
            return false;
        double free = near.Clear + ratio * near.DepthFirst;
        double next = free > 0 ? free / near.DepthFirst : 0;
        if (next >= ratio)
            return false;
        ratio = next;
        return true;
    }
}
