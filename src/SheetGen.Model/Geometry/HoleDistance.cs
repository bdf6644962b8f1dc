namespace SheetGen.Model.Geometry;

/// <summary>Clear distances of holes, exact: closed forms, or the minimum of a convex function of one depth.</summary>
public static class HoleDistance
{
    /// <summary>
    /// Clear distance of two holes: the least of |p(u) - q(v)| - r1(u) - r2(v) over both depths. Where it is taken along a whole stretch
    /// (parallel holes), one place of it is given.
    /// </summary>
    public static Nearest Between(in Hole a, in Hole b)
    {
        double clear = TaperedPair.Least(a, b, out double u, out double v);
        return new Nearest(clear, a.At(u), b.At(v), u, v);
    }

    /// <summary>True where the clear distance of two holes is under the required one; quick for holes that are far apart.</summary>
    public static bool CloserThan(in Hole a, in Hole b, double required)
    {
        double reach = a.Radius + a.Drift * a.Length + b.Radius + b.Drift * b.Length + required;
        if (reach >= 0)
        {
            Vector3D x = b.Head - a.Head;
            double square = x.Dot(x), far = reach + a.Length + b.Length;
            if (square > far * far)
                return false;
            double xa = x.Dot(a.Direction), xb = x.Dot(b.Direction), cosine = a.Direction.Dot(b.Direction);
            if (IsBeside(square, xa, xb, cosine, b.Length, reach))
                return false;
            if (Decide(a, b, x, xa, xb, cosine, reach, required) is { } closer)
                return closer;
        }
        return TaperedPair.Least(a, b, out _, out _) < required;
    }

    /// <param name="clear">The clear distance where it is under the required one; else plus infinity.</param>
    /// <inheritdoc cref="CloserThan(in Hole, in Hole, double)"/>
    public static bool CloserThan(in Hole a, in Hole b, double required, out double clear)
    {
        clear = IsFar(a, b, required) ? double.PositiveInfinity : TaperedPair.Least(a, b, out _, out _);
        if (clear < required)
            return true;
        clear = double.PositiveInfinity;
        return false;
    }

    /// <summary>
    /// Clear distance of a hole and a convex solid: the least of sd(p(u)) - r(u) over the depth, with sd the signed distance.
    /// For a surface (boundary, face) sd is never negative, so a hole whose axis crosses it has minus the radius at the crossing:
    /// negative, as for every hole that touches.
    /// </summary>
    public static Nearest ToSolid(in Hole hole, Solid solid)
    {
        double clear = LeastDepth(hole, solid, double.NaN, out double depth);
        Vector3D onAxis = hole.At(depth);
        return new Nearest(clear, onAxis, solid.NearestPoint(onAxis), depth, double.NaN);
    }

    /// <summary>True where the clear distance of a hole and a solid is under the required one; quick for a solid that is far away.</summary>
    public static bool CloserThan(in Hole hole, Solid solid, double required) =>
        LeastDepth(hole, solid, required, out _) < required;

    private static double LeastDepth(in Hole hole, Solid solid, double decide, out double depth) =>
        solid is CapsuleSolid pipe
            ? TaperedPair.Least(hole, pipe.AsHole, out depth, out _)
            : ConvexDescent.Least(hole, solid, decide, out depth);

    private static bool IsFar(in Hole a, in Hole b, double required) =>
        IsBeside(a, b, a.Radius + a.Drift * a.Length + b.Radius + b.Drift * b.Length + required);

    /// <summary>True where the axis of b stays farther than the reach from the straight line through a, or both lie far apart.</summary>
    private static bool IsBeside(in Hole a, in Hole b, double reach)
    {
        if (reach < 0)
            return false;
        Vector3D x = b.Head - a.Head;
        double square = x.Dot(x), far = reach + a.Length + b.Length;
        if (square > far * far)
            return true;
        return IsBeside(square, x.Dot(a.Direction), x.Dot(b.Direction), a.Direction.Dot(b.Direction), b.Length, reach);
    }

    private static bool IsBeside(double square, double xa, double xb, double cosine, double length, double reach)
    {
        double across = square - xa * xa;
        double slope = length * (xb - cosine * xa);
        double run = length * length * (1 - cosine * cosine);
        double t = run > 0 ? Math.Clamp(-slope / run, 0, 1) : 0;
        double least = across + t * (2 * slope + t * run);
        double rounding = 1e-13 * (square + length * length);
        return least > reach * reach + rounding;
    }

    /// <summary>
    /// Whether two holes are closer than required by the least distance of their axes (by clamping: Ericson, Real-Time Collision Detection, 5.1.9):
    /// no where that is over the reach at their widest, yes where they are too close there already; null between, for nearly parallel ones, and
    /// where rounding could decide: there the closed form must.
    /// </summary>
    private static bool? Decide(in Hole a, in Hole b, Vector3D x, double xa, double xb, double cosine, double reach, double required)
    {
        const double NearlyParallel = 1e-4, Narrow = 1e-7;
        double sine2 = 1 - cosine * cosine;
        if (sine2 < NearlyParallel)
            return null;
        double u = Math.Clamp((xa - cosine * xb) / sine2, 0, a.Length), v = cosine * u - xb;
        if (v < 0)
        {
            v = 0;
            u = Math.Clamp(xa, 0, a.Length);
        }
        else if (v > b.Length)
        {
            v = b.Length;
            u = Math.Clamp(xa + cosine * v, 0, a.Length);
        }
        Vector3D between = x + b.Direction * v - a.Direction * u;
        double square = between.Dot(between), narrow = Narrow * (1 + reach * reach);
        if (square > reach * reach + narrow)
            return false;
        double here = a.RadiusAt(u) + b.RadiusAt(v) + required;
        return here > 0 && square < here * here - narrow ? true : null;
    }
}
