namespace SheetGen.Model;

/// <summary>Rates and factors of the take-off that the engineer or estimator sets; null where not given.</summary>
public sealed record Rates
{
    /// <summary>Grout overrun as a factor on the theoretical volume (1.3 = 30 % more).</summary>
    public double? GroutOverrun { get; init; }

    /// <summary>Shotcrete loss as a share of the material supplied, 0 to under 1.</summary>
    public double? ShotcreteLoss { get; init; }

    /// <summary>Longest bar as supplied.</summary>
    public double? StockLength { get; init; }

    public double? CentralizerSpacing { get; init; }

    /// <summary>Design bond: nominal pullout per length, in kip/ft (feet) or kN/m (metres).</summary>
    public double? DesignBond { get; init; }

    public double? TestBondedLength { get; init; }

    public double? TestFreeLength { get; init; }

    /// <summary>Contingency as a share of the sum, 0 or more.</summary>
    public double? Contingency { get; init; }

    /// <summary>Unit prices by pay item number, the user's own.</summary>
    public IReadOnlyDictionary<string, double> Prices { get; init; } = new Dictionary<string, double>();
}
