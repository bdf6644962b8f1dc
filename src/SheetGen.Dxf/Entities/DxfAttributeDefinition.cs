namespace SheetGen.Dxf;

/// <summary>A place in a block for a text that differs from insert to insert (ATTDEF). It stands on the layer of <see cref="Text"/>.</summary>
/// <param name="Tag">Its key: no spaces.</param>
/// <param name="Prompt">The question a program asks for the value.</param>
/// <param name="Text">Place, looks and default value, in the block's coordinates.</param>
public sealed record DxfAttributeDefinition(string Tag, string Prompt, DxfText Text) : DxfEntity(Text.Layer)
{
    /// <summary>Whether the value is carried but not shown.</summary>
    public bool Invisible { get; init; }
}
