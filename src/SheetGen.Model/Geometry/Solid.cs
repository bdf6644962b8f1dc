namespace SheetGen.Model.Geometry;

/// <summary>A convex body (or convex surface) that a hole must keep away from.</summary>
public abstract record Solid
{
    /// <summary>Box around the body; a vertical surface without end reaches to plus and minus infinity.</summary>
    public abstract Bounds Bounds { get; }

    /// <summary>True for a surface that a hole may not cross (boundary, face): crossing gives a negative clear distance.</summary>
    public virtual bool IsSurface => false;

    /// <summary>A point of the body that measuring is done from, so that large coordinates cost no digits.</summary>
    internal abstract Vector3D Anchor { get; }

    /// <summary>Signed distance of a point: negative inside, never negative for a surface. Convex in the point.</summary>
    public double SignedDistance(Vector3D point) => Measure(point - Anchor, out _);

    /// <summary>The point of the surface nearest to a point.</summary>
    public Vector3D NearestPoint(Vector3D point)
    {
        double distance = Measure(point - Anchor, out Vector3D outward);
        return point - outward * distance;
    }

    /// <summary>
    /// Signed distance of the point <paramref name="local"/> from the anchor, and its gradient: the unit vector away from the body.
    /// Where the gradient jumps, one of its sides; on a surface it may be 0.
    /// </summary>
    internal abstract double Measure(Vector3D local, out Vector3D outward);
}
