namespace SheetGen.Dxf;

/// <summary>A box of text (MTEXT).</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Position">The point that <see cref="Attachment"/> speaks of.</param>
/// <param name="Height">Height of a capital letter, above 0.</param>
/// <param name="Value">The text as it is to be seen, lines parted by <c>\n</c>; formatting codes of the format are added and taken away by writer and reader.</param>
public sealed record DxfMText(string Layer, DxfPoint Position, double Height, string Value) : DxfEntity(Layer)
{
    /// <summary>Width at which lines wrap, 0 or more; 0: they do not.</summary>
    public double Width { get; init; }

    /// <summary>Which point of the box <see cref="DxfMText.Position"/> is.</summary>
    public DxfAttachment Attachment { get; init; } = DxfAttachment.TopLeft;

    /// <summary>Name of a text style of the document.</summary>
    public string Style { get; init; } = "Standard";

    /// <summary>Direction of the text, degrees counter-clockwise from +X.</summary>
    public double Rotation { get; init; }

    /// <summary>Distance of lines as a factor on the usual 5/3 of the height; 0.25 to 4.</summary>
    public double LineSpacing { get; init; } = 1;
}
