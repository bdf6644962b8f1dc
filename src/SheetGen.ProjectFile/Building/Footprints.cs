using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Building;

/// <summary>Plan polygons: whether they cross themselves, and convex pieces of them.</summary>
internal static class Footprints
{
    /// <summary>Indices of two sides (each from its corner to the next) that cross, touch or fold back; null for a simple polygon.</summary>
    public static (int First, int Second)? Crossing(IReadOnlyList<Vector2D> p)
    {
        int n = p.Count;
        for (int i = 0; i < n; i++)
        {
            Vector2D a = p[i], b = p[(i + 1) % n], c = p[(i + 2) % n];
            if (Math.Abs((b - a).CrossRight(c - b)) <= Flat(b - a, c - b) && (b - a).Dot(c - b) < 0)
                return (i, (i + 1) % n);
            for (int j = i + 2; j < n; j++)
            {
                bool neighbours = i == 0 && j == n - 1;
                if (!neighbours && Meet(a, b, p[j], p[(j + 1) % n]))
                    return (i, j);
            }
        }
        return null;
    }

    /// <summary>Area, never negative.</summary>
    public static double Area(IReadOnlyList<Vector2D> p) => Math.Abs(Signed(p));

    /// <summary>Convex pieces that together are the simple polygon: ears are cut off, then pieces are joined while they stay convex.</summary>
    public static IReadOnlyList<IReadOnlyList<Vector2D>> ConvexPieces(IReadOnlyList<Vector2D> polygon)
    {
        List<Vector2D> p = WithoutFlatCorners(Signed(polygon) < 0 ? [.. polygon.Reverse()] : [.. polygon]);
        if (IsConvex([.. Enumerable.Range(0, p.Count)], p))
            return [p];
        List<List<int>> pieces = [.. Triangles(p)];
        while (JoinTwo(pieces, p))
        {
        }
        return [.. pieces.Select(piece => (IReadOnlyList<Vector2D>)[.. piece.Select(i => p[i])])];
    }

    private static double Signed(IReadOnlyList<Vector2D> p)
    {
        double twice = 0;
        for (int i = 0; i < p.Count; i++)
            twice += (p[i] - p[0]).CrossRight(p[(i + 1) % p.Count] - p[0]);
        return twice / 2;
    }

    private static double Flat(Vector2D u, Vector2D v) => 1e-12 * u.Length * v.Length;

    private static List<Vector2D> WithoutFlatCorners(List<Vector2D> p)
    {
        var kept = new List<Vector2D>();
        for (int i = 0; i < p.Count; i++)
        {
            Vector2D u = p[i] - p[(i + p.Count - 1) % p.Count], v = p[(i + 1) % p.Count] - p[i];
            if (Math.Abs(u.CrossRight(v)) > Flat(u, v))
                kept.Add(p[i]);
        }
        return kept;
    }

    private static IEnumerable<List<int>> Triangles(List<Vector2D> p)
    {
        List<int> left = [.. Enumerable.Range(0, p.Count)];
        while (left.Count > 3)
        {
            int ear = Enumerable.Range(0, left.Count).First(k => IsEar(k, left, p));
            int n = left.Count;
            yield return [left[(ear + n - 1) % n], left[ear], left[(ear + 1) % n]];
            left.RemoveAt(ear);
        }
        yield return left;
    }

    private static bool IsEar(int k, List<int> left, List<Vector2D> p)
    {
        int n = left.Count;
        int ia = left[(k + n - 1) % n], ib = left[k], ic = left[(k + 1) % n];
        Vector2D a = p[ia], b = p[ib], c = p[ic];
        if (Turn(a, b, c) < 0)
            return false;
        return left.TrueForAll(i => i == ia || i == ib || i == ic || Turn(a, b, p[i]) < 0 || Turn(b, c, p[i]) < 0 || Turn(c, a, p[i]) < 0);
    }

    /// <summary>Joins the first two pieces with a common side whose union is convex; false where there are none.</summary>
    private static bool JoinTwo(List<List<int>> pieces, List<Vector2D> p)
    {
        for (int i = 0; i < pieces.Count; i++)
        {
            for (int j = i + 1; j < pieces.Count; j++)
            {
                if (Union(pieces[i], pieces[j]) is not { } union || !IsConvex(union, p))
                    continue;
                pieces[i] = union;
                pieces.RemoveAt(j);
                return true;
            }
        }
        return false;
    }

    private static List<int>? Union(List<int> a, List<int> b)
    {
        for (int i = 0; i < a.Count; i++)
        {
            int from = a[i], to = a[(i + 1) % a.Count];
            int j = b.IndexOf(to);
            if (j < 0 || b[(j + 1) % b.Count] != from)
                continue;
            return [.. Enumerable.Range(1, a.Count).Select(k => a[(i + k) % a.Count]), .. Enumerable.Range(2, b.Count - 2).Select(k => b[(j + k) % b.Count])];
        }
        return null;
    }

    private static bool IsConvex(List<int> corners, List<Vector2D> p)
    {
        int n = corners.Count;
        return Enumerable.Range(0, n).All(i =>
        {
            Vector2D a = p[corners[i]], b = p[corners[(i + 1) % n]], c = p[corners[(i + 2) % n]];
            return Turn(a, b, c) >= -Flat(b - a, c - b);
        });
    }

    private static double Turn(Vector2D a, Vector2D b, Vector2D c) => (b - a).CrossRight(c - b);

    private static bool Meet(Vector2D a, Vector2D b, Vector2D c, Vector2D d)
    {
        double u = Side(a, b, c), v = Side(a, b, d), w = Side(c, d, a), x = Side(c, d, b);
        if (u * v < 0 && w * x < 0)
            return true;
        return (u == 0 && Between(a, b, c)) || (v == 0 && Between(a, b, d)) || (w == 0 && Between(c, d, a)) || (x == 0 && Between(c, d, b));
    }

    private static double Side(Vector2D a, Vector2D b, Vector2D c)
    {
        double cross = (b - a).CrossRight(c - a);
        return Math.Abs(cross) <= Flat(b - a, c - a) ? 0 : cross;
    }

    private static bool Between(Vector2D a, Vector2D b, Vector2D p) => (p - a).Dot(p - b) <= 0;
}
