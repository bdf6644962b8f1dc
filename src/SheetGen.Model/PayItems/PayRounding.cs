namespace SheetGen.Model.PayItems;

/// <summary>To which side a pay quantity is rounded.</summary>
public enum RoundingDirection
{
    /// <summary>Halves away from zero.</summary>
    Nearest,

    /// <summary>Away from zero.</summary>
    Up,

    /// <summary>Towards zero.</summary>
    Down,
}

/// <summary>What is rounded: the total once, or each nail or wall before they are added up.</summary>
public enum RoundingScope
{
    Total,
    Nail,
    Wall,
}

/// <summary>
/// How a pay item's quantity is rounded. Before it is rounded up or down it is brought to a quantum of 0.0001 of the item's unit (a
/// thousandth of the step where that is finer), so that binary noise buys nothing.
/// </summary>
/// <param name="Step">Step of the rounded quantity, over 0: 1, 0.1, 5, 0.25, 100.</param>
/// <param name="Scope">What is rounded by itself.</param>
public readonly record struct PayRounding(RoundingDirection Direction, double Step, RoundingScope Scope = RoundingScope.Total)
{
    /// <summary>Decimals that print a multiple of the step without loss, 0 to 9.</summary>
    public int Decimals
    {
        get
        {
            double step = Step;
            return Enumerable.Range(0, 9).FirstOrDefault(d => Math.Abs(Math.Round(step, d) - step) <= 1e-9 * step, 9);
        }
    }

    /// <summary>Decimals of the quantum that comes before the step.</summary>
    public int QuantumDecimals => Direction == RoundingDirection.Nearest ? Decimals + 6 : Math.Max(4, Decimals + 3);

    public double Round(double value)
    {
        double steps = Math.Round(Math.Round(value, Math.Min(15, QuantumDecimals), MidpointRounding.AwayFromZero) / Step, 6, MidpointRounding.AwayFromZero);
        double whole = Math.Sign(steps) * Direction switch
        {
            RoundingDirection.Up => Math.Ceiling(Math.Abs(steps)),
            RoundingDirection.Down => Math.Floor(Math.Abs(steps)),
            _ => Math.Round(Math.Abs(steps), MidpointRounding.AwayFromZero),
        };
        return Math.Round(whole * Step, Decimals) + 0.0;
    }

    /// <summary>"up to 1", "nearest 0.25, each wall".</summary>
    public override string ToString()
    {
        string direction = Direction switch { RoundingDirection.Up => "up to ", RoundingDirection.Down => "down to ", _ => "nearest " };
        string scope = Scope switch { RoundingScope.Nail => ", each nail", RoundingScope.Wall => ", each wall", _ => "" };
        return FormattableString.Invariant($"{direction}{Step:0.#########}{scope}");
    }
}
