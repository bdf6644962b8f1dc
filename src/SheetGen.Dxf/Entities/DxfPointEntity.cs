namespace SheetGen.Dxf;

/// <summary>A point mark (POINT).</summary>
public sealed record DxfPointEntity(string Layer, DxfPoint Position) : DxfEntity(Layer);
