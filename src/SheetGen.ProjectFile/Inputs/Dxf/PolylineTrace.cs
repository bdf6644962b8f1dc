using SheetGen.Dxf;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile.Inputs.LandXml;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>A polyline as the pieces of an alignment: straight sides and, where they have a bulge, arcs.</summary>
internal static class PolylineTrace
{
    private static readonly XmlPart Nothing = new("", new Dictionary<string, string>(), [], "", 0, 0);

    /// <summary>The pieces in project units; null where there are none.</summary>
    public static IReadOnlyList<TracePiece>? Of(DxfRecord line, IReadOnlyList<DxfRecord> vertices, Placing map)
    {
        List<(Point3 At, double Bulge)> points = line.Kind switch
        {
            "LINE" => [(new Point3(line.Real(10), line.Real(20), 0), 0), (new Point3(line.Real(11), line.Real(21), 0), 0)],
            "POLYLINE" => [.. vertices.Where(v => (v.Whole(70) & 16) == 0).Select(v => (new Point3(v.Real(10), v.Real(20), 0), v.Real(42)))],
            _ => Light(line),
        };
        Placing own = Placing.Of(new Point3(line.Real(210), line.Real(220), line.Real(230, 1)));
        double side = own.Z.Z < 0 ? -1 : 1;
        var pieces = new List<TracePiece>();
        for (int i = 0; i + 1 < points.Count; i++)
        {
            Point3 a = map.Point(own.Point(points[i].At)), b = map.Point(own.Point(points[i + 1].At));
            var start = new Vector2D(a.Y, a.X);
            var end = new Vector2D(b.Y, b.X);
            Vector2D chord = end - start;
            if (chord.Length < 1e-9)
                continue;
            // A bulge is positive to the left, curvature to the right.
            double turn = -4 * Math.Atan(points[i].Bulge * side), azimuth = Math.Atan2(chord.E, chord.N) - turn / 2;
            double length = Math.Abs(turn) < 1e-12 ? chord.Length : chord.Length * (turn / 2) / Math.Sin(turn / 2);
            pieces.Add(new TracePiece(start, end, azimuth, length, turn / length, turn / length, Nothing));
        }
        return pieces.Count == 0 ? null : pieces;
    }

    private static List<(Point3, double)> Light(DxfRecord line)
    {
        double[] x = line.Reals(10), y = line.Reals(20);
        var bulges = new double[x.Length];
        int at = -1;
        foreach (DxfGroup group in line.Groups)
        {
            if (group.Code == 10)
                at++;
            else if (group.Code == 42 && at >= 0)
                bulges[at] = DxfRecord.Number(group.Value) ?? 0;
        }
        return [.. Enumerable.Range(0, Math.Min(x.Length, y.Length)).Select(i => (new Point3(x[i], y[i], 0), bulges[i]))];
    }
}
