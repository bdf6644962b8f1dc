namespace SheetGen.Model.Geometry;

/// <summary>A straight piece of pipe with round ends.</summary>
public sealed record CapsuleSolid(Vector3D End1, Vector3D End2, double Radius) : Solid
{
    public override Bounds Bounds => throw new NotImplementedException();

    public override double SignedDistance(Vector3D point) => throw new NotImplementedException();

    public override Vector3D NearestPoint(Vector3D point) => throw new NotImplementedException();
}
