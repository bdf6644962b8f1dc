using SheetGen.Dxf;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Single entities as figures in their own coordinates.</summary>
internal static class EntityFigures
{
    /// <summary>The figures of an entity, or why it gives none. An entity that draws nothing that could matter gives neither.</summary>
    /// <param name="following">The records that belong to it: vertices of a polyline.</param>
    public static (IReadOnlyList<Figure> Figures, string? Why) Of(DxfRecord r, IReadOnlyList<DxfRecord> following, Source source, double error)
    {
        Placing own = r.Has(210) || r.Has(220) || r.Has(230) ? Placing.Of(new Point3(r.Real(210), r.Real(220), r.Real(230, 1))) : Placing.None;
        Point3 At(int code) => new(r.Real(code), r.Real(code + 10), r.Real(code + 20));
        double thickness = r.Real(39) * own.Z.Z;
        switch (r.Kind)
        {
            case "LINE":
                return One(new Figure(source, FigureKind.Open, [Stroke.Straight(At(10), At(11))]) { Thickness = r.Real(39) });
            case "POINT":
                return One(new Figure(source, FigureKind.Point, []) { Center = At(10), Thickness = r.Real(39) });
            case "CIRCLE":
                return r.Real(40) > 0
                    ? Circle(own, At(10), r.Real(40), source, thickness, error)
                    : ([], "its radius is not over 0");
            case "ARC":
                if (r.Real(40) <= 0)
                    return ([], "its radius is not over 0");
                double from = r.Real(50) * Math.PI / 180, sweep = Turned(r.Real(51) * Math.PI / 180 - from);
                return One(new Figure(source, FigureKind.Open, [Curves.Arc(At(10), r.Real(40), from, sweep, error).Through(own)]) { Thickness = thickness });
            case "ELLIPSE":
                return Ellipse(r, source, error);
            case "LWPOLYLINE":
                return Light(r, own, source, thickness, error);
            case "POLYLINE":
                return Heavy(r, following, own, source, thickness, error);
            case "SPLINE":
                return Spline(r, source, error);
            case "HATCH":
                return HatchFigures.Of(r, own, source, error);
            case "3DFACE":
                Point3[] flat = [.. new[] { 10, 11, 12, 13 }.Where(r.Has).Select(At).Distinct()];
                return flat.Length < 3 ? ([], "it has no area") : One(new Figure(source, FigureKind.Body, []) { Corners = flat, Faces = [[.. Enumerable.Range(0, flat.Length)]] });
            case "SOLID" or "TRACE":
                Point3[] p = [.. new[] { 10, 11, 13, 12 }.Where(r.Has).Select(c => own.Point(At(c)))];
                Point3[] ring = [.. p.Where((q, i) => i == 0 || q != p[i - 1])];
                return ring.Length < 3 ? ([], "it has no area") : One(new Figure(source, FigureKind.Closed, Sides(ring)) { Thickness = thickness });
            case "MESH":
                return MeshFigures.Subdivision(r, source);
            case "TEXT" or "MTEXT" or "ATTDEF" or "ATTRIB":
                string text = TextOf(r);
                Point3 place = r.Kind != "MTEXT" && r.Has(11) && (r.Whole(72) != 0 || r.Whole(73) != 0) ? At(11) : At(10);
                return r.Kind == "ATTDEF" || text.Length == 0 ? ([], null) : One(new Figure(source, FigureKind.Text, []) { Center = r.Kind == "MTEXT" ? place : own.Point(place), Text = text });
            case "3DSOLID" or "BODY" or "REGION" or "SURFACE":
                return ([], "solids of the drawing program's own kernel are not read: explode it to 3D faces, or draw its outline");
            case "DIMENSION" or "LEADER" or "MULTILEADER" or "MLEADER" or "VIEWPORT" or "IMAGE" or "WIPEOUT" or "ACAD_TABLE" or "TOLERANCE" or "OLE2FRAME" or "SEQEND" or "VERTEX":
                return ([], "it draws no body");
            default:
                return ([], "entities of this type are not read");
        }
    }

    private static (IReadOnlyList<Figure>, string?) One(Figure figure) => ([figure], null);

    public static (IReadOnlyList<Figure>, string?) Circle(Placing own, Point3 center, double radius, Source source, double thickness, double error)
    {
        Stroke round = Curves.Arc(center, radius, 0, 2 * Math.PI, error).Through(own);
        return own.IsUniform
            ? One(new Figure(source, FigureKind.Circle, [round]) { Center = own.Point(center), Radius = radius * own.X.PlanLength, Thickness = thickness })
            : One(new Figure(source, FigureKind.Closed, [round]) { Thickness = thickness });
    }

    private static (IReadOnlyList<Figure>, string?) Ellipse(DxfRecord r, Source source, double error)
    {
        var major = new Point3(r.Real(11), r.Real(21), r.Real(31));
        Placing own = Placing.Of(new Point3(r.Real(210), r.Real(220), r.Real(230, 1)));
        double ratio = r.Real(40, 1), from = r.Real(41), to = r.Real(42, 2 * Math.PI);
        if (major.Length < 1e-12 || ratio <= 0)
            return ([], "its axes are not over 0");
        Point3 minor = own.Z.Cross(major) * ratio, center = new(r.Real(10), r.Real(20), r.Real(30));
        double sweep = Math.Abs(to - from) >= 2 * Math.PI - 1e-6 ? 2 * Math.PI : Turned(to - from);
        Stroke stroke = Curves.Ellipse(center, major, minor, from, sweep, error);
        bool isWhole = sweep > 2 * Math.PI - 1e-6;
        if (isWhole && Math.Abs(ratio - 1) < 1e-9 && Math.Abs(Math.Abs(own.Z.Z) - 1) < 1e-12)
            return One(new Figure(source, FigureKind.Circle, [stroke]) { Center = center, Radius = major.Length });
        return One(new Figure(source, isWhole ? FigureKind.Closed : FigureKind.Open, [stroke]));
    }

    private static (IReadOnlyList<Figure>, string?) Light(DxfRecord r, Placing own, Source source, double thickness, double error)
    {
        var points = new List<(Point3 At, double Bulge)>();
        double z = r.Real(38);
        foreach (DxfGroup group in r.Groups)
        {
            double value = DxfRecord.Number(group.Value) ?? 0;
            if (group.Code == 10)
                points.Add((new Point3(value, 0, z), 0));
            else if (group.Code == 20 && points.Count > 0)
                points[^1] = (points[^1].At with { Y = value }, points[^1].Bulge);
            else if (group.Code == 42 && points.Count > 0)
                points[^1] = (points[^1].At, value);
        }
        return Bulges(points, (r.Whole(70) & 1) != 0, own, source, thickness, error);
    }

    private static (IReadOnlyList<Figure>, string?) Heavy(DxfRecord r, IReadOnlyList<DxfRecord> following, Placing own, Source source, double thickness, double error)
    {
        const int Closed = 1, SpaceLine = 8, Mesh = 16, PolyFace = 64, Frame = 16, FaceRecord = 128, Place = 64;
        int flags = r.Whole(70);
        DxfRecord[] vertices = [.. following.Where(v => v.Kind == "VERTEX" && (v.Whole(70) & Frame) == 0)];
        Point3 At(DxfRecord v) => new(v.Real(10), v.Real(20), v.Real(30));
        if ((flags & (Mesh | PolyFace)) != 0)
        {
            Point3[] corners = [.. vertices.Where(v => (v.Whole(70) & FaceRecord) == 0 || (v.Whole(70) & Place) != 0).Select(At)];
            IEnumerable<int[]> faces = (flags & PolyFace) != 0 ? MeshFigures.FaceRecords(vertices.Where(v => (v.Whole(70) & FaceRecord) != 0 && (v.Whole(70) & Place) == 0)) : MeshFigures.Net(r);
            return corners.Length < 4 ? ([], "the mesh has no vertices") : One(new Figure(source with { Kind = "mesh" }, FigureKind.Body, []) { Corners = corners, Faces = MeshFigures.Good(faces, corners.Length) });
        }
        if ((flags & SpaceLine) != 0)
        {
            Point3[] line = Apart([.. vertices.Select(At)]);
            bool closed = (flags & Closed) != 0;
            return line.Length < 2 ? ([], "it has no length") : One(new Figure(source with { Kind = "3D polyline" }, closed ? FigureKind.Closed : FigureKind.Open, closed ? Sides(line) : [.. line.Zip(line.Skip(1), Stroke.Straight)]));
        }
        double z = r.Real(30);
        return Bulges([.. vertices.Select(v => (At(v) with { Z = z }, v.Real(42)))], (flags & Closed) != 0, own, source, thickness, error);
    }

    /// <summary>A plane polyline; a closed one of two half circles is a circle.</summary>
    private static (IReadOnlyList<Figure>, string?) Bulges(List<(Point3 At, double Bulge)> points, bool closed, Placing own, Source source, double thickness, double error)
    {
        List<(Point3 At, double Bulge)> kept = [];
        foreach ((Point3 At, double Bulge) p in points)
        {
            if (kept.Count > 0 && (p.At - kept[^1].At).Length < 1e-12)
                kept[^1] = p;
            else
                kept.Add(p);
        }
        if (kept.Count > 2 && (kept[0].At - kept[^1].At).PlanLength < 1e-9 * Math.Max(1, kept[0].At.PlanLength))
        {
            kept.RemoveAt(kept.Count - 1);
            closed = true;
        }
        if (kept.Count < 2)
            return ([], "it has no length");
        if (closed && kept.Count == 2 && Math.Abs(Math.Abs(kept[0].Bulge) - 1) < 1e-9 && Math.Abs(kept[0].Bulge - kept[1].Bulge) < 1e-9)
            return Circle(own, (kept[0].At + kept[1].At) * 0.5, (kept[1].At - kept[0].At).PlanLength / 2, source, thickness, error);
        var strokes = new List<Stroke>();
        for (int i = 0; i + (closed ? 0 : 1) < kept.Count; i++)
            strokes.Add(Curves.Bulged(kept[i].At, kept[(i + 1) % kept.Count].At, kept[i].Bulge, error).Through(own));
        return One(new Figure(source, closed ? FigureKind.Closed : FigureKind.Open, strokes) { Thickness = thickness });
    }

    private static (IReadOnlyList<Figure>, string?) Spline(DxfRecord r, Source source, double error)
    {
        double[] x = r.Reals(10), y = r.Reals(20), z = r.Reals(30);
        if (x.Length == 0)
            return ([], r.Has(11) ? "the spline has fit points only, and how its program joins them is not in the file: convert it to a polyline" : "the spline has no points");
        Point3[] control = [.. Enumerable.Range(0, Math.Min(x.Length, y.Length)).Select(i => new Point3(x[i], y[i], i < z.Length ? z[i] : 0))];
        if (Curves.Spline(r.Whole(71, 3), r.Reals(40), control, r.Reals(41), error) is not { } stroke)
            return ([], "the spline's degree, knots, points and weights do not fit together");
        bool closed = (stroke.End - stroke.Start).Length < 1e-9 * Math.Max(1, control.Max(p => (p - control[0]).Length));
        return One(new Figure(source, closed ? FigureKind.Closed : FigureKind.Open, [stroke]));
    }

    public static Stroke[] Sides(IReadOnlyList<Point3> ring) => [.. ring.Select((p, i) => Stroke.Straight(p, ring[(i + 1) % ring.Count]))];

    private static Point3[] Apart(Point3[] points) => [.. points.Where((p, i) => i == 0 || (p - points[i - 1]).Length > 1e-12)];

    /// <summary>The angle over 0 and up to a full turn.</summary>
    public static double Turned(double angle)
    {
        double turned = angle - 2 * Math.PI * Math.Floor(angle / (2 * Math.PI));
        return turned < 1e-12 ? 2 * Math.PI : turned;
    }

    /// <summary>The words of a text without the codes of its formatting.</summary>
    private static string TextOf(DxfRecord r)
    {
        string raw = string.Concat(r.Groups.Where(g => g.Code == 3).Select(g => g.Value)) + r.Text(1);
        if (r.Kind != "MTEXT")
            return raw.Replace("%%u", "", StringComparison.OrdinalIgnoreCase).Replace("%%o", "", StringComparison.OrdinalIgnoreCase).Trim();
        string plain = System.Text.RegularExpressions.Regex.Replace(raw, @"\\[ACcfFHQTWp][^;]*;|\\[LlOoKkS]|[{}]", "", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(5));
        return plain.Replace("\\P", " ", StringComparison.Ordinal).Replace("\\~", " ", StringComparison.Ordinal).Trim();
    }
}
