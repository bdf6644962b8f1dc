using System.Globalization;
using SheetGen.Model.Units;

namespace SheetGen.Model;

/// <summary>
/// A station as sheets print it and files give it: 12+34.56 (100 ft form) or 1+234.567 (1000 m form). It is a label and no distance: behind a
/// station equation stations are others than the distance from the start tells, and some exist twice or not at all. Only <see cref="Stationing"/>
/// turns it into a distance along its layout line, and back.
/// </summary>
/// <param name="Number">The station without its plus, in the unit of length: 1234.56 for 12+34.56.</param>
public readonly record struct PrintedStation(double Number) : IComparable<PrintedStation>
{
    /// <summary>The station with the unit's decimals; rounding carries into the full stations, so 99.999 is 1+00.00.</summary>
    public string Text(LengthUnit unit) => Text(unit, Lengths.Decimals(unit));

    /// <summary>The station with the given number of decimals.</summary>
    public string Text(LengthUnit unit, int decimals)
    {
        int full = Full(unit);
        double rounded = Math.Round(Number, decimals, MidpointRounding.AwayFromZero);
        string sign = rounded < 0 ? "-" : "";
        double size = Math.Abs(rounded);
        double head = Math.Floor(size / full);
        double rest = Math.Round(size - head * full, decimals, MidpointRounding.AwayFromZero);
        if (rest >= full)
        {
            head += 1;
            rest -= full;
        }
        int digits = full == 100 ? 2 : 3;
        string format = new string('0', digits) + (decimals > 0 ? "." + new string('0', decimals) : "");
        return sign + head.ToString("0", CultureInfo.InvariantCulture) + "+" + rest.ToString(format, CultureInfo.InvariantCulture);
    }

    /// <summary>Length of a full station: 100 in feet, 1000 in metres.</summary>
    public static int Full(LengthUnit unit) => unit == LengthUnit.Metre ? 1000 : 100;

    public int CompareTo(PrintedStation other) => Number.CompareTo(other.Number);
}
