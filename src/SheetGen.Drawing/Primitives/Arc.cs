namespace SheetGen.Drawing.Primitives;

/// <summary>An arc from start to end, degrees counter-clockwise.</summary>
public sealed record Arc(LayerRole Layer, Point2 Center, double Radius, double Start, double End) : Primitive(Layer);
