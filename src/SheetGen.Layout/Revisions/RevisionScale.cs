using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Revisions;

/// <summary>Figures of an old state in the unit of a new one, and when two of them are the same.</summary>
/// <param name="walls">Walls in the new unit, for the stations that they print.</param>
internal sealed class RevisionScale(LengthUnit old, LengthUnit @new, IReadOnlyList<Wall> walls)
{
    private readonly double _factor = Lengths.MetresPer(old) / Lengths.MetresPer(@new);

    public LengthUnit Unit => @new;

    public bool IsOneUnit => old == @new;

    /// <summary>An old length in the new unit.</summary>
    public double Length(double length) => IsOneUnit ? length : length * _factor;

    /// <summary>A station of the new unit as its wall prints it.</summary>
    public string StationText(string wall, double station) => walls.FirstOrDefault(w => w.Name == wall)?.TextOf(station, @new) ?? new PrintedStation(station).Text(@new);

    /// <summary>Half of each unit's rounding of stations, elevations and lengths; less than the rounding where both have one unit.</summary>
    private double Rounding => IsOneUnit ? Lengths.Quantum(@new) / 4 : (Length(Lengths.Quantum(old)) + Lengths.Quantum(@new)) / 2 * RevisionTolerance.OverRounding;

    /// <summary>True where an old length and a new one are equal.</summary>
    public bool IsSame(double before, double after) => Math.Abs(Length(before) - after) <= Rounding;

    public static bool IsSameAngle(double before, double after) => Math.Abs(before - after) < RevisionTolerance.SameAngle;

    public bool IsSameAmount(double before, double after) =>
        Math.Abs(before - after) <= (IsOneUnit ? Tolerance.Rounding : RevisionTolerance.SameConverted) * Math.Max(Math.Abs(before), Math.Abs(after)) + Tolerance.Rounding;

    /// <summary>Factor from an old unit of a quantity or pay item to a new one; null where the two measure different things or one is not known.</summary>
    public double? FactorOf(string before, string after)
    {
        if (before.Equals(after, StringComparison.OrdinalIgnoreCase))
            return 1;
        return PayUnit.Find(before) is { } a && PayUnit.Find(after) is { } b && a.Dimension == b.Dimension ? b.From(LengthUnit.Metre) / a.From(LengthUnit.Metre) : null;
    }
}
