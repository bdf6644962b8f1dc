namespace SheetGen.Dxf;

/// <summary>A viewport and where it was read.</summary>
internal sealed record ReadViewport(Record Record, int Id, DxfViewport Viewport);
