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

    /// <summary>A sentence with numbers in it, each in its own format and none a negative zero: <c>$"{clear:0.00} ft"</c> of -0.001 is "0.00 ft".</summary>
    public static string Text(FormattableString sentence) => sentence.ToString(WithoutNegativeZero.Only);

    private sealed class WithoutNegativeZero : IFormatProvider, ICustomFormatter
    {
        public static readonly WithoutNegativeZero Only = new();

        public object? GetFormat(Type? formatType) => formatType == typeof(ICustomFormatter) ? this : CultureInfo.InvariantCulture.GetFormat(formatType);

        public string Format(string? format, object? arg, IFormatProvider? formatProvider)
        {
            string text = (arg as IFormattable)?.ToString(format, CultureInfo.InvariantCulture) ?? arg?.ToString() ?? "";
            return arg is double && text.StartsWith('-') && text.AsSpan(1).IndexOfAnyExcept("0.") < 0 ? text[1..] : text;
        }
    }
}
