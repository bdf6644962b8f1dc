namespace SheetGen.Dxf;

/// <summary>A point or vector in the drawing plane (Z is always 0), in drawing units or, on a layout, in paper units.</summary>
/// <remarks>Not the POINT entity: see <see cref="DxfPointEntity"/>.</remarks>
public readonly record struct DxfPoint(double X, double Y)
{
    /// <summary>The origin (0, 0).</summary>
    public static DxfPoint Origin => default;

    public static DxfPoint operator +(DxfPoint a, DxfPoint b) => new(a.X + b.X, a.Y + b.Y);

    public static DxfPoint operator -(DxfPoint a, DxfPoint b) => new(a.X - b.X, a.Y - b.Y);

    public static DxfPoint operator *(DxfPoint a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>Distance from the origin, that is, the length of the vector.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>The point turned about the origin, counter-clockwise; exact for whole quarter turns.</summary>
    /// <param name="degrees">Angle in degrees.</param>
    public DxfPoint Rotated(double degrees)
    {
        switch (Math.IEEERemainder(degrees, 360))
        {
            case 0: return this;
            case 90: return new(-Y, X);
            case -90: return new(Y, -X);
            case 180 or -180: return new(-X, -Y);
        }
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(X * cos - Y * sin, X * sin + Y * cos);
    }
}
