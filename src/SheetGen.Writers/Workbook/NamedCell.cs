namespace SheetGen.Writers.Workbook;

/// <summary>A name of the workbook for a cell.</summary>
internal readonly record struct NamedCell(string Name, string Reference);
