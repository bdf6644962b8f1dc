using System.Globalization;

namespace SheetGen.Model.Units;

/// <summary>
/// Printing of stations: 12+34.56 (100 ft form) or 1+234.567 (1000 m form).
/// A station is a printed label, not a distance: <see cref="LayoutLine"/> turns one into the other.
/// </summary>
public static class Stations
{
    /// <summary>The station with the unit's decimals; rounding carries into the full stations, so 99.999 is 1+00.00.</summary>
    public static string Format(double station, LengthUnit unit) => Format(station, unit, Lengths.Decimals(unit));

    /// <summary>The station with the given number of decimals.</summary>
    public static string Format(double station, LengthUnit unit, int decimals)
    {
        int full = FullStation(unit);
        double rounded = Math.Round(station, decimals, MidpointRounding.AwayFromZero);
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
    public static int FullStation(LengthUnit unit) => unit == LengthUnit.Metre ? 1000 : 100;
}
