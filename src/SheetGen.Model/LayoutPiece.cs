using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>A tangent or arc of a layout line, placed.</summary>
/// <param name="Start">Distance along the layout line where it starts.</param>
/// <param name="Length">Length along it.</param>
/// <param name="Point">Plan point of its start.</param>
/// <param name="Azimuth">Azimuth at its start, radians clockwise from north.</param>
/// <param name="Curvature">1/radius, positive for a turn to the right, 0 for a tangent.</param>
public sealed record LayoutPiece(double Start, double Length, Vector2D Point, double Azimuth, double Curvature)
{
    public double End => Start + Length;

    public double AzimuthAt(double along) => Azimuth + Curvature * (along - Start);

    /// <summary>Plan point at a distance along the layout line; beyond the piece it goes on with the same curvature.</summary>
    public Vector2D PointAt(double along)
    {
        double s = along - Start;
        double half = Curvature * s / 2;
        double chord = Math.Abs(half) < 1e-8 ? s * (1 - half * half / 6) : s * Math.Sin(half) / half;
        return Point + Vector2D.FromAzimuth(Azimuth + half) * chord;
    }
}
