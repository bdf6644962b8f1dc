using System.Globalization;

namespace SheetGen.Writers.Workbook;

/// <summary>Addresses in A1 form. Columns count from 0, rows from 1.</summary>
internal static class CellAddress
{
    private static readonly string[] Usual = [.. Enumerable.Range(0, 702).Select(Spell)];

    public static string Letter(int column) => column < Usual.Length ? Usual[column] : Spell(column);

    private static string Spell(int column)
    {
        string letters = "";
        for (int c = column; c >= 0; c = c / 26 - 1)
            letters = (char)('A' + c % 26) + letters;
        return letters;
    }

    public static string Of(int column, int row) => Letter(column) + row.ToString(CultureInfo.InvariantCulture);

    public static string Absolute(string sheet, int column, int row) =>
        string.Create(CultureInfo.InvariantCulture, $"'{sheet}'!${Letter(column)}${row}");

    public static string Range(string sheet, int column, int from, int to) =>
        string.Create(CultureInfo.InvariantCulture, $"'{sheet}'!${Letter(column)}${from}:${Letter(column)}${to}");
}
