namespace SheetGen.Drawing.Templating;

/// <summary>A standard paper size lying down, mm.</summary>
/// <param name="TextFactor">Factor on the heights of texts: sizes that are printed at half size in the field carry larger ones.</param>
public sealed record SheetSize(string Name, double Width, double Height, double TextFactor = 1);
