namespace SheetGen.Drawing.Primitives;

/// <summary>A circle.</summary>
public sealed record Circle(LayerRole Layer, Point2 Center, double Radius) : Primitive(Layer);
