namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>The outline in plan of a body of faces, where it is not convex.</summary>
internal static class MeshOutline
{
    /// <summary>Comparisons of edges that are made at most.</summary>
    private const long MostLooks = 4_000_000;

    private const double Near = 1e-6;

    /// <summary>
    /// The outline, counter-clockwise, that holds all of the body; null where it is convex, where the faces do not tell it, or where something
    /// would stand out of it. It is the rim of the largest patch of faces that are not upright and do not lie over each other.
    /// </summary>
    public static List<Point3>? Of(Figure body)
    {
        (Point3[] corners, int[][] faces) = Welded(body);
        double size = corners.Max(c => Math.Max(Math.Abs(c.X - corners[0].X), Math.Abs(c.Y - corners[0].Y)));
        double tolerance = Near * Math.Max(1, size);
        double[] areas = [.. faces.Select(f => Math.Abs(SafeOutline.Area([.. f.Select(v => corners[v])])))];
        int[] lying = [.. Enumerable.Range(0, faces.Length).Where(i => areas[i] > tolerance * tolerance)];
        List<Point3>? best = null;
        foreach (int[] patch in Patches(faces, lying))
        {
            if (Rim(faces, patch) is { } rim && SafeOutline.Area([.. rim.Select(v => corners[v] with { Z = 0 })]) is var area
                && Math.Abs(Math.Abs(area) - patch.Sum(i => areas[i])) < 1e-6 * Math.Abs(area) && (best is null || Math.Abs(area) > Math.Abs(SafeOutline.Area(best))))
                best = [.. (area > 0 ? rim : rim.AsEnumerable().Reverse()).Select(v => corners[v] with { Z = 0 })];
        }
        if (best is null)
            return null;
        best = Straightened(best, tolerance);
        double hull = SafeOutline.Area(SafeOutline.Hull(corners)), own = SafeOutline.Area(best);
        return own > hull * (1 - 1e-9) || !Holds(best, corners, faces, tolerance) ? null : best;
    }

    /// <summary>Corners that lie on one place are one.</summary>
    private static (Point3[] Corners, int[][] Faces) Welded(Figure body)
    {
        var places = new Dictionary<(long, long, long), int>();
        var corners = new List<Point3>();
        int[] at = [.. body.Corners.Select(p =>
        {
            var key = ((long)Math.Round(p.X * 1e5), (long)Math.Round(p.Y * 1e5), (long)Math.Round(p.Z * 1e5));
            if (!places.TryGetValue(key, out int known))
            {
                places[key] = known = corners.Count;
                corners.Add(p);
            }
            return known;
        })];
        return ([.. corners], [.. body.Faces.Select(f => f.Select(v => at[v]).Distinct().ToArray()).Where(f => f.Length > 2)]);
    }

    private static IEnumerable<(int A, int B)> Edges(int[] face) => face.Select((v, i) => (v, face[(i + 1) % face.Length])).Select(e => e.v < e.Item2 ? e : (e.Item2, e.v));

    /// <summary>Faces that hang together by edges.</summary>
    private static IEnumerable<int[]> Patches(int[][] faces, int[] of)
    {
        var group = of.ToDictionary(i => i, i => i);
        int Root(int i) => group[i] == i ? i : group[i] = Root(group[i]);
        var first = new Dictionary<(int, int), int>();
        foreach (int i in of)
        {
            foreach ((int, int) edge in Edges(faces[i]))
            {
                if (first.TryGetValue(edge, out int other))
                    group[Root(i)] = Root(other);
                else
                    first[edge] = i;
            }
        }
        return of.GroupBy(Root).Select(g => g.ToArray());
    }

    /// <summary>The edges of one face only as one closed course; null where they are not one.</summary>
    private static List<int>? Rim(int[][] faces, int[] patch)
    {
        (int A, int B)[] rim = [.. patch.SelectMany(i => Edges(faces[i])).GroupBy(e => e).Where(g => g.Count() == 1).Select(g => g.Key)];
        ILookup<int, int> next = rim.Concat(rim.Select(e => (A: e.B, B: e.A))).ToLookup(e => e.A, e => e.B);
        if (rim.Length < 3 || next.Any(n => n.Count() != 2))
            return null;
        var course = new List<int> { rim[0].A, rim[0].B };
        while (course.Count <= rim.Length)
        {
            int to = next[course[^1]].First(v => v != course[^2]);
            if (to == course[0])
                break;
            course.Add(to);
        }
        return course.Count == rim.Length ? course : null;
    }

    private static List<Point3> Straightened(List<Point3> ring, double tolerance)
    {
        List<Point3> kept = [.. ring];
        for (int i = kept.Count - 1; i >= 0 && kept.Count > 3; i--)
        {
            if (Away(kept[i], kept[(i + kept.Count - 1) % kept.Count], kept[(i + 1) % kept.Count]) < tolerance / 1000)
                kept.RemoveAt(i);
        }
        return kept;
    }

    /// <summary>True where no corner lies outside of the ring and no edge of a face crosses it.</summary>
    private static bool Holds(List<Point3> ring, Point3[] corners, int[][] faces, double tolerance)
    {
        (int A, int B)[] edges = [.. faces.SelectMany(Edges).Distinct()];
        if ((long)(edges.Length * 2 + corners.Length) * ring.Count > MostLooks)
            return false;
        bool In(Point3 p) => SafeOutline.Contains(ring, p) || Enumerable.Range(0, ring.Count).Any(i => Away(p, ring[i], ring[(i + 1) % ring.Count]) <= tolerance);
        return corners.All(In) && edges.All(e => In((corners[e.A] + corners[e.B]) * 0.5) && !Enumerable.Range(0, ring.Count).Any(i => Crosses(corners[e.A], corners[e.B], ring[i], ring[(i + 1) % ring.Count], tolerance)));
    }

    /// <summary>Distance of a point from the straight piece a to b in plan.</summary>
    private static double Away(Point3 p, Point3 a, Point3 b)
    {
        Point3 along = (b - a) with { Z = 0 }, to = (p - a) with { Z = 0 };
        double square = along.X * along.X + along.Y * along.Y;
        double t = square == 0 ? 0 : Math.Clamp((to.X * along.X + to.Y * along.Y) / square, 0, 1);
        return (to - along * t).PlanLength;
    }

    /// <summary>True where two straight pieces cross in their insides by more than the tolerance on both sides.</summary>
    private static bool Crosses(Point3 a, Point3 b, Point3 c, Point3 d, double tolerance)
    {
        double Side(Point3 p, Point3 q, Point3 r) => (q - p).CrossPlan(r - p) / Math.Max(1e-12, (q - p).PlanLength);
        double s1 = Side(a, b, c), s2 = Side(a, b, d), s3 = Side(c, d, a), s4 = Side(c, d, b);
        return Math.Min(Math.Abs(s1), Math.Abs(s2)) > tolerance && Math.Min(Math.Abs(s3), Math.Abs(s4)) > tolerance && s1 > 0 != s2 > 0 && s3 > 0 != s4 > 0;
    }
}
