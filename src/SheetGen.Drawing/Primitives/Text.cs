namespace SheetGen.Drawing.Primitives;

/// <summary>One line of text, its position on the baseline.</summary>
/// <param name="Height">Height of a capital letter in the units of its space.</param>
/// <param name="Rotation">Degrees counter-clockwise.</param>
public sealed record Text(
    LayerRole Layer, TextRole Role, Point2 Position, double Height, string Value,
    HorizontalAlign Align = HorizontalAlign.Left, double Rotation = 0) : Primitive(Layer)
{
    /// <summary>True where the text stands on a mask that hides the lines below it.</summary>
    public bool Masked { get; init; }
}
