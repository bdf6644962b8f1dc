namespace SheetGen.Drawing.Sheets;

/// <summary>A table to be drawn: title, column heads, rows of as many cells. Columns whose cells are numbers are set right.</summary>
public sealed record TableData(string Title, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    /// <summary>Line below the table; empty for none.</summary>
    public string Remark { get; init; } = "";
}
