namespace SheetGen.Model.Geometry;

/// <summary>A vertical surface without top or bottom over a straight piece of a plan polyline: right-of-way or easement.</summary>
public sealed record BoundarySolid(Vector2D End1, Vector2D End2) : Solid
{
    public override Bounds Bounds { get; } = new(
        new(Math.Min(End1.N, End2.N), Math.Min(End1.E, End2.E), double.NegativeInfinity),
        new(Math.Max(End1.N, End2.N), Math.Max(End1.E, End2.E), double.PositiveInfinity));

    public override bool IsSurface => true;

    internal override Vector3D Anchor => End1.At(0);

    internal override double Measure(Vector3D local, out Vector3D outward)
    {
        Vector2D away = Vectors.FromSegment(local.Plan, default, End2 - End1);
        double distance = away.Length;
        outward = distance > 0 ? (away * (1 / distance)).At(0) : default;
        return distance;
    }
}
