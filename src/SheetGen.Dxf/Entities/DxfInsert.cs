namespace SheetGen.Dxf;

/// <summary>A block reference (INSERT): the block's entities, scaled, then turned, then moved to a position.</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Block">Name of a block of the document.</param>
/// <param name="Position">Where the block's base point comes to lie.</param>
public sealed record DxfInsert(string Layer, string Block, DxfPoint Position) : DxfEntity(Layer)
{
    /// <summary>Factor along the block's X; not 0, below 0 mirrors.</summary>
    public double ScaleX { get; init; } = 1;

    /// <summary>Factor along the block's Y; not 0, below 0 mirrors.</summary>
    public double ScaleY { get; init; } = 1;

    /// <summary>Turn in degrees, counter-clockwise.</summary>
    public double Rotation { get; init; }

    /// <summary>Values of the block's attributes, in the order of its definitions.</summary>
    public DxfSequence<DxfAttribute> Attributes { get; init; } = [];

    /// <summary>An insert with all attributes of a block, each placed as its definition says and moved with the insert.</summary>
    /// <param name="layer">Name of the layer of the insert.</param>
    /// <param name="block">The block.</param>
    /// <param name="position">Where the block's base point comes to lie.</param>
    /// <param name="values">Values by tag (compared as they are); a tag not named keeps the default value.</param>
    /// <param name="scale">Factor along X and Y, above 0.</param>
    /// <param name="rotation">Turn in degrees, counter-clockwise.</param>
    public static DxfInsert Of(
        string layer,
        DxfBlock block,
        DxfPoint position,
        IReadOnlyDictionary<string, string> values,
        double scale = 1,
        double rotation = 0)
    {
        DxfAttribute Fill(DxfAttributeDefinition definition)
        {
            var text = definition.Text;
            return new(definition.Tag, text with
            {
                Layer = text.Layer == "0" ? layer : text.Layer,
                Position = position + ((text.Position - block.BasePoint) * scale).Rotated(rotation),
                Height = text.Height * scale,
                Rotation = text.Rotation + rotation,
                Value = values.GetValueOrDefault(definition.Tag, text.Value),
            })
            { Invisible = definition.Invisible };
        }

        return new(layer, block.Name, position)
        {
            ScaleX = scale,
            ScaleY = scale,
            Rotation = rotation,
            Attributes = [.. block.AttributeDefinitions.Select(Fill)],
        };
    }
}
