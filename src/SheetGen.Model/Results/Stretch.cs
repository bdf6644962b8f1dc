namespace SheetGen.Model.Results;

/// <summary>A stretch of a wall, by distance along the layout line.</summary>
public sealed record Stretch(Wall Wall, double Start, double End);
