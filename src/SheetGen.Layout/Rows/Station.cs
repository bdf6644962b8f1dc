using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The internal station of a place: its distance along the layout line, counted on from the start's station. What is printed of it may jump at
/// station equations; that is a matter of <see cref="Model.Stationing"/>.
/// </summary>
/// <param name="Number">The station without its plus, in project units.</param>
internal readonly record struct Station(double Number) : IComparable<Station>
{
    /// <summary>Length from one station to another along the line, positive up-station.</summary>
    public static double operator -(Station to, Station from) => to.Number - from.Number;

    /// <summary>Rounded to the unit's quantum.</summary>
    public Station Rounded(LengthUnit unit) => new(Lengths.RoundToQuantum(Number, unit));

    public int CompareTo(Station other) => Number.CompareTo(other.Number);
}
