namespace SheetGen.Model.Geometry;

/// <summary>An axis-parallel box in northing, easting and elevation.</summary>
public readonly record struct Bounds(Vector3D Low, Vector3D High)
{
    public static Bounds Of(Hole hole)
    {
        Vector3D tip = hole.Tip;
        double r = Math.Max(hole.Radius, hole.RadiusAt(hole.Length));
        return Of(hole.Head, tip).Grow(r);
    }

    public static Bounds Of(Vector3D a, Vector3D b) => new(
        new(Math.Min(a.N, b.N), Math.Min(a.E, b.E), Math.Min(a.Z, b.Z)),
        new(Math.Max(a.N, b.N), Math.Max(a.E, b.E), Math.Max(a.Z, b.Z)));

    public Bounds Grow(double by) => new(
        new(Low.N - by, Low.E - by, Low.Z - by), new(High.N + by, High.E + by, High.Z + by));

    public Bounds With(Bounds o) => new(
        new(Math.Min(Low.N, o.Low.N), Math.Min(Low.E, o.Low.E), Math.Min(Low.Z, o.Low.Z)),
        new(Math.Max(High.N, o.High.N), Math.Max(High.E, o.High.E), Math.Max(High.Z, o.High.Z)));

    public bool Meets(Bounds o) =>
        Low.N <= o.High.N && o.Low.N <= High.N && Low.E <= o.High.E && o.Low.E <= High.E && Low.Z <= o.High.Z && o.Low.Z <= High.Z;
}
