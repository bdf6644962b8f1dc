namespace SheetGen.Dxf;

/// <summary>A text style: a name for a font.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FontFile">File name of a TrueType font (<c>arial.ttf</c>) or shape font (<c>txt</c>), without folder.</param>
public sealed record DxfTextStyle(string Name, string FontFile) : IDxfNamed
{
    /// <summary>Width of the letters as a factor on the font's own; above 0.</summary>
    public double WidthFactor { get; init; } = 1;

    /// <summary>Slant of the letters to the right, degrees, -85 to 85.</summary>
    public double ObliqueAngle { get; init; }
}
