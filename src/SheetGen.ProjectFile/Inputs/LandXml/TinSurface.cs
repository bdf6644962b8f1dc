using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>A surface of triangles (surfType TIN), plan coordinates relative to an origin, all in project units.</summary>
internal sealed class TinSurface
{
    private readonly (Vector2D P, double Z)[] _corners;

    private TinSurface((Vector2D P, double Z)[] corners) => _corners = corners;

    /// <summary>Number of triangles.</summary>
    public int Count => _corners.Length / 3;

    /// <summary>The triangles that are shown; null with the reason where they cannot be read.</summary>
    /// <param name="factor">Project units in one unit of the file.</param>
    /// <param name="origin">What plan coordinates are relative to, in project units.</param>
    public static TinSurface? Of(XmlPart surface, double factor, Vector2D origin, out string why)
    {
        why = "";
        var points = new Dictionary<string, (Vector2D, double)>(StringComparer.Ordinal);
        var corners = new List<(Vector2D, double)>();
        foreach (XmlPart definition in surface.All("Definition"))
        {
            foreach (XmlPart point in definition.All("Pnts").SelectMany(p => p.All("P")))
            {
                if (point.Attribute("id") is not { } id || point.Numbers() is not { Length: 3 } place)
                    return Bad("a point of it has no name, or is not northing, easting and elevation", out why);
                (Vector2D, double) at = (new Vector2D(place[0] * factor, place[1] * factor) - origin, place[2] * factor);
                if (!points.TryAdd(id, at) && points[id] != at)
                    return Bad($"two points of it have the name {Tree.Shown.Short(id)}", out why);
            }
            foreach (XmlPart face in definition.All("Faces").SelectMany(f => f.All("F")).Where(f => f.Attribute("i") != "1"))
            {
                string[] names = face.Words();
                if (names.Length != 3 || !names.All(points.ContainsKey))
                    return Bad("a face of it names no three points", out why);
                corners.AddRange(names.Select(n => points[n]));
            }
        }
        return corners.Count == 0 ? Bad("it has no triangles", out why) : new TinSurface([.. corners]);
    }

    private static TinSurface? Bad(string reason, out string why)
    {
        why = reason;
        return null;
    }

    /// <summary>The triangles that come near to some points.</summary>
    /// <param name="reach">How near.</param>
    public TinSurface Around(IReadOnlyList<Vector2D> points, double reach)
    {
        double n0 = points.Min(p => p.N) - reach, n1 = points.Max(p => p.N) + reach, e0 = points.Min(p => p.E) - reach, e1 = points.Max(p => p.E) + reach;
        var kept = new List<(Vector2D, double)>();
        for (int i = 0; i < _corners.Length; i += 3)
        {
            (Vector2D a, Vector2D b, Vector2D c) = (_corners[i].P, _corners[i + 1].P, _corners[i + 2].P);
            if (Math.Max(a.N, Math.Max(b.N, c.N)) >= n0 && Math.Min(a.N, Math.Min(b.N, c.N)) <= n1 && Math.Max(a.E, Math.Max(b.E, c.E)) >= e0 && Math.Min(a.E, Math.Min(b.E, c.E)) <= e1)
                kept.AddRange([_corners[i], _corners[i + 1], _corners[i + 2]]);
        }
        return new TinSurface([.. kept]);
    }

    /// <summary>Where the surface goes over a straight line, as pieces of it in order, each with the elevations of its ends; distances count from a.</summary>
    public IReadOnlyList<(double From, double To, double FromZ, double ToZ)> Over(Vector2D a, Vector2D b)
    {
        const double Least = 1e-9;
        Vector2D along = b - a;
        double length = along.Length;
        var pieces = new List<(double From, double To, double FromZ, double ToZ)>();
        for (int i = 0; i < _corners.Length; i += 3)
        {
            (double from, double to) = (0, 1);
            double area = Cross(_corners[i + 1].P - _corners[i].P, _corners[i + 2].P - _corners[i].P);
            if (Math.Abs(area) < Least * Least)
                continue;
            for (int k = 0; k < 3 && from <= to; k++)
            {
                Vector2D p = _corners[i + k].P, edge = _corners[i + (k + 1) % 3].P - p;
                // Positive on the triangle's side of the edge; a hair outside counts as on it.
                double at = Cross(edge, a - p) * Math.Sign(area), end = Cross(edge, b - p) * Math.Sign(area), hair = 1e-9 * edge.Length;
                if (at < -hair && end < -hair)
                    from = 2;
                else if (at < -hair)
                    from = Math.Max(from, at / (at - end));
                else if (end < -hair)
                    to = Math.Min(to, at / (at - end));
            }
            if (to - from > Least / Math.Max(length, Least))
                pieces.Add((from * length, to * length, Level(i, a + along * from, area), Level(i, a + along * to, area)));
        }
        return [.. pieces.OrderBy(p => p.From).ThenBy(p => p.To)];
    }

    private double Level(int i, Vector2D p, double area)
    {
        ((Vector2D a, double za), (Vector2D b, double zb), (Vector2D c, double zc)) = (_corners[i], _corners[i + 1], _corners[i + 2]);
        double wb = Cross(p - a, c - a) / area, wc = Cross(b - a, p - a) / area;
        return za + wb * (zb - za) + wc * (zc - za);
    }

    private static double Cross(Vector2D a, Vector2D b) => a.N * b.E - a.E * b.N;
}
