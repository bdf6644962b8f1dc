namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Closed courses as polygons that never lie inside of them.</summary>
internal static class SafeOutline
{
    /// <summary>
    /// Corners around the course, counter-clockwise: where a curve bulges outward its tangents take its place, where it bulges inward its
    /// chords do; both lie outside of the body.
    /// </summary>
    public static List<Point3> Of(IReadOnlyList<Stroke> strokes)
    {
        List<Stroke> course = [.. strokes];
        if (Area([.. course.SelectMany(s => s.Knots.SkipLast(1)).Select(k => k.At)]) < 0)
            course = [.. course.AsEnumerable().Reverse().Select(s => s.Reversed)];
        var corners = new List<Point3>();
        foreach (Stroke stroke in course)
        {
            bool wasOutward = false;
            Add(stroke.Start);
            for (int i = 0; i + 1 < stroke.Knots.Count; i++)
            {
                Knot a = stroke.Knots[i], b = stroke.Knots[i + 1];
                bool outward = stroke.IsCurved && Meet(a, b) is not null;
                if (i > 0 && !(outward && wasOutward))
                    Add(a.At);
                if (outward)
                    Add(Meet(a, b)!.Value);
                wasOutward = outward;
            }
            Add(stroke.End);
        }
        while (corners.Count > 1 && Near(corners[0], corners[^1]))
            corners.RemoveAt(corners.Count - 1);
        return corners;

        void Add(Point3 p)
        {
            if (corners.Count == 0 || !Near(corners[^1], p))
                corners.Add(p);
        }
    }

    /// <summary>Twice the signed area over two: positive counter-clockwise.</summary>
    public static double Area(IReadOnlyList<Point3> p)
    {
        double twice = 0;
        for (int i = 0; i < p.Count; i++)
            twice += (p[i] - p[0]).CrossPlan(p[(i + 1) % p.Count] - p[0]);
        return twice / 2;
    }

    public static bool Contains(IReadOnlyList<Point3> polygon, Point3 p)
    {
        bool inside = false;
        for (int i = 0, j = polygon.Count - 1; i < polygon.Count; j = i++)
        {
            Point3 a = polygon[i], b = polygon[j];
            if (a.Y > p.Y != b.Y > p.Y && p.X < (b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y) + a.X)
                inside = !inside;
        }
        return inside;
    }

    /// <summary>The convex polygon around points in plan, counter-clockwise (Andrew's chain).</summary>
    public static List<Point3> Hull(IEnumerable<Point3> points)
    {
        Point3[] sorted = [.. points.Select(p => p with { Z = 0 }).Distinct().OrderBy(p => p.X).ThenBy(p => p.Y)];
        if (sorted.Length < 3)
            return [.. sorted];
        var hull = new List<Point3>();
        foreach (IEnumerable<Point3> side in new[] { sorted, sorted.AsEnumerable().Reverse() })
        {
            int first = hull.Count;
            foreach (Point3 p in side)
            {
                while (hull.Count >= first + 2 && (hull[^1] - hull[^2]).CrossPlan(p - hull[^1]) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }
            hull.RemoveAt(hull.Count - 1);
        }
        return hull;
    }

    /// <summary>The least circle around points in plan (Welzl's rule, points in their order).</summary>
    public static (Point3 Center, double Radius) Circle(IReadOnlyList<Point3> points)
    {
        List<Point3> p = Hull(points);
        (Point3 C, double R) circle = (p[0], 0);
        for (int i = 1; i < p.Count; i++)
        {
            if (In(circle, p[i]))
                continue;
            circle = (p[i], 0);
            for (int j = 0; j < i; j++)
            {
                if (In(circle, p[j]))
                    continue;
                circle = ((p[i] + p[j]) * 0.5, (p[i] - p[j]).PlanLength / 2);
                for (int k = 0; k < j; k++)
                {
                    if (!In(circle, p[k]))
                        circle = Around(p[i], p[j], p[k]);
                }
            }
        }
        return circle;
    }

    private static bool In((Point3 C, double R) circle, Point3 p) => (p - circle.C).PlanLength <= circle.R * (1 + 1e-12) + 1e-12;

    private static (Point3, double) Around(Point3 a, Point3 b, Point3 c)
    {
        Point3 u = b - a, v = c - a;
        double d = 2 * u.CrossPlan(v), uu = u.X * u.X + u.Y * u.Y, vv = v.X * v.X + v.Y * v.Y;
        var offset = new Point3((v.Y * uu - u.Y * vv) / d, (u.X * vv - v.X * uu) / d, 0);
        return (a + offset, offset.PlanLength);
    }

    /// <summary>Where the tangents of two knots meet between them, where the course turns left (bulges outward); else null.</summary>
    private static Point3? Meet(Knot a, Knot b)
    {
        double cross = a.Along.CrossPlan(b.Along);
        if (cross <= 1e-12 * a.Along.PlanLength * b.Along.PlanLength)
            return null;
        Point3 chord = b.At - a.At;
        double t = chord.CrossPlan(b.Along) / cross, u = a.Along.CrossPlan(chord) / cross;
        return t <= 0 || u <= 0 ? null : (a.At + a.Along * t) with { Z = a.At.Z };
    }

    private static bool Near(Point3 a, Point3 b) => (a - b).PlanLength < 1e-9;
}
