namespace SheetGen.Model;

/// <summary>
/// A slip surface of the engineer's, the same at every station of its section, in a vertical plane square to the layout line.
/// </summary>
/// <param name="Name">Name, or its number where the project file gives none.</param>
/// <param name="Points">From the lowest up: distance behind the face at the bottom of wall, and elevation. Empty where it is an angle.</param>
/// <param name="Angle">Degrees above horizontal, from the bottom of wall at the face (the toe); null where it is given by points.</param>
public sealed record SlipSurface(string Name, IReadOnlyList<SurfacePoint> Points, double? Angle);

/// <summary>A point of a slip surface.</summary>
/// <param name="Behind">Horizontal distance behind the face at the bottom of wall, square to the layout line.</param>
public readonly record struct SurfacePoint(double Behind, double Elevation);
