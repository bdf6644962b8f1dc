namespace SheetGen.Model;

/// <summary>
/// The engineer's own values of a section; nothing of it is assumed where it is not given. Forces in kip, in metres kN; bond in psi or
/// kPa; steel in ksi or MPa; lengths in project units.
/// </summary>
public sealed record DesignValues
{
    /// <summary>Greatest tension of a nail at the grid's spacing, by row from the top, the last one repeats; empty where not given.</summary>
    public IReadOnlyList<double> MaximumLoads { get; init; } = [];

    /// <summary>Load of a head at the grid's spacing, by row from the top; empty where not given.</summary>
    public IReadOnlyList<double> HeadLoads { get; init; } = [];

    public ServiceLoad? ServiceLoad { get; init; }

    public DesignMethod Method { get; init; }

    /// <summary>Load factor of LRFD.</summary>
    public double? LoadFactor { get; init; }

    /// <summary>Resistance factors (LRFD) or safety factors (ASD).</summary>
    public IReadOnlyDictionary<LimitState, double> Factors { get; init; } = new Dictionary<LimitState, double>();

    /// <summary>Bond strength in every soil.</summary>
    public double? Bond { get; init; }

    /// <summary>Bond strength by the name of the soil layer in the borings; it goes before <see cref="Bond"/>.</summary>
    public IReadOnlyDictionary<string, double> BondByLayer { get; init; } = new Dictionary<string, double>();

    public IReadOnlyList<SlipSurface> Surfaces { get; init; } = [];

    /// <summary>Yield strength of the nails' bars; null: the grade of the bar.</summary>
    public double? BarYield { get; init; }

    public FacingDesign Facing { get; init; } = new();

    public FacingDesign PermanentFacing { get; init; } = new();

    public double? PlateWidth { get; init; }

    public double? PlateThickness { get; init; }

    public HeadStuds? Studs { get; init; }

    /// <summary>The ratio of resistance to load that the engineer asks for; without it no ratio is a finding.</summary>
    public double? LeastRatio { get; init; }

    /// <summary>Share by which a nail's area may exceed the design's; without it no area is a finding.</summary>
    public double? AreaShare { get; init; }

    /// <summary>Greatest tension in a row; null where not given.</summary>
    public double? MaximumLoadOf(int row) => Of(MaximumLoads, row);

    /// <summary>Load of a head in a row as given; null where not given.</summary>
    public double? HeadLoadOf(int row) => Of(HeadLoads, row);

    /// <summary>Bond strength in a layer; null where not given.</summary>
    public double? BondIn(string layer) => BondByLayer.TryGetValue(layer, out double bond) ? bond : Bond;

    private static double? Of(IReadOnlyList<double> byRow, int row) =>
        byRow.Count == 0 ? null : byRow[Math.Clamp(row - 1, 0, byRow.Count - 1)];
}
