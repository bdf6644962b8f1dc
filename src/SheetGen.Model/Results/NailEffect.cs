namespace SheetGen.Model.Results;

/// <summary>A production nail on its grid place and as drawn.</summary>
public sealed record NailEffect
{
    public required Nail Nail { get; init; }

    public required FaceZone Zone { get; init; }

    /// <summary>The design's area: horizontal times vertical spacing, up the slope of a batter.</summary>
    public required double DesignArea { get; init; }

    /// <summary>As drawn.</summary>
    public required PlaceEffect Drawn { get; init; }

    /// <summary>At its grid place, in the grid's direction and length, among all other nails of the grid; null for an added nail.</summary>
    public PlaceEffect? Grid { get; init; }

    /// <summary>True where the nail stands, points or reaches otherwise than on the grid, or carries another area.</summary>
    public required bool IsChanged { get; init; }

    /// <summary>Area as drawn over the design's.</summary>
    public double AreaShare => Drawn.Area / DesignArea;
}
