namespace SheetGen.Dxf;

/// <summary>Reads polylines of the new kind (LWPOLYLINE) and the old (POLYLINE with VERTEX).</summary>
internal static class PolylineReader
{
    private const int Closed = 1, Spatial = 8, Mesh = 16, PolyfaceMesh = 64, SplineFrame = 16;

    internal static DxfPolyline? Read(EntityReader reader, Record record, List<Record> vertices, Plane plane, string layer)
    {
        var flags = record.Integer(70);
        var isOld = record.Kind == "POLYLINE";
        if (isOld && (flags & (Mesh | PolyfaceMesh)) != 0)
        {
            reader.Log.Warn(record, "POLYLINE that is a mesh is left out");
            return null;
        }
        if (isOld && (flags & Spatial) != 0)
            plane = Plane.World;
        var corners = isOld ? Old(record, vertices) : New(record);
        if (corners.Any(c => c.Bulge != 0) && !reader.IsFlat(record, plane))
            return null;
        return new(layer, [.. corners.Select(c => new DxfVertex(reader.Map(record, plane, c.Point), plane.Bulge(c.Bulge)))], (flags & Closed) != 0)
        {
            Width = Width(reader, record, corners),
        };
    }

    private static double Width(EntityReader reader, Record record, List<Corner> corners)
    {
        var width = record.Real(43, record.Kind == "POLYLINE" ? record.Real(40) : 0);
        var widths = corners.Select(c => c.Width ?? width).Distinct().ToList();
        if (widths.Count > 1)
            reader.Log.Warn(record, $"{record.Kind}: its changing width is left out");
        return widths.Count == 1 && widths[0] > 0 ? widths[0] : 0;
    }

    private static List<Corner> New(Record record)
    {
        var z = record.Real(38);
        var corners = new List<Corner>();
        foreach (var group in record.Groups.SkipWhile(g => g.Code != 10))
        {
            if (group.Code == 10)
                corners.Add(new(new(record.ToReal(group), 0, z), 0, null));
            else if (group.Code == 20)
                corners[^1] = corners[^1] with { Point = corners[^1].Point with { Y = record.ToReal(group) } };
            else if (group.Code == 42)
                corners[^1] = corners[^1] with { Bulge = record.ToReal(group) };
            else if (group.Code is 40 or 41 && !record.Has(43))
                corners[^1] = corners[^1] with { Width = record.ToReal(group) };
        }
        return corners;
    }

    private static List<Corner> Old(Record record, List<Record> vertices)
    {
        var z = record.Real(30);
        return
        [
            .. vertices
                .Where(v => v.Kind == "VERTEX" && (v.Integer(70) & SplineFrame) == 0)
                .Select(v => new Corner(v.Has(30) ? v.Point(10) : v.Point(10) with { Z = z }, v.Real(42), v.Has(40) ? v.Real(40) : null)),
        ];
    }

    private readonly record struct Corner(Xyz Point, double Bulge, double? Width);
}
