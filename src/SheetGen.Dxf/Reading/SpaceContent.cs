namespace SheetGen.Dxf;

/// <summary>An entity and where it was read.</summary>
internal sealed record ReadEntity(Record Record, DxfEntity Entity);

/// <summary>A viewport and where it was read.</summary>
internal sealed record ReadViewport(Record Record, int Id, DxfViewport Viewport);

/// <summary>What was read of a space or block.</summary>
internal sealed record SpaceContent(List<ReadEntity> Entities, List<ReadViewport> Viewports);
