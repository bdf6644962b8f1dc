namespace SheetGen.Dxf;

/// <summary>A circle (CIRCLE). The radius is above 0.</summary>
public sealed record DxfCircle(string Layer, DxfPoint Center, double Radius) : DxfEntity(Layer);
