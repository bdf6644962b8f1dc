namespace SheetGen.Writers.Workbook;

/// <summary>A cell that leads to another one of the workbook.</summary>
/// <param name="Target">Where it leads, as a formula would refer to it.</param>
internal readonly record struct SheetLink(string Cell, string Target);
