using SheetGen.Model.Problems;

namespace SheetGen.Model;

/// <summary>An opening or a pipe through the face: deducted from the area and exempt from cover; nails keep edge_min from it.</summary>
public sealed record Opening(string Name, double Start, double End, double Bottom, double Top, SourceSpot Spot);
