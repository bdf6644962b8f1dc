using SheetGen.Model.Results;

namespace SheetGen.Model.Revisions;

/// <summary>A nail as it stands on an edited drawing. What is null could not be read there and stays as it was.</summary>
/// <param name="Was">The nail of the layout that it was; null for one that was added.</param>
/// <param name="Wall">The wall on whose elevation, or at whose face, it stands.</param>
/// <param name="Along">Distance along the layout line, project units.</param>
/// <param name="Elevation">Elevation of the head; null where the drawing is a plan.</param>
/// <param name="Splay">Degrees, positive up-station.</param>
/// <param name="Inclination">Degrees below horizontal.</param>
/// <param name="Length">Length from the face, project units.</param>
public sealed record DrawnNail(Nail? Was, Wall Wall, double Along, double? Elevation, double? Splay, double? Inclination, double? Length);
