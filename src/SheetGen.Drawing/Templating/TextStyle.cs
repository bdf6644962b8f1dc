namespace SheetGen.Drawing.Templating;

/// <summary>How the texts of a role look.</summary>
/// <param name="Height">Height of a capital letter on paper, mm; at least 2.</param>
/// <param name="WidthFactor">Width of the letters as a factor on the font's own.</param>
public sealed record TextStyle(string Name, double Height, double WidthFactor, bool Bold);
