namespace SheetGen.Drawing.Primitives;

/// <summary>A block placed: scaled, turned, then moved.</summary>
/// <param name="Rotation">Degrees counter-clockwise.</param>
/// <param name="Attributes">Values by tag, in the order of the block's attributes.</param>
public sealed record BlockReference(
    LayerRole Layer, string Block, Point2 Position, double Scale, double Rotation,
    IReadOnlyList<KeyValuePair<string, string>> Attributes) : Primitive(Layer)
{
    /// <summary>An attribute that is shown at a place and in a form of this reference's own, in the coordinates of the reference; null where there is none.</summary>
    public ShownAttribute? Shown { get; init; }
}

/// <summary>How a reference shows one of its attributes.</summary>
public sealed record ShownAttribute(string Tag, Text Text);
