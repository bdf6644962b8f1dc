using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Placing;

/// <summary>Distances in space by the plainest means, for tests that must not ask the program.</summary>
internal static class Small3
{
    /// <summary>Least value along a line of a function that is convex there, by narrowing down.</summary>
    public static double LeastAlong(Vector3D from, Vector3D to, Func<Vector3D, double> distance)
    {
        double low = 0, high = 1;
        for (int i = 0; i < 90; i++)
        {
            double third = (high - low) / 3;
            if (distance(from + (to - from) * (low + third)) < distance(from + (to - from) * (high - third)))
                high -= third;
            else
                low += third;
        }
        return distance(from + (to - from) * ((low + high) / 2));
    }

    public static double ToSegment(Vector3D p, Vector3D a, Vector3D b)
    {
        Vector3D d = b - a;
        double length2 = d.Dot(d), t = length2 == 0 ? 0 : Math.Clamp((p - a).Dot(d) / length2, 0, 1);
        return (p - a - d * t).Length;
    }

    /// <summary>Least distance of two segments: at an end of one of them, or between inner points.</summary>
    public static double Between(Vector3D a, Vector3D b, Vector3D c, Vector3D d)
    {
        double least = Math.Min(Math.Min(ToSegment(a, c, d), ToSegment(b, c, d)), Math.Min(ToSegment(c, a, b), ToSegment(d, a, b)));
        Vector3D u = b - a, v = d - c, w = a - c, across = u.Cross(v);
        double square = across.Dot(across);
        if (square < 1e-12)
            return least;
        // The foot points on both lines by Cramer's rule.
        double s = v.Cross(w).Dot(across) / square, t = u.Cross(w).Dot(across) / square;
        return s is > 0 and < 1 && t is > 0 and < 1 ? Math.Min(least, Math.Abs(w.Dot(across)) / Math.Sqrt(square)) : least;
    }

    /// <summary>Distance of a point from an upright cylinder; 0 inside.</summary>
    public static double ToShaft(Vector3D p, Vector3D top, Vector3D bottom, double radius)
    {
        double beside = Math.Max(0, (p.Plan - top.Plan).Length - radius), beyond = Math.Max(0, Math.Max(p.Z - top.Z, bottom.Z - p.Z));
        return Math.Sqrt(beside * beside + beyond * beyond);
    }

    /// <summary>Distance of a point from a flat convex outline and what is inside it.</summary>
    public static double ToPanel(Vector3D p, Vector3D[] outline)
    {
        if (outline.Length < 3)
            return double.PositiveInfinity;
        var normal = new Vector3D(0, 0, 0);
        for (int i = 1; i + 1 < outline.Length; i++)
            normal += (outline[i] - outline[0]).Cross(outline[i + 1] - outline[0]);
        double least = double.PositiveInfinity;
        bool isInside = normal.Length > 1e-9;
        for (int i = 0; i < outline.Length; i++)
        {
            Vector3D a = outline[i], b = outline[(i + 1) % outline.Length];
            isInside = isInside && (b - a).Cross(p - a).Dot(normal) >= 0;
            least = Math.Min(least, ToSegment(p, a, b));
        }
        return isInside ? Math.Abs((p - outline[0]).Dot(normal)) / normal.Length : least;
    }

    /// <summary>The part of a convex outline in a plane where a linear function is not negative.</summary>
    public static List<Vector2D> Cut(List<Vector2D> shape, Func<Vector2D, double> inside)
    {
        var kept = new List<Vector2D>();
        for (int i = 0; i < shape.Count; i++)
        {
            Vector2D a = shape[i], b = shape[(i + 1) % shape.Count];
            (double fa, double fb) = (inside(a), inside(b));
            if (fa >= 0)
                kept.Add(a);
            if (fa > 0 != fb > 0 && fa != fb && fa * fb < 0)
                kept.Add(a + (b - a) * (fa / (fa - fb)));
        }
        return kept;
    }
}
