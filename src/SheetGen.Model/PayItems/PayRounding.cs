namespace SheetGen.Model.PayItems;

/// <summary>How a pay item's quantity is rounded, once, in total.</summary>
/// <param name="Up">True for the next step up, false for the nearest.</param>
/// <param name="Decimals">Decimals kept, 0 to 6; -1 and -2 round to tens and hundreds.</param>
public readonly record struct PayRounding(bool Up, int Decimals)
{
    /// <summary>The value rounded; what is within a millionth of a step counts as on it, so that binary noise buys nothing.</summary>
    public double Round(double value)
    {
        double step = Math.Pow(10, -Decimals);
        double steps = Math.Round(value / step, 6, MidpointRounding.AwayFromZero);
        double whole = Up ? Math.Ceiling(steps) : Math.Round(steps, MidpointRounding.AwayFromZero);
        return Decimals > 0 ? Math.Round(whole * step, Decimals) : whole * step;
    }

    public override string ToString() => FormattableString.Invariant($"{(Up ? "up" : "nearest")}, {Decimals} decimals");
}
