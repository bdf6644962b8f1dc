namespace SheetGen.Model.Geometry;

/// <summary>An upright prism over a convex footprint (corners in either sense) between two elevations: cap, footing, beam.</summary>
public sealed record PrismSolid(IReadOnlyList<Vector2D> Footprint, double Bottom, double Top) : Solid
{
    public override Bounds Bounds => throw new NotImplementedException();

    public override double SignedDistance(Vector3D point) => throw new NotImplementedException();

    public override Vector3D NearestPoint(Vector3D point) => throw new NotImplementedException();
}
