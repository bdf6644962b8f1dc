namespace SheetGen.Model.Results;

/// <summary>A column of a printed table.</summary>
/// <param name="Head">What stands over the column, with its unit.</param>
/// <param name="IsNumeric">True where the cells are numbers, which are aligned to the right.</param>
public sealed record TableColumn(string Head, bool IsNumeric);
