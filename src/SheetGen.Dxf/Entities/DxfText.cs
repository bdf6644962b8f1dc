namespace SheetGen.Dxf;

/// <summary>One line of text (TEXT).</summary>
/// <param name="Layer">Name of its layer.</param>
/// <param name="Position">The point that <see cref="Align"/> and <see cref="VerticalAlign"/> speak of.</param>
/// <param name="Height">Height of a capital letter, above 0.</param>
/// <param name="Value">The text as it is to be seen; control codes of the format are added and taken away by writer and reader.</param>
public sealed record DxfText(string Layer, DxfPoint Position, double Height, string Value) : DxfEntity(Layer)
{
    /// <summary>Name of a text style of the document.</summary>
    public string Style { get; init; } = "Standard";

    /// <summary>Direction of the text, degrees counter-clockwise from +X.</summary>
    public double Rotation { get; init; }

    /// <summary>Width of the letters as a factor on the font's own; above 0.</summary>
    public double WidthFactor { get; init; } = 1;

    /// <summary>Slant of the letters to the right, degrees.</summary>
    public double ObliqueAngle { get; init; }

    /// <summary>Alignment along the text.</summary>
    public DxfTextAlign Align { get; init; }

    /// <summary>Alignment across the text.</summary>
    public DxfTextVerticalAlign VerticalAlign { get; init; }
}
