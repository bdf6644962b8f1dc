namespace SheetGen.Model.Geometry;

/// <summary>A cylinder with flat ends square to its axis: a drilled shaft or pile.</summary>
public sealed record CylinderSolid(Vector3D End1, Vector3D End2, double Radius) : Solid
{
    public override Bounds Bounds => throw new NotImplementedException();

    public override double SignedDistance(Vector3D point) => throw new NotImplementedException();

    public override Vector3D NearestPoint(Vector3D point) => throw new NotImplementedException();
}
