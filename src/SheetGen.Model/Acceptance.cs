using SheetGen.Model.Problems;

namespace SheetGen.Model;

/// <summary>An error that the engineer has accepted: by its nails, its obstruction or its stretch, with reason and by whom.</summary>
/// <param name="Code">Finding code; null for any.</param>
public sealed record Acceptance(
    string? Code, string? Wall, IReadOnlyList<string> Nails, string? Obstruction, double? Start, double? End,
    string Reason, string By, SourceSpot Spot);
