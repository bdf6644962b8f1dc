namespace SheetGen.Dxf;

/// <summary>A run of lines and arcs (LWPOLYLINE).</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Vertices">Its corners, at least two.</param>
/// <param name="Closed">Whether the last corner is joined to the first.</param>
public sealed record DxfPolyline(string Layer, DxfSequence<DxfVertex> Vertices, bool Closed = false) : DxfEntity(Layer)
{
    /// <summary>Width of the drawn band, 0 or more; 0: a line.</summary>
    public double Width { get; init; }
}
