namespace SheetGen.Drawing.Templating;

/// <summary>A standard paper size lying down, mm.</summary>
public sealed record SheetSize(string Name, double Width, double Height);
