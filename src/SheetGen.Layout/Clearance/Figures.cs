using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>How findings print figures, obstructions and turns.</summary>
internal static class Figures
{
    /// <summary>A length with its unit and the unit's decimals.</summary>
    public static string Length(double value, LengthUnit unit) =>
        PlainNumber.Fixed(Lengths.RoundToQuantum(value, unit), Lengths.Decimals(unit)) + " " + Lengths.Symbol(unit);

    /// <summary>A length that breaks a limit: "just under 0.50 ft" or "just over 2.50 ft" where rounding would hide on which side of it.</summary>
    public static string Beside(double value, double limit, LengthUnit unit)
    {
        string shown = Length(value, unit);
        if (value == limit || shown != Length(limit, unit))
            return shown;
        return (value < limit ? "just under " : "just over ") + shown;
    }

    /// <summary>How far something runs into or beyond something else; a length over 0 never reads as 0.</summary>
    public static string Depth(double value, LengthUnit unit) =>
        Lengths.RoundToQuantum(value, unit) == 0 ? "less than " + Length(Lengths.Quantum(unit), unit) : Length(value, unit);

    /// <summary>Degrees without needless decimals.</summary>
    public static string Degrees(double value) =>
        Number(value) + (Math.Abs(value) == 1 ? " degree" : " degrees");

    public static string Number(double value) => PlainNumber.Format(value, 0, 2);

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
}
