namespace SheetGen.Model.Results;

/// <summary>What the engineer's values of a section give at the design's spacing, step by step; null where something is not given.</summary>
public sealed record SectionEffect
{
    public required Wall Wall { get; init; }

    public required Section Section { get; init; }

    /// <summary>The design's area of a nail.</summary>
    public required double DesignArea { get; init; }

    /// <summary>Head load as a share of the greatest tension at the design's greater spacing.</summary>
    public required double HeadShare { get; init; }

    /// <summary>Head load made from the service load.</summary>
    public double? ServiceHeadLoad { get; init; }

    /// <summary>Tension of the bar.</summary>
    public required double BarTension { get; init; }

    /// <summary>Nominal pullout per length by layer; an empty name stands for every soil.</summary>
    public required IReadOnlyDictionary<string, double> PulloutByLayer { get; init; }

    public required FacingEffect Facing { get; init; }

    public required FacingEffect PermanentFacing { get; init; }

    /// <summary>Tension of the studs.</summary>
    public double? Studs { get; init; }

    /// <summary>What is not given, so that a ratio cannot be compared: sentences.</summary>
    public required IReadOnlyList<string> Missing { get; init; }
}

/// <summary>Resistance of a facing at a head, step by step.</summary>
/// <param name="VerticalMoments">m_neg + m_pos of the vertical steel, kip-in/in or kN-m/m.</param>
/// <param name="HorizontalMoments">m_neg + m_pos of the horizontal steel.</param>
/// <param name="ConeDiameter">D'c in project units.</param>
/// <param name="ConeDepth">h_c in project units.</param>
/// <param name="Punching">Punching without the soil's reaction.</param>
/// <param name="PunchingWithSoil">Punching with it; the same where it is not counted.</param>
public sealed record FacingEffect(
    double? VerticalMoments, double? HorizontalMoments, double? ConeDiameter, double? ConeDepth, double? Punching, double? PunchingWithSoil);
