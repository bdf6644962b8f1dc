namespace SheetGen.Dxf;

/// <summary>Model space or the space of a layout, with its handles.</summary>
internal sealed record PlannedSpace(
    string Name, DxfLayout? Sheet, IReadOnlyList<DxfEntity> Entities, int Record, int LayoutObject, int SheetViewport)
{
    /// <summary>The dimensions among the entities, in their order, each with its block.</summary>
    internal List<PlannedDimension> Dimensions { get; } = [];
}
