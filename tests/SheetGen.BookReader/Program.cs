using System.Globalization;
using ClosedXML.Excel;

// Lists every cell of a workbook as ClosedXML reads it: sheet, address, stored value; tabs between, a line a cell.
using var book = new XLWorkbook(args[0]);
using var output = new StreamWriter(Console.OpenStandardOutput());
foreach (IXLWorksheet sheet in book.Worksheets)
{
    foreach (IXLCell cell in sheet.CellsUsed())
    {
        object? value = cell.HasFormula ? cell.CachedValue : cell.Value;
        string text = Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
        output.Write($"{sheet.Name}\t{cell.Address}\t{text.ReplaceLineEndings(" ").Replace('\t', ' ')}\n");
    }
}
