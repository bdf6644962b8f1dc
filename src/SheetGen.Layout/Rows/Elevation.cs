using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>An elevation. Heights between elevations, and depths below a profile, are plain numbers.</summary>
/// <param name="Number">The elevation in project units.</param>
internal readonly record struct Elevation(double Number) : IComparable<Elevation>
{
    /// <summary>Height of one elevation above another.</summary>
    public static double operator -(Elevation upper, Elevation lower) => upper.Number - lower.Number;

    public static Elevation operator +(Elevation elevation, double height) => new(elevation.Number + height);

    public static Elevation operator -(Elevation elevation, double height) => new(elevation.Number - height);

    public static bool operator <(Elevation a, Elevation b) => a.Number < b.Number;

    public static bool operator >(Elevation a, Elevation b) => a.Number > b.Number;

    public static bool operator <=(Elevation a, Elevation b) => a.Number <= b.Number;

    public static bool operator >=(Elevation a, Elevation b) => a.Number >= b.Number;

    public static Elevation Min(Elevation a, Elevation b) => new(Math.Min(a.Number, b.Number));

    public static Elevation Max(Elevation a, Elevation b) => new(Math.Max(a.Number, b.Number));

    /// <summary>The elevation half way between two others.</summary>
    public static Elevation Middle(Elevation a, Elevation b) => new((a.Number + b.Number) / 2);

    /// <summary>Rounded to the unit's quantum.</summary>
    public Elevation Rounded(LengthUnit unit) => new(Lengths.RoundToQuantum(Number, unit));

    public int CompareTo(Elevation other) => Number.CompareTo(other.Number);
}
