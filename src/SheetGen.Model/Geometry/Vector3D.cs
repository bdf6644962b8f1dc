namespace SheetGen.Model.Geometry;

/// <summary>A point or vector in space: northing, easting (relative to the project's origin) and elevation, in project units.</summary>
public readonly record struct Vector3D(double N, double E, double Z)
{
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.N + b.N, a.E + b.E, a.Z + b.Z);

    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.N - b.N, a.E - b.E, a.Z - b.Z);

    public static Vector3D operator *(Vector3D a, double k) => new(a.N * k, a.E * k, a.Z * k);

    public static Vector3D operator -(Vector3D a) => new(-a.N, -a.E, -a.Z);

    public double Length => Math.Sqrt(N * N + E * E + Z * Z);

    public double Dot(Vector3D other) => N * other.N + E * other.E + Z * other.Z;

    public Vector3D Cross(Vector3D o) => new(E * o.Z - Z * o.E, Z * o.N - N * o.Z, N * o.E - E * o.N);

    public Vector2D Plan => new(N, E);

    public override string ToString() => FormattableString.Invariant($"({N}, {E}, {Z})");
}
