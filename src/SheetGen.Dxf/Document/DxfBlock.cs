namespace SheetGen.Dxf;

/// <summary>A block: entities drawn wherever a <see cref="DxfInsert"/> names it.</summary>
/// <remarks>Entities on layer 0 take the layer of the insert. A dimension may not stand in a block.</remarks>
public sealed class DxfBlock(string name) : IDxfNamed
{
    /// <inheritdoc/>
    public string Name { get; } = name;

    /// <summary>The point of the block that comes to the insert's position.</summary>
    public DxfPoint BasePoint { get; init; }

    /// <summary>What the block shows, attribute definitions included.</summary>
    public List<DxfEntity> Entities { get; } = [];

    /// <summary>The attribute definitions among <see cref="Entities"/>.</summary>
    public IEnumerable<DxfAttributeDefinition> AttributeDefinitions => Entities.OfType<DxfAttributeDefinition>();
}
