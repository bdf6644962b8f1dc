namespace SheetGen.Model.Results;

/// <summary>A nail at one place and in one direction: geometry always, loads and resistances as far as the engineer's values go.</summary>
public sealed record PlaceEffect
{
    /// <summary>Voronoi cell of the head on the face.</summary>
    public required double Area { get; init; }

    /// <summary>Component of the nail's force square to the face, as a share of it.</summary>
    public required double Square { get; init; }

    /// <summary>Component across it, in the plane of the face, as a share of the force.</summary>
    public required double Across { get; init; }

    public required double Length { get; init; }

    /// <summary>Width of face that the nail stands for in its row: half the distance between its neighbours, at least the design's spacing.</summary>
    public required double Width { get; init; }

    /// <summary>Length of hole in each soil layer from the head on; empty without borings.</summary>
    public required IReadOnlyList<LayerStretch> Layers { get; init; }

    /// <summary>What each slip surface cuts off; empty where none is given.</summary>
    public required IReadOnlyList<SurfaceCut> Cuts { get; init; }

    /// <summary>Load for one on the design's area in the grid's direction: area over design area, times the grid's square component over this.</summary>
    public required double LoadShare { get; init; }

    /// <summary>Greatest tension; null where not given.</summary>
    public double? MaximumLoad { get; init; }

    /// <summary>Load of the head; null where neither it nor the greatest tension is given.</summary>
    public double? HeadLoad { get; init; }

    /// <summary>Every limit state that can be compared.</summary>
    public IReadOnlyList<LimitCheck> Checks { get; init; } = [];

    /// <summary>The one with the lowest ratio; null where none can be compared.</summary>
    public LimitCheck? Lowest => Checks.Count == 0 ? null : Checks.MinBy(c => c.Ratio);
}

/// <summary>A stretch of a hole in one soil layer, by depth along the hole.</summary>
public readonly record struct LayerStretch(string Layer, double From, double To)
{
    public double Length => To - From;
}

/// <summary>What a slip surface cuts off a nail.</summary>
/// <param name="At">Depth along the hole where it is left behind for good: 0 where the whole nail is behind it, the nail's length where none of it is.</param>
/// <param name="Front">Nominal pullout of the length in front; null where a layer has no bond given.</param>
/// <param name="Behind">Nominal pullout of the length behind; null where a layer has no bond given.</param>
public sealed record SurfaceCut(SlipSurface Surface, double At, double? Front, double? Behind);

/// <summary>A limit state held against its load.</summary>
/// <param name="Surface">The slip surface that it belongs to; null where it belongs to none.</param>
/// <param name="Resistance">Nominal resistance; of <see cref="LimitState.Front"/> the sum of head and pullout, factors included where factors are given.</param>
/// <param name="Load">Load before any factor.</param>
/// <param name="Ratio">Resistance over load with the factors of the design method.</param>
public sealed record LimitCheck(LimitState State, string? Surface, double Resistance, double Load, double Ratio);
