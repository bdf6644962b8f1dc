namespace SheetGen.Dxf;

/// <summary>A filled or patterned area (HATCH). A point is inside when an odd number of boundaries surround it.</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Boundaries">Closed outlines, the outermost first, each of at least two corners (bulges count).</param>
public sealed record DxfHatch(string Layer, DxfSequence<DxfSequence<DxfVertex>> Boundaries) : DxfEntity(Layer)
{
    /// <summary>The lines that fill it; null: solid.</summary>
    public DxfHatchPattern? Pattern { get; init; }
}
