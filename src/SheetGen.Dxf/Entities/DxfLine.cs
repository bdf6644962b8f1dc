namespace SheetGen.Dxf;

/// <summary>A straight line (LINE).</summary>
public sealed record DxfLine(string Layer, DxfPoint Start, DxfPoint End) : DxfEntity(Layer);
