namespace SheetGen.Drawing.Primitives;

/// <summary>One drawn thing on a layer. It takes its colour, line type and weight from the layer.</summary>
public abstract record Primitive(LayerRole Layer)
{
    /// <summary>Mark of the nail that it belongs to; null where it belongs to none.</summary>
    public string? Nail { get; init; }

    /// <summary>Name of the obstruction that it belongs to; null where it belongs to none.</summary>
    public string? Obstruction { get; init; }

    /// <summary>Strings that other programs may read back with it (extended data in DXF).</summary>
    public IReadOnlyList<string> Data { get; init; } = [];
}
