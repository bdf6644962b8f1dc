namespace SheetGen.Model.Results;

/// <summary>A vertical drainage strip behind the shotcrete, from the bottom to the top of the face.</summary>
/// <param name="Along">Distance along the layout line of its centre line.</param>
/// <param name="Spacing">Greatest spacing allowed; the default where the project file gives none.</param>
/// <param name="Length">Length along the face, openings deducted.</param>
/// <param name="Touches">Marks of nails whose holes it cannot keep clear of.</param>
public sealed record DrainStrip(Wall Wall, Section Section, double Along, double Spacing, double Length, IReadOnlyList<string> Touches);
