namespace SheetGen.ProjectFile.Forms.Xlsx;

/// <summary>Kind of what a cell holds.</summary>
internal enum CellKind
{
    Text,
    Number,
    Flag,

    /// <summary>A number that is shown as a date or a time.</summary>
    Date,

    /// <summary>An error value such as #REF!.</summary>
    Fault,

    /// <summary>A formula whose result is not in the file.</summary>
    NoResult,
}

/// <summary>A cell that holds something; row and column count from 1.</summary>
/// <param name="Text">The text, the number as a spreadsheet shows it, true or false, or the date.</param>
internal readonly record struct GridCell(int Row, int Column, CellKind Kind, string Text);

/// <summary>A sheet of a workbook: its cells that hold something, by row and column, and the areas that are merged into one cell.</summary>
internal sealed record GridSheet(string Name, IReadOnlyList<IReadOnlyList<GridCell>> Rows, IReadOnlyList<(int FirstRow, int FirstColumn, int LastRow, int LastColumn)> Merged);
