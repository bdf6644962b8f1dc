using System.Globalization;

namespace SheetGen.Dxf;

/// <summary>Numbers as the format writes them: a point, no exponent, no negative zero, whatever the culture.</summary>
internal static class NumberCoding
{
    /// <summary>The least and greatest size of a number other than 0 that is written.</summary>
    internal const double Least = 1e-12, Greatest = 1e15;

    /// <summary>Writes a number with 15 significant digits, which hides the noise of the last bits; below 1e-12 it is 0.</summary>
    internal static string Format(double value)
    {
        if (Math.Abs(value) < Least)
            return "0.0";
        // A conversion to decimal keeps 15 significant digits, and a decimal never prints an exponent.
        var text = ((decimal)value).ToString(CultureInfo.InvariantCulture);
        return text.Contains('.') ? text : text + ".0";
    }

    /// <summary>Reads a finite number.</summary>
    internal static bool TryParse(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    /// <summary>Reads a whole number, also one that was written as 3.0.</summary>
    internal static bool TryParse(string text, out int value)
    {
        if (int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out value))
            return true;
        var whole = TryParse(text, out double number) && number == Math.Floor(number) && Math.Abs(number) <= int.MaxValue;
        value = whole ? (int)number : 0;
        return whole;
    }
}
