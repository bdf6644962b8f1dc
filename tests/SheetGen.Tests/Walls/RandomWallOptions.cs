namespace SheetGen.Tests.Walls;

/// <summary>What kind of random wall is wanted.</summary>
public sealed record RandomWallOptions
{
    /// <summary>About how many nails the walls have together.</summary>
    public int Nails { get; init; } = 120;

    /// <summary>True for a wall whose heights, steps, mitres and rules let rule 1 be met everywhere.</summary>
    public bool Satisfiable { get; init; }

    /// <summary>False keeps outside corners out; null leaves it to chance.</summary>
    public bool? OutsideCorners { get; init; }

    /// <summary>True for a benchmark: one wall, feet, no verification nails, default rules.</summary>
    public bool Plain { get; init; }

    /// <summary>Obstructions for each hundred nails.</summary>
    public double Obstructions { get; init; } = 6;

    /// <summary>Greatest length of pipes and easements along the wall in feet, for long walls that are nowhere more crowded than short ones; null: as long as the wall.</summary>
    public double? Along { get; init; }
}
