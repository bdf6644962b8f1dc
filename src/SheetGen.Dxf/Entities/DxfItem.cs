namespace SheetGen.Dxf;

/// <summary>What stands on a layer and may carry extended data.</summary>
/// <param name="Layer">Name of a layer of the document.</param>
public abstract record DxfItem(string Layer)
{
    /// <summary>Extended data, at most one entry for each application.</summary>
    public DxfSequence<DxfXData> XData { get; init; } = [];
}
