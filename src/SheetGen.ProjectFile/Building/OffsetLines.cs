using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.ProjectFile.Building;

/// <summary>Lines at a fixed offset from a layout line, through its arcs and corners.</summary>
internal static class OffsetLines
{
    /// <summary>
    /// The points between two places, offset to the right of the line; at a corner the point where both legs' lines meet, on an arc or spiral as
    /// many that no chord is off it by more than <paramref name="sagitta"/>.
    /// </summary>
    /// <returns>Null where the line at this offset would cross itself: beyond the centre of an arc, or a leg between two corners too short.</returns>
    public static List<Vector2D>? Points(LayoutLine line, double right, double start, double end, double sagitta)
    {
        var points = new List<Vector2D> { line.PointAt(start, right) };
        if (start < 0 && end > 0)
            points.Add(line.PointAt(0, right));
        foreach (LayoutPiece piece in line.Pieces)
        {
            double from = Math.Max(piece.Start, start), to = Math.Min(piece.End, end);
            if (to <= from)
                continue;
            double curvature = Math.Abs(piece.CurvatureAt(to)) > Math.Abs(piece.CurvatureAt(from)) ? piece.CurvatureAt(to) : piece.CurvatureAt(from);
            if (1 - piece.CurvatureAt(from) * right <= 1e-6 || 1 - piece.CurvatureAt(to) * right <= 1e-6)
                return null;
            if (curvature != 0)
            {
                double radius = Math.Abs(1 / curvature - right);
                double step = Math.Sqrt(8 * Math.Min(sagitta, radius / 4) * radius) / (radius * Math.Abs(curvature));
                int count = Math.Max(1, (int)Math.Ceiling((to - from) / step));
                for (int i = 1; i < count; i++)
                    points.Add(On(piece, from + (to - from) * i / count, right));
            }
            Corner? corner = line.Corners.FirstOrDefault(c => Math.Abs(c.Along - piece.End) < 1e-9 && piece.End < end - 1e-9);
            if (corner is not null)
                points.Add(piece.PointAt(piece.End) + Bisector(piece, corner) * right);
            else if (to < end)
                points.Add(On(piece, to, right));
        }
        if (end > line.Length && start < line.Length)
            points.Add(On(line.Pieces[^1], line.Length, right));
        points.Add(line.PointAt(end, right));
        return Whole(points, line, end);
    }

    private static Vector2D On(LayoutPiece piece, double along, double right) =>
        piece.PointAt(along) + Vector2D.FromAzimuth(piece.AzimuthAt(along)).Right * right;

    private static Vector2D Bisector(LayoutPiece before, Corner corner) =>
        Vector2D.FromAzimuth(before.AzimuthAt(before.End) + corner.Deflection / 2).Right * (1 / Math.Cos(corner.Deflection / 2));

    /// <summary>The points without repeats, where each piece of them runs up-station as the layout line does; else null.</summary>
    private static List<Vector2D>? Whole(List<Vector2D> points, LayoutLine line, double end)
    {
        var kept = new List<Vector2D> { points[0] };
        foreach (Vector2D point in points.Skip(1).Where(p => (p - kept[^1]).Length >= 1e-9))
        {
            double middle = Math.Min(LayoutProjection.Locate(line, (kept[^1] + point) * 0.5).Along, end);
            if ((point - kept[^1]).Dot(line.TangentAt(middle)) <= 0)
                return null;
            kept.Add(point);
        }
        return kept.Count < 2 ? null : kept;
    }
}
