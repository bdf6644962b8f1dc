namespace SheetGen.Dxf;

/// <summary>A circular arc (ARC), counter-clockwise from the start angle to the end angle, both in degrees from +X.</summary>
public sealed record DxfArc(string Layer, DxfPoint Center, double Radius, double StartAngle, double EndAngle) : DxfEntity(Layer);
