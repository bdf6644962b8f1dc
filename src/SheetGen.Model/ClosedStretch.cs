using SheetGen.Model.Problems;

namespace SheetGen.Model;

/// <summary>A stretch of the face that the designer closes to nail heads; null elevations close it over the whole height.</summary>
public sealed record ClosedStretch(double Start, double End, double? Bottom, double? Top, string Reason, SourceSpot Spot);
