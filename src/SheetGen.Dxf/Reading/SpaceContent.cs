namespace SheetGen.Dxf;

/// <summary>What was read of a space or block.</summary>
internal sealed record SpaceContent(List<ReadEntity> Entities, List<ReadViewport> Viewports);
