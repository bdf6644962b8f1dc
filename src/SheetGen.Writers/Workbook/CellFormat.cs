namespace SheetGen.Writers.Workbook;

/// <summary>How a number is shown. The stored value is never rounded.</summary>
internal enum CellFormat
{
    General,
    Whole,
    One,
    Two,
    Three,
    Four,
    Percent,
    Text,
}
