namespace SheetGen.Drawing.Primitives;

/// <summary>Curves as short straight pieces, and hatches as lines, for outputs that have only these.</summary>
public static class Flatten
{
    /// <summary>The points of a run of lines and arcs; closed runs come back to their first point.</summary>
    public static IReadOnlyList<Point2> Path(IReadOnlyList<Vertex> vertices, bool closed)
    {
        var points = new List<Point2> { vertices[0].Point };
        int count = closed ? vertices.Count : vertices.Count - 1;
        for (int i = 0; i < count; i++)
        {
            Point2 to = vertices[(i + 1) % vertices.Count].Point;
            if (vertices[i].Bulge != 0)
                points.AddRange(Bend(vertices[i].Point, to, vertices[i].Bulge));
            points.Add(to);
        }
        return points;
    }

    public static IReadOnlyList<Point2> Arc(Arc arc)
    {
        double sweep = arc.End - arc.Start;
        while (sweep <= 0)
            sweep += 360;
        int steps = Math.Max(2, (int)Math.Ceiling(sweep / 6));
        return [.. Enumerable.Range(0, steps + 1).Select(i =>
            arc.Center + new Point2(arc.Radius, 0).Turned((arc.Start + sweep * i / steps) * Math.PI / 180))];
    }

    private static IEnumerable<Point2> Bend(Point2 from, Point2 to, double bulge)
    {
        double angle = 4 * Math.Atan(bulge);
        Point2 chord = to - from;
        Point2 center = (from + to) * 0.5 + new Point2(-chord.Y, chord.X) * (1 / (2 * Math.Tan(angle / 2)));
        int steps = Math.Max(2, (int)Math.Ceiling(Math.Abs(angle) / 0.05));
        for (int i = 1; i < steps; i++)
            yield return center + (from - center).Turned(angle * i / steps);
    }

    /// <summary>The lines of a hatched fill.</summary>
    public static IEnumerable<(Point2 From, Point2 To)> Hatch(Fill fill)
    {
        double turn = fill.Angle * Math.PI / 180;
        Point2[] outline = [.. Path(fill.Outline, true).Select(p => p.Turned(-turn))];
        double low = outline.Min(p => p.Y), high = outline.Max(p => p.Y);
        for (double y = Math.Ceiling(low / fill.Spacing) * fill.Spacing + fill.Spacing / 3; y < high; y += fill.Spacing)
        {
            var cuts = new List<double>();
            for (int i = 0; i + 1 < outline.Length; i++)
            {
                Point2 a = outline[i], b = outline[i + 1];
                if (a.Y > y != b.Y > y)
                    cuts.Add(a.X + (b.X - a.X) * (y - a.Y) / (b.Y - a.Y));
            }
            cuts.Sort();
            for (int i = 0; i + 1 < cuts.Count; i += 2)
                yield return (new Point2(cuts[i], y).Turned(turn), new Point2(cuts[i + 1], y).Turned(turn));
        }
    }
}
