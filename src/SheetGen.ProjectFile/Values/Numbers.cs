using System.Globalization;
using System.Text.RegularExpressions;

namespace SheetGen.ProjectFile.Values;

/// <summary>Plain numbers: digits with a decimal point, and an exponent if need be. Nothing of it depends on the culture.</summary>
internal static partial class Numbers
{
    private const double Largest = 1e15;

    [GeneratedRegex(@"^[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?$")]
    private static partial Regex Form();

    [GeneratedRegex(@"^[+-]?[0-9]{1,3}(,[0-9]{3})+(\.[0-9]*)?$")]
    private static partial Regex Thousands();

    [GeneratedRegex(@"^[+-]?[0-9]+,[0-9]+$")]
    private static partial Regex DecimalComma();

    public static Amount Parse(string text)
    {
        if (!Form().IsMatch(text))
            return Amount.Bad(ProblemCodes.WrongType, Reason(text));
        double value = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture) + 0.0;
        if (!double.IsFinite(value) || Math.Abs(value) > Largest)
            return Amount.Bad(ProblemCodes.OutOfRange, "the number is too large");
        bool fits = decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal exact);
        return Amount.Of(fits ? exact : (decimal)value, value);
    }

    public static double Nearest(decimal exact) =>
        double.Parse(exact.ToString(CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Reason(string text)
    {
        string bare = text.TrimStart('+', '-', '.').ToLowerInvariant();
        if (bare is "nan" or "inf" or "infinity")
            return "only finite numbers are taken";
        if (Thousands().IsMatch(text))
            return $"write {text.Replace(",", "", StringComparison.Ordinal)}, without the comma";
        return DecimalComma().IsMatch(text) ? "write the decimals with a point" : "";
    }
}
