namespace SheetGen.Model.Results;

/// <summary>A table as it is printed: the same texts stand on the sheets, in the workbook and in the table files.</summary>
/// <param name="Title">Heading of the table.</param>
/// <param name="Columns">Heads, with the unit in them.</param>
/// <param name="Rows">Texts of the cells; every row has as many as there are columns.</param>
public sealed record TableData(string Title, IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);
