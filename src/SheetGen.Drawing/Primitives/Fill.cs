namespace SheetGen.Drawing.Primitives;

/// <summary>A filled area; with a line spacing it is hatched at the angle instead.</summary>
/// <param name="Outline">Corners in order.</param>
public sealed record Fill(LayerRole Layer, IReadOnlyList<Vertex> Outline) : Primitive(Layer)
{
    /// <summary>Distance of the hatch lines; 0 for a solid fill.</summary>
    public double Spacing { get; init; }

    /// <summary>Direction of the hatch lines, degrees.</summary>
    public double Angle { get; init; }

    public static Fill Of(LayerRole layer, params Point2[] points) => new(layer, [.. points.Select(p => new Vertex(p))]);

    public static Fill Disc(LayerRole layer, Point2 center, double radius) =>
        new(layer, [new(center - new Point2(radius, 0), 1), new(center + new Point2(radius, 0), 1)]);
}
