namespace SheetGen.Layout.Placing;

/// <summary>How hard the placer works.</summary>
/// <param name="Prove">True to tighten the proven lower limit over the conflicts between rows; may take a minute.</param>
public sealed record PlacingOptions(bool Prove = false)
{
    /// <summary>How far the search goes; short of the whole where grids are only compared.</summary>
    internal SearchDepth Depth { get; init; } = SearchDepth.Whole;

    /// <summary>Names of neighbourhoods that the search does without: how tests show what each of them is worth.</summary>
    internal IReadOnlyList<string> Without { get; init; } = [];

    /// <summary>
    /// Directions that a loop of the search may look at, for each grid station of its district; over that it ends whatever it gains. A count, so
    /// that the layout is the same on every machine; crowded walls take up to 110,000.
    /// </summary>
    internal long MostDirections { get; init; } = 150_000;

    /// <summary>Moves of heads, those that cover most first, for which directions are looked for at a span that the grid leaves uncovered.</summary>
    internal int MostCoverMoves { get; init; } = 12;

    /// <summary>Turned holes that are looked at for a verification test nail; after them it counts as missing.</summary>
    internal int MostTurnedTestHoles { get; init; } = 40_000;
}
