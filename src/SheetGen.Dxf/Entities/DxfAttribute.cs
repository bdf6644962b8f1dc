namespace SheetGen.Dxf;

/// <summary>The value of a block's attribute at one insert (ATTRIB).</summary>
/// <param name="Tag">Key of the attribute definition.</param>
/// <param name="Text">Place, looks and value, in the coordinates in which the insert stands.</param>
public sealed record DxfAttribute(string Tag, DxfText Text)
{
    /// <summary>Whether the value is carried but not shown.</summary>
    public bool Invisible { get; init; }
}
