namespace SheetGen.Model.Geometry;

/// <summary>
/// The closed form of the clear distance of two tapered holes. |p(u) - q(v)| - r1(u) - r2(v) is convex in (u, v). Where both depths are
/// inside their lengths the unit vector n from q to p has n.d1 = drift1 and n.d2 = -drift2; its third part, along d1 x d2, follows from its
/// length. Else the least value lies on an edge (an end of one hole) that this point is beyond; there it is that of a point and a taper.
/// (With no drift this is the distance of two segments by clamping: Ericson, Real-Time Collision Detection, 5.1.9.)
/// </summary>
internal static class TaperedPair
{
    /// <summary>Holes that turn less than this against each other (the square of the sine) are also measured at all four ends.</summary>
    private const double NearlyParallel = 1e-8;

    public static double Least(in Hole a, in Hole b, out double u, out double v)
    {
        Vector3D w = a.Head - b.Head;
        double cosine = a.Direction.Dot(b.Direction);
        // The difference of nearly equal vectors is exact, so the cross product keeps its digits for nearly parallel holes.
        Vector3D turn = cosine >= 0 ? b.Direction - a.Direction : b.Direction + a.Direction;
        Vector3D common = a.Direction.Cross(turn);
        double sine2 = common.Dot(common);
        double tilt2 = a.Drift * a.Drift + b.Drift * b.Drift + 2 * a.Drift * b.Drift * cosine;
        var best = new Best(double.PositiveInfinity, 0, 0);
        bool all = true;
        double wantU = 0, wantV = 0;
        if (tilt2 < sine2)
        {
            double distance = Math.Abs(w.Dot(common)) / Math.Sqrt(sine2 - tilt2);
            wantU = (distance * (a.Drift + cosine * b.Drift) - common.Dot(w.Cross(b.Direction))) / sine2;
            wantV = (distance * (b.Drift + cosine * a.Drift) - common.Dot(w.Cross(a.Direction))) / sine2;
            all = sine2 < NearlyParallel;
            bool inside = wantU >= 0 && wantU <= a.Length && wantV >= 0 && wantV <= b.Length;
            if (inside && !all)
            {
                u = wantU;
                v = wantV;
                return (w + a.Direction * u - b.Direction * v).Length - a.RadiusAt(u) - b.RadiusAt(v);
            }
            if (all)
                best = AtFirst(a, b, w, Math.Clamp(wantU, 0, a.Length));
        }
        if (all || wantU < 0)
            best = Lesser(best, AtFirst(a, b, w, 0));
        if (all || wantU > a.Length)
            best = Lesser(best, AtFirst(a, b, w, a.Length));
        if (all || wantV < 0)
            best = Lesser(best, AtSecond(a, b, w, 0));
        if (all || wantV > b.Length)
            best = Lesser(best, AtSecond(a, b, w, b.Length));
        u = best.U;
        v = best.V;
        return best.Clear;
    }

    private static Best Lesser(Best x, Best y) => y.Clear < x.Clear ? y : x;

    private static Best AtFirst(in Hole a, in Hole b, Vector3D w, double u)
    {
        double reach = OfPoint(w + a.Direction * u, b, out double v);
        return new Best(reach - a.RadiusAt(u), u, v);
    }

    private static Best AtSecond(in Hole a, in Hole b, Vector3D w, double v)
    {
        double reach = OfPoint(b.Direction * v - w, a, out double u);
        return new Best(reach - b.RadiusAt(v), u, v);
    }

    /// <summary>The least of |p - q(t)| - r(t) for a point p relative to the head.</summary>
    private static double OfPoint(Vector3D p, in Hole hole, out double t)
    {
        t = hole.Length;
        if (hole.Drift < 1)
        {
            double along = p.Dot(hole.Direction);
            double lead = hole.Drift == 0
                ? 0
                : (p - hole.Direction * along).Length * hole.Drift / Math.Sqrt(1 - hole.Drift * hole.Drift);
            t = Math.Clamp(along + lead, 0, hole.Length);
        }
        return (p - hole.Direction * t).Length - hole.RadiusAt(t);
    }

    private readonly record struct Best(double Clear, double U, double V);
}
