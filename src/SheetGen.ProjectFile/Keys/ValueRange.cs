using System.Globalization;

namespace SheetGen.ProjectFile.Keys;

/// <summary>Range of a number. The most is always included.</summary>
public sealed record ValueRange(double Least, bool LeastIncluded, double Most, bool MostIncluded = true)
{
    /// <summary>Any number that a survey may need: coordinates reach 10^7.</summary>
    public static readonly ValueRange Coordinate = new(-1e9, true, 1e9);

    public static readonly ValueRange Elevation = new(-1e5, true, 1e5);

    /// <summary>Radii of spirals, which may be nearly straight.</summary>
    public static readonly ValueRange Radius = new(0, false, 1e12);

    public static readonly ValueRange Over0 = new(0, false, 1e5);

    public static readonly ValueRange From0 = new(0, true, 1e5);

    public bool Has(double value) =>
        (LeastIncluded ? value >= Least : value > Least) && (MostIncluded ? value <= Most : value < Most);

    /// <summary>The range in words, such as "over 0" or "0 to under 45"; limits that no real value reaches are left out.</summary>
    public string InWords(string unit) => InWords(unit, Least <= -1e5, Most >= 1e5);

    /// <summary>The range in words, with the limit that a value breaks.</summary>
    public string InWordsFor(double value, string unit) => InWords(unit, Least <= -1e5 && value >= Least, Most >= 1e5 && value <= Most);

    private string InWords(string unit, bool openBelow, bool openAbove)
    {
        string suffix = unit.Length == 0 ? "" : " " + unit;
        string least = Text(Least), most = Text(Most);
        if (Least == Most)
            return least + suffix;
        if (openBelow && openAbove)
            return "any number";
        if (openBelow)
            return $"at most {most}{suffix}";
        if (openAbove)
            return LeastIncluded ? $"{least}{suffix} or more" : $"over {least}{suffix}";
        return (LeastIncluded ? least : "over " + least) + " to " + (MostIncluded ? most : "under " + most) + suffix;
    }

    private static string Text(double value) => value.ToString("0.#########", CultureInfo.InvariantCulture);
}
