namespace SheetGen.Model.Results;

/// <summary>A part of a bid quantity that is rounded by itself.</summary>
/// <param name="Name">Mark of the nail, or name of the wall.</param>
public sealed record BidPart(string Name, double Raw, double Rounded);
