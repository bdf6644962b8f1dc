namespace SheetGen.Model.Results;

/// <summary>A level run of the leveling pad.</summary>
/// <param name="Length">Length along the face at the pad's elevation.</param>
/// <param name="StepsUp">Rise from the run before on the same leg; null for the first run of a leg.</param>
public sealed record PadRun(Wall Wall, Section Section, double Start, double End, double Elevation, double Length, double? StepsUp);
