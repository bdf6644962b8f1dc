namespace SheetGen.Writers.Workbook;

/// <summary>What a user may enter in a cell: a number between two limits, or nothing.</summary>
internal readonly record struct InputRule(string Cells, double Least, double Greatest, string Message);
