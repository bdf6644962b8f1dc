namespace SheetGen.Model;

/// <summary>Lean of a wall's face: the top leans into the soil; at the elevation the face is at its face offset.</summary>
/// <param name="Angle">Degrees from vertical, 0 to under 45.</param>
/// <param name="Elevation">Elevation at which the face stands at the face offset.</param>
public sealed record Batter(double Angle, double Elevation);
