namespace SheetGen.Drawing.Primitives;

/// <summary>A run of straight lines and arcs.</summary>
public sealed record Polyline(LayerRole Layer, IReadOnlyList<Vertex> Vertices, bool Closed = false) : Primitive(Layer)
{
    public static Polyline Of(LayerRole layer, IEnumerable<Point2> points, bool closed = false) =>
        new(layer, [.. points.Select(p => new Vertex(p))], closed);

    public static Polyline Rectangle(LayerRole layer, Box box) =>
        Of(layer, [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)], true);
}
