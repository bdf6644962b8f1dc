namespace SheetGen.Drawing.Primitives;

/// <summary>A block placed: scaled, turned, then moved.</summary>
/// <param name="Rotation">Degrees counter-clockwise.</param>
/// <param name="Attributes">Values by tag, in the order of the block's attributes.</param>
public sealed record BlockReference(
    LayerRole Layer, string Block, Point2 Position, double Scale, double Rotation,
    IReadOnlyList<KeyValuePair<string, string>> Attributes) : Primitive(Layer);
