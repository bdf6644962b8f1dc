namespace SheetGen.Model;

/// <summary>Drainage strips behind the shotcrete.</summary>
/// <param name="StripWidth">Width of a strip; null where not given.</param>
/// <param name="MaxSpacing">Greatest distance between strips; null where not given.</param>
public sealed record Drainage(double? StripWidth, double? MaxSpacing);
