namespace SheetGen.Layout.Rows;

/// <summary>A place on a layout line: its distance along the line from the line's start. Lengths between places are plain numbers.</summary>
/// <param name="Number">The distance in project units.</param>
internal readonly record struct Along(double Number) : IComparable<Along>
{
    /// <summary>Length from one place to another along the line, positive up-station.</summary>
    public static double operator -(Along to, Along from) => to.Number - from.Number;

    public static Along operator +(Along place, double length) => new(place.Number + length);

    public static Along operator -(Along place, double length) => new(place.Number - length);

    public static bool operator <(Along a, Along b) => a.Number < b.Number;

    public static bool operator >(Along a, Along b) => a.Number > b.Number;

    public static bool operator <=(Along a, Along b) => a.Number <= b.Number;

    public static bool operator >=(Along a, Along b) => a.Number >= b.Number;

    public static Along Min(Along a, Along b) => new(Math.Min(a.Number, b.Number));

    public static Along Max(Along a, Along b) => new(Math.Max(a.Number, b.Number));

    /// <summary>The place half way between two others.</summary>
    public static Along Middle(Along a, Along b) => new((a.Number + b.Number) / 2);

    public int CompareTo(Along other) => Number.CompareTo(other.Number);
}
