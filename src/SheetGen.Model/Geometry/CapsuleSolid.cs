namespace SheetGen.Model.Geometry;

/// <summary>A straight piece of pipe with round ends.</summary>
/// <param name="End1">One end of the axis.</param>
/// <param name="End2">The other end; where both are one point the body is a ball.</param>
/// <param name="Radius">Half of the outside diameter, 0 or more.</param>
public sealed record CapsuleSolid(Vector3D End1, Vector3D End2, double Radius) : Solid
{
    private readonly Vector3D _axis = Vectors.Unit(End2 - End1, new Vector3D(0, 0, 1));
    private readonly double _length = (End2 - End1).Length;

    public Vector3D End1 { get; } = End1;

    public Vector3D End2 { get; } = End2;

    public double Radius { get; } = Radius;

    public override Bounds Bounds { get; } = Bounds.Of(End1, End2).Grow(Radius);

    /// <summary>The same body as a hole without drift, for the closed form of two holes.</summary>
    internal Hole AsHole => new(End1, _axis, _length, Radius, 0);

    internal override Vector3D Anchor => End1;

    internal override double Measure(Vector3D local, out Vector3D outward)
    {
        Vector3D away = local - _axis * Math.Clamp(local.Dot(_axis), 0, _length);
        double distance = away.Length;
        outward = distance > 0 ? away * (1 / distance) : Vectors.SquareTo(_axis);
        return distance - Radius;
    }
}
