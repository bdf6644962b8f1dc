namespace SheetGen.Model.PayItems;

/// <summary>Dimension of a quantity: powers of length and weight. A count has none.</summary>
public readonly record struct Dimension(int Length, int Weight)
{
    public static readonly Dimension None;

    public static Dimension operator *(Dimension a, Dimension b) => new(a.Length + b.Length, a.Weight + b.Weight);

    public static Dimension operator /(Dimension a, Dimension b) => new(a.Length - b.Length, a.Weight - b.Weight);

    /// <summary>The dimension of a unit of the list of quantities: each, ft, ft2, ft3, lb, m, m2, m3, kg.</summary>
    public static Dimension OfUnit(string unit) => unit switch
    {
        "ft" or "m" => new(1, 0),
        "ft2" or "m2" => new(2, 0),
        "ft3" or "m3" => new(3, 0),
        "lb" or "kg" => new(0, 1),
        _ => None,
    };

    /// <summary>"length", "area", "a number", "weight x length".</summary>
    public override string ToString() => (Length, Weight) switch
    {
        (0, 0) => "a number",
        (1, 0) => "a length",
        (2, 0) => "an area",
        (3, 0) => "a volume",
        (0, 1) => "a weight",
        (_, 0) => FormattableString.Invariant($"length to the power {Length}"),
        _ => FormattableString.Invariant($"weight to the power {Weight} x length to the power {Length}"),
    };
}
