using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Geometry;

/// <summary>Clear distances by dense sampling that closes in on the best sample: slow, and written without the formulas under test.</summary>
internal static class SlowTwin
{
    public static double Between(Hole a, Hole b)
    {
        double Clear(double u, double v) => (a.At(u) - b.At(v)).Length - a.RadiusAt(u) - b.RadiusAt(v);
        double OverSecond(double u) => Least(v => Clear(u, v), b.Length, 40);
        return Least(OverSecond, a.Length, 40);
    }

    public static double ToSolid(Hole hole, Func<Vector3D, double> signedDistance) =>
        Least(u => signedDistance(hole.At(u)) - hole.RadiusAt(u), hole.Length, 200);

    /// <summary>Least value of a convex (or quasi-convex) function on 0 to the end, by samples around the best of the last round.</summary>
    public static double Least(Func<double, double> value, double end, int samples)
    {
        double low = 0, high = end, best = Math.Min(value(0), value(end));
        for (int round = 0; round < 60 && high - low > 1e-10; round++)
        {
            double step = (high - low) / samples;
            int at = 0;
            double least = double.PositiveInfinity;
            for (int i = 0; i <= samples; i++)
            {
                double here = value(low + step * i);
                if (here < least)
                {
                    least = here;
                    at = i;
                }
            }
            best = Math.Min(best, least);
            double middle = low + step * at;
            high = Math.Min(end, middle + step);
            low = Math.Max(0, middle - step);
        }
        return best;
    }
}
