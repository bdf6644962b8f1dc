namespace SheetGen.Model;

/// <summary>Rates and factors of the take-off that the engineer or estimator sets; null where not given.</summary>
public sealed record Rates
{
    /// <summary>Grout overrun as a factor on the theoretical volume (1.3 = 30 % more).</summary>
    public double? GroutOverrun { get; init; }

    /// <summary>Shotcrete loss as a share of the material supplied, 0 to under 1.</summary>
    public double? ShotcreteLoss { get; init; }

    /// <summary>Lengths in which bars are supplied; empty where not given.</summary>
    public IReadOnlyList<double> StockLengths { get; init; } = [];

    /// <summary>Longest bar as supplied.</summary>
    public double? StockLength => StockLengths.Count == 0 ? null : StockLengths.Max();

    /// <summary>Least length of a piece that is coupled.</summary>
    public double? LeastPiece { get; init; }

    public double? CentralizerSpacing { get; init; }

    /// <summary>Distance of the outer centralizers from the ends of the hole.</summary>
    public double? CentralizerEnd { get; init; }

    /// <summary>Share by which a checker's value may differ from ours.</summary>
    public double? CheckLimit { get; init; }

    /// <summary>Waler bars in a row.</summary>
    public double? WalerBars { get; init; }

    /// <summary>Bearing bars at a nail.</summary>
    public double? BearingBars { get; init; }

    public double? BearingBarLength { get; init; }

    /// <summary>Weight of a bearing plate, nut, washer or coupler, lb or kg.</summary>
    public double? PlateWeight { get; init; }

    public double? NutWeight { get; init; }

    public double? WasherWeight { get; init; }

    public double? CouplerWeight { get; init; }

    /// <summary>Size of a sheet of welded wire, and how far neighbours lap.</summary>
    public double? MeshLength { get; init; }

    public double? MeshWidth { get; init; }

    public double? MeshLap { get; init; }

    /// <summary>What drainage strips need more than their length, as a share of it (laps and folds).</summary>
    public double? StripLap { get; init; }

    /// <summary>Nails bought as spares, as a share of the production nails.</summary>
    public double? SpareNails { get; init; }

    public double? PadWidth { get; init; }

    public double? PadHeight { get; init; }

    public double? CopingWidth { get; init; }

    public double? CopingHeight { get; init; }

    /// <summary>Length of hole that a rig drills in an hour, by the name of the soil layer.</summary>
    public IReadOnlyDictionary<string, double> Drilling { get; init; } = new Dictionary<string, double>();

    public double? HoursPerDay { get; init; }

    public double? Rigs { get; init; }

    /// <summary>Length of hole that a crew drills in a day.</summary>
    public double? DrillingPerDay { get; init; }

    /// <summary>Area of face that a crew covers with shotcrete in a day.</summary>
    public double? ShotcretePerDay { get; init; }

    /// <summary>Volume that a crew digs in a day.</summary>
    public double? ExcavationPerDay { get; init; }

    /// <summary>The user's own cost of one unit by pay item number.</summary>
    public IReadOnlyDictionary<string, CostParts> BuildUp { get; init; } = new Dictionary<string, CostParts>();

    /// <summary>Mark-up on the cost, as a share of it.</summary>
    public double? MarkUp { get; init; }

    /// <summary>Design bond: nominal pullout per length, in kip/ft (feet) or kN/m (metres).</summary>
    public double? DesignBond { get; init; }

    /// <summary>Bonded length of a verification test nail.</summary>
    public double? TestBondedLength { get; init; }

    /// <summary>Free length of a verification test nail.</summary>
    public double? TestFreeLength { get; init; }

    /// <summary>Free length of a proof test nail while it is tested.</summary>
    public double? ProofFreeLength { get; init; }

    /// <summary>Contingency as a share of the sum, 0 or more.</summary>
    public double? Contingency { get; init; }

    /// <summary>Unit prices by pay item number, the user's own.</summary>
    public IReadOnlyDictionary<string, double> Prices { get; init; } = new Dictionary<string, double>();
}
