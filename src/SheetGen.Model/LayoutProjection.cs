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
        for (int i = 0; i < line.Pieces.Count; i++)
        {
            LayoutPiece piece = line.Pieces[i];
            double low = i == 0 ? double.NegativeInfinity : piece.Start;
            double high = i == line.Pieces.Count - 1 ? double.PositiveInfinity : piece.End;
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
        if (piece.IsSpiral)
            return SpiralFoot(piece, point, straight);
        if (piece.Curvature == 0)
            return straight;
        Vector2D center = piece.Point + tangent.Right * (1 / piece.Curvature);
        Vector2D from = piece.Point - center, to = point - center;
        double turned = Math.Atan2(from.CrossRight(to), from.Dot(to));
        double along = piece.Start + turned / piece.Curvature;
        return along < piece.Start || along > piece.End ? Beyond(piece, point, straight, along < piece.Start) : along;
    }

    /// <summary>The place beyond one end of a curved piece, where the line goes on straight; that end where the point does not lie beyond it.</summary>
    private static double Beyond(LayoutPiece piece, Vector2D point, double straight, bool before)
    {
        if (before)
            return Math.Min(straight, piece.Start);
        Vector2D end = Vector2D.FromAzimuth(piece.AzimuthAt(piece.End));
        return Math.Max(piece.End, piece.End + (point - piece.PointAt(piece.End)).Dot(end));
    }

    /// <summary>The nearest of some places of a spiral, then closer by halving where the square from the line to the point turns over.</summary>
    private static double SpiralFoot(LayoutPiece piece, Vector2D point, double straight)
    {
        const int Places = 24, Halvings = 60;
        double step = piece.Length / Places, best = piece.Start, least = double.PositiveInfinity;
        for (int i = 0; i <= Places; i++)
        {
            double away = (point - piece.PointAt(piece.Start + step * i)).Length;
            if (away < least)
                (best, least) = (piece.Start + step * i, away);
        }
        double low = Math.Max(piece.Start, best - step), high = Math.Min(piece.End, best + step);
        double Ahead(double along) => (point - piece.PointAt(along)).Dot(Vector2D.FromAzimuth(piece.AzimuthAt(along)));
        if (Ahead(low) <= 0)
            return low == piece.Start ? Beyond(piece, point, straight, before: true) : low;
        if (Ahead(high) >= 0)
            return high == piece.End ? Beyond(piece, point, straight, before: false) : high;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Ahead(middle) > 0 ? (middle, high) : (low, middle);
        }
        return (low + high) / 2;
    }
}
