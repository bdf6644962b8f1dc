namespace SheetGen.Model.Geometry;

/// <summary>A convex body (or convex surface) that a hole must keep away from.</summary>
public abstract record Solid
{
    /// <summary>Box around the body; a vertical surface without end reaches to plus and minus infinity.</summary>
    public abstract Bounds Bounds { get; }

    /// <summary>Signed distance of a point: negative inside, never negative for a surface. Convex in the point.</summary>
    public abstract double SignedDistance(Vector3D point);

    /// <summary>The point of the surface nearest to a point.</summary>
    public abstract Vector3D NearestPoint(Vector3D point);

    /// <summary>True for a surface that a hole may not cross (boundary, face): crossing gives a negative clear distance.</summary>
    public virtual bool IsSurface => false;
}
