namespace SheetGen.Model.Results;

/// <summary>Length of a section's holes in one soil layer, by the boring nearest to the middle of each hole.</summary>
/// <param name="Layer">Name of the layer; "above boring B-1" and "below boring B-1" where the log does not reach.</param>
/// <param name="Hours">Drilling time by the user's rates; null where no rate is given for the layer.</param>
public sealed record SoilLength(Wall Wall, Section Section, int Lift, string Layer, double Length, double? Hours);
