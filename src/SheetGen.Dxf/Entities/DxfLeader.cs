namespace SheetGen.Dxf;

/// <summary>A pointing line with an arrowhead at its first point (LEADER).</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Points">Its corners, from the arrow to the note; at least two.</param>
public sealed record DxfLeader(string Layer, DxfSequence<DxfPoint> Points) : DxfEntity(Layer)
{
    /// <summary>Name of a dimension style of the document: it gives the size of the arrowhead.</summary>
    public string Style { get; init; } = "Standard";

    /// <summary>Whether there is an arrowhead.</summary>
    public bool Arrow { get; init; } = true;

    /// <summary>The note it leads to, drawn with it; null: none.</summary>
    public DxfMText? Note { get; init; }
}
