namespace SheetGen.Writers.Workbook;

/// <summary>A bar chart over cells of the workbook.</summary>
/// <param name="Title">What it shows, with units.</param>
/// <param name="Categories">Cells with the names of the bars.</param>
/// <param name="Values">Cells with their lengths.</param>
/// <param name="Known">Names and lengths as stored, for readers that compute nothing.</param>
/// <param name="IsHorizontal">True where the bars lie, so that long names can be read.</param>
/// <param name="FirstColumn">Column, from 0, and row, from 1, of its upper left cell; the lower right cell is excluded.</param>
internal sealed record SheetChart(
    string Title, string AxisTitle, string Categories, string Values, IReadOnlyList<(string Name, double? Value)> Known, bool IsHorizontal,
    string Format, int FirstColumn, int FirstRow, int EndColumn, int EndRow);
