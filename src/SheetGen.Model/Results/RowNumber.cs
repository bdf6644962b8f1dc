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

    /// <summary>
    /// The row's name as a crew calls it out: the number of a grid row; of a part row the number of the grid row above and a letter for
    /// the tenth of the way down to the next, A to J without I (3.4 is 3D), with a second letter for hundredths (3.45 is 3DE); K where there are no tenths (3.05 is 3KE).
    /// </summary>
    public string Name => Whole.ToString(CultureInfo.InvariantCulture) + (Hundredths / 10 % 10, Hundredths % 10) switch
    {
        (0, 0) => "",
        (var tenths, 0) => Letter(tenths),
        (0, var hundredths) => "K" + Letter(hundredths),
        var (tenths, hundredths) => Letter(tenths) + Letter(hundredths),
    };

    private static string Letter(int digit) => "ABCDEFGHJ"[digit - 1].ToString();

    public int CompareTo(RowNumber other) => Hundredths.CompareTo(other.Hundredths);

    public override string ToString() => (Hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture);
}
