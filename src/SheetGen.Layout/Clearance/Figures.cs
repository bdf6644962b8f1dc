using System.Globalization;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>How findings print figures, obstructions and turns.</summary>
internal static class Figures
{
    /// <summary>A length with its unit and the unit's decimals.</summary>
    public static string Length(double value, LengthUnit unit) => Length(value, unit, Lengths.Decimals(unit));

    /// <summary>Two lengths that are compared: with more decimals where they would print the same.</summary>
    public static (string First, string Second) Pair(double first, double second, LengthUnit unit)
    {
        int decimals = Lengths.Decimals(unit);
        while (decimals < 9 && Math.Round(first, decimals) == Math.Round(second, decimals))
            decimals++;
        return (Length(first, unit, decimals), Length(second, unit, Lengths.Decimals(unit)));
    }

    /// <summary>Degrees without needless decimals.</summary>
    public static string Degrees(double value) =>
        value.ToString("0.##", CultureInfo.InvariantCulture) + (Math.Abs(value) == 1 ? " degree" : " degrees");

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Kind and name of an obstruction: shaft S1.</summary>
    public static string Named(Obstruction obstruction) => obstruction.Kind switch
    {
        ObstructionKind.Solid => "obstruction " + obstruction.Name,
        _ => obstruction.Kind.ToString().ToLowerInvariant() + " " + obstruction.Name,
    };

    /// <summary>The side to which a splayed hole's tip lies, for a person in front of the wall who faces it, and along the stations.</summary>
    public static string Side(Nail nail)
    {
        bool up = nail.Splay > 0;
        bool left = up == (nail.Wall.Side > 0);
        return (left ? "LEFT" : "RIGHT") + (up ? " (up-station)" : " (down-station)");
    }

    private static string Length(double value, LengthUnit unit, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("F" + decimals, CultureInfo.InvariantCulture)
        + " " + Lengths.Symbol(unit);
}
