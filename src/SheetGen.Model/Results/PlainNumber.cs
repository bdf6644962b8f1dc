using System.Globalization;

namespace SheetGen.Model.Results;

/// <summary>Numbers as other programs read them: invariant culture, no exponent, no grouping, no negative zero.</summary>
public static class PlainNumber
{
    /// <summary>The number with a fixed count of decimals, 0 to 15; empty where it is absent or there is nothing to measure to (plus infinity).</summary>
    public static string Fixed(double? value, int decimals) => Format(value, decimals, decimals);

    /// <summary>The number with at least and at most so many decimals; empty where it is absent or there is nothing to measure to (plus infinity).</summary>
    public static string Format(double? value, int least, int most)
    {
        if (value is not { } number || double.IsPositiveInfinity(number))
            return "";
        double rounded = Math.Round(FiniteNumber.Of(number), most, MidpointRounding.AwayFromZero);
        if (rounded == 0)
            rounded = 0;
        string places = new string('0', least) + new string('#', most - least);
        return rounded.ToString(places.Length == 0 ? "0" : "0." + places, CultureInfo.InvariantCulture);
    }
}
