namespace SheetGen.Model;

/// <summary>Limits of an excavation lift; null where not given.</summary>
/// <param name="BelowRow">How far below a row the cut goes.</param>
/// <param name="MaxExposed">Greatest height of face left open.</param>
/// <param name="MaxHours">Longest time that a face may stay open, hours.</param>
public sealed record Lifts(double? BelowRow, double? MaxExposed, double? MaxHours);
