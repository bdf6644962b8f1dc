namespace SheetGen.Model;

/// <summary>A cross section of the ground in front of a wall before the excavation.</summary>
/// <param name="Along">Distance along the layout line.</param>
/// <param name="Ground">Distance in front of the face (0 first, growing) and elevation.</param>
public sealed record CrossSection(double Along, IReadOnlyList<CrossSectionPoint> Ground);
