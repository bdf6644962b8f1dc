namespace SheetGen.Model;

/// <summary>Precast facing panels; they restart at corners and their width counts on their own face.</summary>
/// <param name="Width">Panel width, over 0.</param>
/// <param name="Height">Panel height, over 0.</param>
/// <param name="FirstBreak">Distance along the layout line of the first panel break.</param>
public sealed record Panels(double Width, double Height, double FirstBreak);
