namespace SheetGen.Drawing.Primitives;

/// <summary>A point or vector of a drawing: x to the right, y up; project units in model space, millimetres on paper.</summary>
public readonly record struct Point2(double X, double Y)
{
    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    public static Point2 operator *(Point2 a, double k) => new(a.X * k, a.Y * k);

    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>Distance of the point from the segment between two others.</summary>
    public double DistanceTo(Point2 a, Point2 b)
    {
        Point2 way = b - a, off = this - a;
        double square = way.X * way.X + way.Y * way.Y;
        double share = square < 1e-12 ? 0 : Math.Clamp((off.X * way.X + off.Y * way.Y) / square, 0, 1);
        return (off - way * share).Length;
    }

    /// <summary>The vector turned counter-clockwise by radians.</summary>
    public Point2 Turned(double radians)
    {
        (double sin, double cos) = Math.SinCos(radians);
        return new(X * cos - Y * sin, X * sin + Y * cos);
    }
}
