using System.Globalization;

namespace SheetGen.Dxf;

/// <summary>A measured length as a dimension shows it.</summary>
internal static class DimensionText
{
    /// <summary>Writes a length of drawing units in a style.</summary>
    internal static string Of(double measurement, DxfDimStyle style)
    {
        // 15 digits, so that noise in the last bits does not tip the rounding of a half.
        var value = (decimal)(measurement * style.MeasureFactor);
        var number = style.Format switch
        {
            DxfLinearFormat.Engineering => Engineering(value, style.Precision),
            DxfLinearFormat.Architectural => Architectural(value, style.Precision),
            _ => Decimals(value, style),
        };
        return style.Affix.Contains("<>", StringComparison.Ordinal)
            ? style.Affix.Replace("<>", number, StringComparison.Ordinal)
            : number + style.Affix;
    }

    private static string Decimals(decimal value, DxfDimStyle style)
    {
        var text = Fixed(value, style.Precision);
        return style.TrimZeros && text.Contains('.') ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    private static string Engineering(decimal inches, int precision)
    {
        var rounded = Math.Round(inches, precision, MidpointRounding.AwayFromZero);
        var feet = Math.Floor(rounded / 12);
        return $"{Fixed(feet, 0)}'-{Fixed(rounded - (feet * 12), precision)}\"";
    }

    private static string Architectural(decimal inches, int precision)
    {
        var parts = 1L << precision;
        var count = (long)Math.Round(inches * parts, MidpointRounding.AwayFromZero);
        var (feet, rest) = Math.DivRem(count, 12 * parts);
        var (whole, fraction) = Math.DivRem(rest, parts);
        while (fraction != 0 && fraction % 2 == 0)
            (fraction, parts) = (fraction / 2, parts / 2);
        var tail = fraction == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {fraction}/{parts}");
        return string.Create(CultureInfo.InvariantCulture, $"{feet}'-{whole}{tail}\"");
    }

    private static string Fixed(decimal value, int precision) =>
        Math.Round(value, precision, MidpointRounding.AwayFromZero).ToString("F" + precision.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
