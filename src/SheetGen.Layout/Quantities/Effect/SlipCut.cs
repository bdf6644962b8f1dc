using SheetGen.Model;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Where a nail leaves a slip surface behind for good, in the vertical plane square to the layout line.</summary>
internal static class SlipCut
{
    /// <summary>An angle is drawn up to this height over the toe; no wall is higher.</summary>
    private const double Far = 1e5;

    /// <summary>
    /// Depth along the hole from which on it stays behind the surface: 0 where all of it does, the length where its tip is in front.
    /// Below the lowest point everything is behind; above the highest the surface goes on upright.
    /// </summary>
    /// <param name="toe">Elevation of the bottom of wall; distances behind are counted from the face there.</param>
    /// <param name="behind">Distance of the head behind that.</param>
    /// <param name="elevation">Elevation of the head.</param>
    /// <param name="inward">Distance behind gained for one of length.</param>
    /// <param name="down">Height lost for one of length.</param>
    public static double At(SlipSurface surface, double toe, double behind, double elevation, double inward, double down, double length)
    {
        IReadOnlyList<SurfacePoint> points = surface.Angle is { } angle
            ? [new(0, toe), new(Far / Math.Tan(angle * Math.PI / 180), toe + Far)]
            : surface.Points;
        bool IsInFront(double depth)
        {
            double z = elevation - depth * down;
            return z >= points[0].Elevation && behind + depth * inward < BehindAt(points, z);
        }
        // Between two crossings, and the depths where the hole passes the surface's lowest and highest point, nothing changes.
        var depths = new SortedSet<double> { 0, length };
        for (int i = 1; i < points.Count; i++)
            AddCrossing(depths, points[i - 1], points[i], behind, elevation, inward, down, length);
        foreach (SurfacePoint end in new[] { points[0], points[^1] })
        {
            if (down != 0 && (elevation - end.Elevation) / down is var passing and > 0 && passing < length)
                depths.Add(passing);
        }
        if (inward != 0 && (points[^1].Behind - behind) / inward is var upright and > 0 && upright < length)
            depths.Add(upright);
        double from = length;
        double[] inOrder = [.. depths];
        for (int i = inOrder.Length - 1; i > 0; i--)
        {
            if (IsInFront((inOrder[i - 1] + inOrder[i]) / 2))
                break;
            from = inOrder[i - 1];
        }
        return from;
    }

    /// <summary>Where a vertical line square to the wall meets the surface: its distance behind at an elevation.</summary>
    private static double BehindAt(IReadOnlyList<SurfacePoint> points, double elevation)
    {
        for (int i = points.Count - 1; i > 0; i--)
        {
            SurfacePoint a = points[i - 1], b = points[i];
            if (elevation > b.Elevation)
                return b.Behind;
            if (elevation >= a.Elevation && b.Elevation > a.Elevation)
                return a.Behind + (b.Behind - a.Behind) * (elevation - a.Elevation) / (b.Elevation - a.Elevation);
        }
        return points[0].Behind;
    }

    private static void AddCrossing(SortedSet<double> depths, SurfacePoint a, SurfacePoint b, double behind, double elevation, double inward, double down, double length)
    {
        double dx = b.Behind - a.Behind, dz = b.Elevation - a.Elevation;
        double across = inward * dz + down * dx;
        if (across == 0)
            return;
        double x = a.Behind - behind, z = a.Elevation - elevation;
        double depth = (x * dz - z * dx) / across, share = -(x * down + z * inward) / across;
        if (depth > 0 && depth < length && share >= 0 && share <= 1)
            depths.Add(depth);
    }
}
