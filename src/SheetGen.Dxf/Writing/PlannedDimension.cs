namespace SheetGen.Dxf;

/// <summary>A dimension and the block that shows it.</summary>
internal sealed record PlannedDimension(string BlockName, int Record, DxfDimension Dimension);
