namespace SheetGen.Drawing.Primitives;

/// <summary>A linear dimension whose text is the measured length.</summary>
/// <param name="Style">Name of a dimension style of the sheet set.</param>
/// <param name="LinePoint">A point of the dimension line.</param>
/// <param name="TextPoint">Middle of the text.</param>
/// <param name="Angle">Direction measured along, degrees.</param>
public sealed record Dimension(
    LayerRole Layer, string Style, Point2 From, Point2 To, Point2 LinePoint, Point2 TextPoint, double Angle) : Primitive(Layer)
{
    /// <summary>Words in place of the measured length, which stands in them where they say &lt;&gt;: such as 8 SPA. @ 5.00' = 40.00', or a true length that the drawing cannot show, at another elevation of a batter; null for the measured length alone.</summary>
    public string? Words { get; init; }
}
