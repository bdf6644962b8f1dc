namespace SheetGen.Model.Geometry;

/// <summary>A flat convex piece of a wall's face, corners in order around it.</summary>
public sealed record FaceSolid(IReadOnlyList<Vector3D> Corners) : Solid
{
    public override Bounds Bounds => throw new NotImplementedException();

    public override double SignedDistance(Vector3D point) => throw new NotImplementedException();

    public override Vector3D NearestPoint(Vector3D point) => throw new NotImplementedException();
}
