namespace SheetGen.Dxf;

/// <summary>A filled triangle or quadrilateral (SOLID). Corners go round the outline; a triangle repeats the third.</summary>
public sealed record DxfSolid(string Layer, DxfPoint First, DxfPoint Second, DxfPoint Third, DxfPoint Fourth) : DxfEntity(Layer);
