namespace SheetGen.Model.Geometry;

/// <summary>Small helpers that the solids share.</summary>
internal static class Vectors
{
    /// <summary>The unit vector of a vector, or the fallback where its length is 0.</summary>
    public static Vector3D Unit(Vector3D v, Vector3D fallback)
    {
        double length = v.Length;
        return length > 0 ? v * (1 / length) : fallback;
    }

    /// <summary>A unit vector square to a unit vector.</summary>
    public static Vector3D SquareTo(Vector3D unit)
    {
        Vector3D other = Math.Abs(unit.Z) < 0.9 ? new(0, 0, 1) : new(1, 0, 0);
        Vector3D square = unit.Cross(other);
        return square * (1 / square.Length);
    }

    /// <summary>The vector from the nearest point of a segment to a point; all relative to one place.</summary>
    public static Vector3D FromSegment(Vector3D point, Vector3D start, Vector3D along)
    {
        Vector3D d = point - start;
        double square = along.Dot(along);
        double t = square > 0 ? Math.Clamp(d.Dot(along) / square, 0, 1) : 0;
        return d - along * t;
    }

    /// <summary>The vector from the nearest point of a plan segment to a plan point; all relative to one place.</summary>
    public static Vector2D FromSegment(Vector2D point, Vector2D start, Vector2D along)
    {
        Vector2D d = point - start;
        double square = along.Dot(along);
        double t = square > 0 ? Math.Clamp(d.Dot(along) / square, 0, 1) : 0;
        return d - along * t;
    }
}
