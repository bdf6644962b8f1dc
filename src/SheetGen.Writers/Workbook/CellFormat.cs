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
    Six,

    /// <summary>Money: thousands apart, two decimals.</summary>
    Money,
    Percent,
    Text,
}
