namespace SheetGen.Writers.Workbook;

/// <summary>How a number is shown. The stored value is never rounded. Thousands are set apart where nothing else is said.</summary>
internal enum CellFormat
{
    General,
    Whole,
    One,
    Two,
    Three,
    Four,
    Six,

    /// <summary>Two decimals, thousands not set apart: elevations in feet, coordinates.</summary>
    PlainTwo,

    /// <summary>Three decimals, thousands not set apart: elevations in metres.</summary>
    PlainThree,

    /// <summary>12+34.56, of a plain number.</summary>
    StationFeet,

    /// <summary>1+234.567, of a plain number.</summary>
    StationMetres,

    /// <summary>Year, month, day.</summary>
    Date,
    Percent,
    Text,
}
