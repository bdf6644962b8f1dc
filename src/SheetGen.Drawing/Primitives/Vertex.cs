namespace SheetGen.Drawing.Primitives;

/// <summary>A corner of a polyline; the bulge (tangent of a quarter of the arc's angle, counter-clockwise over 0) bends the piece after it.</summary>
public readonly record struct Vertex(Point2 Point, double Bulge = 0)
{
    public static implicit operator Vertex(Point2 point) => new(point);
}
