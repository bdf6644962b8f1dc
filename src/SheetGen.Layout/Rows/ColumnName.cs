using System.Globalization;

namespace SheetGen.Layout.Rows;

/// <summary>A grid column as printed in marks: its number in two digits, with a letter for every further place of a row at it (07, 07a, 07b).</summary>
/// <param name="Number">The grid column, from 1.</param>
/// <param name="Further">0 for the column itself, 1 for the first further place at it, and so on.</param>
internal readonly record struct ColumnName(int Number, int Further)
{
    private const int Letters = 26;

    public override string ToString() => Number.ToString("00", CultureInfo.InvariantCulture) + Letter(Further);

    /// <summary>a to z, then aa, ab and so on; nothing for 0.</summary>
    private static string Letter(int further) =>
        further == 0 ? "" : Letter((further - 1) / Letters) + (char)('a' + (further - 1) % Letters);
}
