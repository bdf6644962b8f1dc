using SheetGen.Model.Problems;

namespace SheetGen.Model;

/// <summary>A nail, or a whole row, that the designer pins. What is null stays as the layout chooses.</summary>
/// <param name="Along">Place of the pinned nail; null pins every nail of the row.</param>
public sealed record FixedNail(
    string Wall, string? Section, string Row, double? Along, double? Splay, double? Inclination, double? Length, SourceSpot Spot);
