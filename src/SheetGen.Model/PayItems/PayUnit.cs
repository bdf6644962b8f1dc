using SheetGen.Model.Units;

namespace SheetGen.Model.PayItems;

/// <summary>A unit of measure of a pay item.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Metres">True for a unit of the metric system, false for one of the foot system, null where it belongs to both.</param>
/// <param name="Size">How many of the system's base units (ft, ft2, ft3, lb; m, m2, m3, kg) it is.</param>
public sealed record PayUnit(Dimension Dimension, bool? Metres, double Size)
{
    private const double KilogramsPerPound = 0.45359237;

    private static readonly (string Names, PayUnit Unit)[] All =
    [
        ("EACH EA NO NR LS LUMPSUM LOT PC PCS", new(Dimension.None, null, 1)),
        ("LF FT LNFT LINFT", new(new(1, 0), false, 1)),
        ("LY YD", new(new(1, 0), false, 3)),
        ("SF FT2 SQFT SQF", new(new(2, 0), false, 1)),
        ("SY YD2 SQYD", new(new(2, 0), false, 9)),
        ("CF FT3 CUFT", new(new(3, 0), false, 1)),
        ("CY YD3 CUYD", new(new(3, 0), false, 27)),
        ("LB LBS", new(new(0, 1), false, 1)),
        ("CWT", new(new(0, 1), false, 100)),
        ("TON TONS", new(new(0, 1), false, 2000)),
        ("M LM", new(new(1, 0), true, 1)),
        ("M2 SQM SM", new(new(2, 0), true, 1)),
        ("M3 CUM CM", new(new(3, 0), true, 1)),
        ("KG", new(new(0, 1), true, 1)),
        ("T TONNE TONNES MG", new(new(0, 1), true, 1000)),
    ];

    /// <summary>Names as they are usually written.</summary>
    public const string Known = "EACH, LS, LF, SF, SY, CF, CY, LB, CWT, TON, m, m2, m3, kg, t";

    /// <summary>The unit of a name, case, spaces and full stops aside; null where it is not known.</summary>
    public static PayUnit? Find(string name)
    {
        string plain = new string([.. name.Where(c => char.IsAsciiLetterOrDigit(c) || c is '\u00B2' or '\u00B3')])
            .Replace('\u00B2', '2').Replace('\u00B3', '3').ToUpperInvariant();
        return Array.Find(All, u => u.Names.Split(' ').Contains(plain)).Unit;
    }

    /// <summary>True where the unit belongs to the project's system.</summary>
    public bool Fits(LengthUnit unit) => Metres is null || Metres == !Lengths.IsFoot(unit);

    /// <summary>How many of this unit one base unit of the project is (ft3 to CY: 1/27; m to LF: 1/0.3048).</summary>
    public double From(LengthUnit unit)
    {
        if (Metres is not { } metric)
            return 1 / Size;
        double lengthHere = Lengths.MetresPer(unit), lengthThere = metric ? 1 : Lengths.IsFoot(unit) ? lengthHere : Lengths.MetresPerFoot;
        double weightHere = Lengths.IsFoot(unit) ? KilogramsPerPound : 1, weightThere = metric ? 1 : KilogramsPerPound;
        return Math.Pow(lengthHere / lengthThere, Dimension.Length) * Math.Pow(weightHere / weightThere, Dimension.Weight) / Size;
    }
}
