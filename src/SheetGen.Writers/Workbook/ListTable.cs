namespace SheetGen.Writers.Workbook;

/// <summary>A list of a sheet as a table of the spreadsheet.</summary>
/// <param name="Name">Name in formulas.</param>
/// <param name="HeadRow">Row with the heads.</param>
/// <param name="RowCount">Rows below the heads, at least 1.</param>
/// <param name="Columns">Heads from the first column on, each with the formula that all its cells have; null where they have none.</param>
internal sealed record ListTable(string Name, int HeadRow, int RowCount, IReadOnlyList<(string Head, string? Formula)> Columns)
{
    /// <summary>The cells that it takes, heads included.</summary>
    public string Cells => CellAddress.Of(0, HeadRow) + ":" + CellAddress.Of(Columns.Count - 1, HeadRow + RowCount);

    /// <summary>A column's cells without its head, as a formula on any sheet refers to them.</summary>
    public static string Column(string table, string head) => IsPlain(head) ? $"{table}[{head}]" : $"{table}[[{Escaped(head)}]]";

    /// <summary>The cell of a column in the formula's own row.</summary>
    public static string ThisRow(string table, string head) => $"{table}[[#This Row],[{Escaped(head)}]]";

    private static bool IsPlain(string head) => head.All(c => char.IsAsciiLetterOrDigit(c) || c == ' ');

    /// <summary>The signs that have a meaning inside of such a reference follow an apostrophe.</summary>
    private static string Escaped(string head) =>
        string.Concat(head.Select(c => c is '\'' or '[' or ']' or '#' ? "'" + c : c.ToString()));
}
