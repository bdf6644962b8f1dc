namespace SheetGen.Model.Geometry;

/// <summary>A point or vector in plan: northing and easting in project units, relative to the project's origin.</summary>
public readonly record struct Vector2D(double N, double E)
{
    public static Vector2D operator +(Vector2D a, Vector2D b) => new(a.N + b.N, a.E + b.E);

    public static Vector2D operator -(Vector2D a, Vector2D b) => new(a.N - b.N, a.E - b.E);

    public static Vector2D operator *(Vector2D a, double k) => new(a.N * k, a.E * k);

    public static Vector2D operator -(Vector2D a) => new(-a.N, -a.E);

    public double Length => Math.Sqrt(N * N + E * E);

    public double Dot(Vector2D other) => N * other.N + E * other.E;

    /// <summary>Positive where <paramref name="other"/> lies to the right (clockwise from above) of this.</summary>
    public double CrossRight(Vector2D other) => N * other.E - E * other.N;

    /// <summary>This vector turned 90 degrees to the right, seen from above.</summary>
    public Vector2D Right => new(-E, N);

    /// <summary>Unit vector of an azimuth in radians, clockwise from north.</summary>
    public static Vector2D FromAzimuth(double azimuth) => new(Math.Cos(azimuth), Math.Sin(azimuth));

    /// <summary>Azimuth in radians, clockwise from north, 0 to 2 pi.</summary>
    public double Azimuth => Units.Angles.NormalizeAzimuth(Math.Atan2(E, N));

    public Vector3D At(double elevation) => new(N, E, elevation);

    public override string ToString() => FormattableString.Invariant($"({N}, {E})");
}
