using SheetGen.Dxf;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>The outer outlines of a hatch; holes in it are filled, so that the body is never smaller than drawn.</summary>
internal static class HatchFigures
{
    public static (IReadOnlyList<Figure> Figures, string? Why) Of(DxfRecord hatch, Placing own, Source source, double error)
    {
        var reader = new Groups(hatch.Groups);
        if (!reader.SkipTo(91))
            return ([], "the hatch has no outline");
        int count = (int)reader.Take();
        double z = hatch.Real(30);
        var outlines = new List<IReadOnlyList<Stroke>>();
        for (int i = 0; i < count && reader.SkipTo(92); i++)
        {
            int flags = (int)reader.Take();
            List<Stroke>? path = (flags & 2) != 0 ? Polyline(reader, z, error) : Edges(reader, z, error);
            if (path is null)
                return ([], "an outline of the hatch has figures that do not fit together");
            if (path.Count > 0)
                outlines.Add([.. path.Select(s => s.Through(own))]);
        }
        List<Point3>[] rings = [.. outlines.Select(o => o.SelectMany(s => s.Knots.SkipLast(1)).Select(k => k.At).ToList())];
        var figures = new List<Figure>();
        for (int i = 0; i < outlines.Count; i++)
        {
            if (rings[i].Count > 2 && !Enumerable.Range(0, rings.Length).Any(j => j != i && Math.Abs(SafeOutline.Area(rings[j])) > Math.Abs(SafeOutline.Area(rings[i])) && SafeOutline.Contains(rings[j], rings[i][0])))
                figures.Add(new Figure(source, FigureKind.Closed, outlines[i]));
        }
        return figures.Count == 0 ? ([], "the hatch has no outline") : (figures, null);
    }

    private static List<Stroke>? Polyline(Groups g, double z, double error)
    {
        bool bulges = g.SkipTo(72) && g.Take() != 0;
        if (!g.SkipTo(93))
            return null;
        int count = (int)g.Take();
        var points = new List<(Point3 At, double Bulge)>();
        for (int i = 0; i < count; i++)
        {
            if (!g.SkipTo(10))
                return null;
            double x = g.Take(), y = g.If(20) ?? 0;
            points.Add((new Point3(x, y, z), bulges ? g.If(42) ?? 0 : 0));
        }
        if (points.Count > 2 && (points[0].At - points[^1].At).PlanLength < 1e-9)
            points.RemoveAt(points.Count - 1);
        return points.Count < 2 ? [] : [.. points.Select((p, i) => Curves.Bulged(p.At, points[(i + 1) % points.Count].At, p.Bulge, error)).Where(s => s.IsCurved || (s.End - s.Start).Length > 0)];
    }

    private static List<Stroke>? Edges(Groups g, double z, double error)
    {
        if (!g.SkipTo(93))
            return null;
        int count = (int)g.Take();
        var strokes = new List<Stroke>();
        for (int i = 0; i < count; i++)
        {
            if (!g.SkipTo(72))
                return null;
            Stroke? stroke = (int)g.Take() switch
            {
                1 => Stroke.Straight(g.Point(10, z), g.Point(11, z)),
                2 => Arc(g, z, error),
                3 => Ellipse(g, z, error),
                4 => Spline(g, z, error),
                _ => null,
            };
            if (stroke is null)
                return null;
            strokes.Add(stroke);
        }
        return Turned(strokes);
    }

    /// <summary>The edges one behind the other; some programs write single ones the wrong way round.</summary>
    private static List<Stroke> Turned(List<Stroke> strokes)
    {
        for (int i = 1; i < strokes.Count; i++)
        {
            Point3 at = strokes[i - 1].End;
            if (i == 1 && (strokes[0].Start - strokes[1].Start).Length < 1e-6 && (at - strokes[1].Start).Length > 1e-6)
                at = (strokes[0] = strokes[0].Reversed).End;
            if ((strokes[i].End - at).Length < (strokes[i].Start - at).Length)
                strokes[i] = strokes[i].Reversed;
        }
        return strokes;
    }

    private static Stroke Arc(Groups g, double z, double error)
    {
        Point3 center = g.Point(10, z);
        double radius = g.Need(40), from = g.Need(50) * Math.PI / 180, to = g.Need(51) * Math.PI / 180;
        bool left = g.Need(73) != 0;
        // Clockwise arcs give their angles mirrored.
        return left ? Curves.Arc(center, radius, from, EntityFigures.Turned(to - from), error) : Curves.Arc(center, radius, -from, -EntityFigures.Turned(to - from), error);
    }

    private static Stroke Ellipse(Groups g, double z, double error)
    {
        Point3 center = g.Point(10, z), major = g.Point(11, 0);
        double ratio = g.Need(40), from = g.Need(50) * Math.PI / 180, to = g.Need(51) * Math.PI / 180;
        bool left = g.Need(73) != 0;
        var minor = new Point3(-major.Y * ratio, major.X * ratio, 0);
        return left ? Curves.Ellipse(center, major, minor, from, EntityFigures.Turned(to - from), error) : Curves.Ellipse(center, major, minor, -from, -EntityFigures.Turned(to - from), error);
    }

    private static Stroke? Spline(Groups g, double z, double error)
    {
        int degree = (int)g.Need(94);
        bool rational = g.Need(73) != 0;
        g.Need(74);
        int knots = (int)g.Need(95), points = (int)g.Need(96);
        if (knots is < 0 or > 100_000 || points is < 0 or > 100_000)
            return null;
        double[] u = [.. Enumerable.Range(0, knots).Select(_ => g.Need(40))];
        var control = new List<Point3>();
        var weights = new List<double>();
        for (int i = 0; i < points; i++)
        {
            control.Add(g.Point(10, z));
            if (rational && g.If(42) is { } weight)
                weights.Add(weight);
        }
        return Curves.Spline(degree, u, control, weights, error);
    }

    /// <summary>Groups in their order: the same codes come again and again in a hatch.</summary>
    private sealed class Groups(IReadOnlyList<DxfGroup> groups)
    {
        private int _at;

        public bool SkipTo(int code)
        {
            for (; _at < groups.Count; _at++)
            {
                if (groups[_at].Code == code)
                    return true;
            }
            return false;
        }

        public double Take() => _at < groups.Count ? DxfRecord.Number(groups[_at++].Value) ?? 0 : 0;

        public double? If(int code) => _at < groups.Count && groups[_at].Code == code ? Take() : null;

        public double Need(int code) => SkipTo(code) ? Take() : 0;

        public Point3 Point(int code, double z)
        {
            double x = Need(code);
            return new Point3(x, If(code + 10) ?? 0, z);
        }
    }
}
