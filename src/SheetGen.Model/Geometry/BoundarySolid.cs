namespace SheetGen.Model.Geometry;

/// <summary>A vertical surface without top or bottom over a straight piece of a plan polyline: right-of-way or easement.</summary>
public sealed record BoundarySolid(Vector2D End1, Vector2D End2) : Solid
{
    public override Bounds Bounds => throw new NotImplementedException();

    public override double SignedDistance(Vector3D point) => throw new NotImplementedException();

    public override Vector3D NearestPoint(Vector3D point) => throw new NotImplementedException();
}
