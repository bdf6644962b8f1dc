using System.Globalization;

namespace SheetGen.Model.Results;

/// <summary>
/// Number of a row, counted from the top within a section: whole for grid rows, with a fraction for part rows
/// (3.5 between 3 and 4), 0 for verification test nails.
/// </summary>
public readonly record struct RowNumber(int Hundredths) : IComparable<RowNumber>
{
    public static RowNumber Grid(int row) => new(row * 100);

    /// <summary>The grid row next above (the row itself for a grid row); 0 above the first.</summary>
    public int Whole => Hundredths / 100;

    public bool IsPart => Hundredths % 100 != 0;

    public double Value => Hundredths / 100.0;

    public int CompareTo(RowNumber other) => Hundredths.CompareTo(other.Hundredths);

    public override string ToString() => (Hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture);
}
