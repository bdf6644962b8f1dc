namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>A point or vector of a drawing: x east, y north, z up.</summary>
internal readonly record struct Point3(double X, double Y, double Z)
{
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Point3 operator *(Point3 a, double k) => new(a.X * k, a.Y * k, a.Z * k);

    public double PlanLength => Math.Sqrt(X * X + Y * Y);

    public double Length => Math.Sqrt(X * X + Y * Y + Z * Z);

    /// <summary>Positive where the other lies to the left in plan.</summary>
    public double CrossPlan(Point3 other) => X * other.Y - Y * other.X;

    public Point3 Cross(Point3 o) => new(Y * o.Z - Z * o.Y, Z * o.X - X * o.Z, X * o.Y - Y * o.X);
}

/// <summary>An affine map of space: the images of the axes and of the origin.</summary>
internal readonly record struct Placing(Point3 X, Point3 Y, Point3 Z, Point3 Origin)
{
    public static Placing None { get; } = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    public Point3 Vector(Point3 v) => X * v.X + Y * v.Y + Z * v.Z;

    public Point3 Point(Point3 p) => Vector(p) + Origin;

    /// <summary>This map behind another: the other's result goes through this.</summary>
    public Placing After(Placing inner) => new(Vector(inner.X), Vector(inner.Y), Vector(inner.Z), Point(inner.Origin));

    /// <summary>Greatest stretch of a length, or a little more.</summary>
    public double Stretch => Math.Max(X.Length, Math.Max(Y.Length, Z.Length)) * (IsUniform ? 1 : Math.Sqrt(2));

    /// <summary>True where circles in plan stay circles in plan.</summary>
    public bool IsUniform =>
        Math.Abs(X.PlanLength - Y.PlanLength) < 1e-9 * X.PlanLength && Math.Abs(X.X * Y.X + X.Y * Y.Y) < 1e-9 * X.PlanLength * Y.PlanLength
        && Math.Abs(X.Z) < 1e-9 * X.Length && Math.Abs(Y.Z) < 1e-9 * Y.Length;

    /// <summary>The coordinate system of an entity, by its extrusion direction (the format's arbitrary axis rule).</summary>
    public static Placing Of(Point3 extrusion)
    {
        if (extrusion.Length < 1e-12 || (extrusion.X == 0 && extrusion.Y == 0 && extrusion.Z > 0))
            return None;
        Point3 z = extrusion * (1 / extrusion.Length);
        Point3 x = Math.Abs(z.X) < 1 / 64.0 && Math.Abs(z.Y) < 1 / 64.0 ? new Point3(0, 1, 0).Cross(z) : new Point3(0, 0, 1).Cross(z);
        x *= 1 / x.Length;
        return new Placing(x, z.Cross(x), z, default);
    }
}
