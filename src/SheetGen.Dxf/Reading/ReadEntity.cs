namespace SheetGen.Dxf;

/// <summary>An entity and where it was read.</summary>
internal sealed record ReadEntity(Record Record, DxfEntity Entity);
