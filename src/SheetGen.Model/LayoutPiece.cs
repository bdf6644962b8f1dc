using SheetGen.Model.Geometry;

namespace SheetGen.Model;

/// <summary>A tangent, arc or spiral of a layout line, placed.</summary>
/// <param name="Start">Distance along the layout line where it starts.</param>
/// <param name="Length">Length along it.</param>
/// <param name="Point">Plan point of its start.</param>
/// <param name="Azimuth">Azimuth at its start, radians clockwise from north.</param>
/// <param name="Curvature">1/radius at its start, positive for a turn to the right, 0 for a tangent.</param>
/// <param name="Sharpness">Change of the curvature per length: 0 but on a spiral (clothoid), whose curvature changes evenly along it.</param>
public sealed record LayoutPiece(double Start, double Length, Vector2D Point, double Azimuth, double Curvature, double Sharpness = 0)
{
    public double End => Start + Length;

    /// <summary>True for an arc and a spiral.</summary>
    public bool IsCurved => Curvature != 0 || Sharpness != 0;

    /// <summary>True for a spiral (clothoid).</summary>
    public bool IsSpiral => Sharpness != 0;

    /// <summary>Curvature at a distance along the layout line, positive for a turn to the right.</summary>
    public double CurvatureAt(double along) => Curvature + Sharpness * (along - Start);

    /// <summary>The curvature of the piece that is farthest from straight, at one of its ends.</summary>
    public double Sharpest => Math.Abs(CurvatureAt(End)) > Math.Abs(Curvature) ? CurvatureAt(End) : Curvature;

    /// <summary>Azimuth at a distance along the layout line: the integral of the curvature.</summary>
    public double AzimuthAt(double along)
    {
        double s = along - Start;
        return Azimuth + (Curvature + Sharpness * s / 2) * s;
    }

    /// <summary>Plan point at a distance along the layout line; beyond the piece it goes on with the same law of curvature.</summary>
    public Vector2D PointAt(double along)
    {
        double s = along - Start;
        if (IsSpiral)
            return Point + Clothoid.Chord(Azimuth, Curvature, Sharpness, s);
        double half = Curvature * s / 2;
        double chord = Math.Abs(half) < 1e-8 ? s * (1 - half * half / 6) : s * Math.Sin(half) / half;
        return Point + Vector2D.FromAzimuth(Azimuth + half) * chord;
    }

    /// <summary>Places that cut a spiral into parts of nearly one curvature; the ends alone for a tangent or arc.</summary>
    public IEnumerable<double> Stops()
    {
        int count = IsSpiral ? SpiralParts : 1;
        for (int i = 0; i <= count; i++)
            yield return i == count ? End : Start + Length * i / count;
    }

    private const int SpiralParts = 16;
}
