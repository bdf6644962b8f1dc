using SheetGen.Model.Problems;

namespace SheetGen.Model;

/// <summary>A nail, or a whole row, that the designer pins. What is null stays as the layout chooses.</summary>
/// <param name="Along">Place of the pinned nail; null pins every nail of the row.</param>
public sealed record FixedNail(
    string Wall, string? Section, string Row, double? Along, double? Splay, double? Inclination, double? Length, SourceSpot Spot)
{
    /// <summary>Elevation of its head; null for the row's.</summary>
    public double? Elevation { get; init; }

    /// <summary>Place of the grid station whose nail it is; null for the station nearest to the pinned nail.</summary>
    public double? GridAlong { get; init; }

    /// <summary>What the pin does to the row.</summary>
    public FixedKind Kind { get; init; }
}

/// <summary>What a pin does to the nails of its row.</summary>
public enum FixedKind
{
    /// <summary>Takes the nail of the nearest grid station, or every nail of the row.</summary>
    Nail,

    /// <summary>Puts one more nail beside those of the grid stations.</summary>
    Added,

    /// <summary>Leaves the nearest grid station without a nail.</summary>
    LeftOut,
}
