using System.Globalization;

namespace SheetGen.ProjectFile.Forms.Xlsx;

/// <summary>Addresses such as B7 as row and column, which count from 1.</summary>
internal static class CellPlace
{
    private const int MostRows = 1_048_576, MostColumns = 16_384;

    /// <exception cref="FormatException">It is none.</exception>
    public static (int Row, int Column) Of(string address)
    {
        string plain = address.Replace("$", "", StringComparison.Ordinal);
        int letters = 0, column = 0;
        while (letters < plain.Length && letters < 4 && char.IsAsciiLetter(plain[letters]))
            column = column * 26 + char.ToUpperInvariant(plain[letters++]) - 'A' + 1;
        return column is < 1 or > MostColumns ? throw new FormatException("no column") : (Row(plain[letters..]), column);
    }

    /// <exception cref="FormatException">It is none.</exception>
    public static int Row(string number) =>
        int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int row) && row is >= 1 and <= MostRows ? row : throw new FormatException("no row");
}
