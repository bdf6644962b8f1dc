using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>Finds where plan points lie along a layout line.</summary>
public static class LayoutProjection
{
    /// <summary>The place of the line nearest to the point; beyond its ends the line goes on straight.</summary>
    public static LinePlace Locate(LayoutLine line, Vector2D point)
    {
        LinePlace best = default;
        double least = double.PositiveInfinity;
        foreach (LayoutPiece piece in line.Pieces)
        {
            double low = piece == line.Pieces[0] ? double.NegativeInfinity : piece.Start;
            double high = piece == line.Pieces[^1] ? double.PositiveInfinity : piece.End;
            double along = Math.Clamp(Foot(piece, point), low, high);
            Vector2D away = point - line.PointAt(along);
            if (away.Length < least - 1e-9)
            {
                least = away.Length;
                Vector2D tangent = Vector2D.FromAzimuth(piece.AzimuthAt(Math.Clamp(along, piece.Start, piece.End)));
                best = new(along, Math.CopySign(away.Length, tangent.CrossRight(away)));
            }
        }
        return best;
    }

    private static double Foot(LayoutPiece piece, Vector2D point)
    {
        Vector2D tangent = Vector2D.FromAzimuth(piece.Azimuth);
        double straight = piece.Start + (point - piece.Point).Dot(tangent);
        if (piece.Curvature == 0)
            return straight;
        Vector2D center = piece.Point + tangent.Right * (1 / piece.Curvature);
        Vector2D from = piece.Point - center, to = point - center;
        double turned = Math.Atan2(from.CrossRight(to), from.Dot(to));
        double along = piece.Start + turned / piece.Curvature;
        Vector2D end = Vector2D.FromAzimuth(piece.AzimuthAt(piece.End));
        if (along < piece.Start)
            return straight < piece.Start ? straight : piece.Start;
        return along > piece.End ? Math.Max(piece.End, piece.End + (point - piece.PointAt(piece.End)).Dot(end)) : along;
    }
}
