namespace SheetGen.Drawing.Primitives;

/// <summary>A straight line.</summary>
public sealed record Line(LayerRole Layer, Point2 From, Point2 To) : Primitive(Layer);
