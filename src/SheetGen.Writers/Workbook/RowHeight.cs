namespace SheetGen.Writers.Workbook;

/// <summary>Height of a row whose texts are large or take several lines, from our own count of characters a line.</summary>
internal static class RowHeight
{
    private const double Line = 14.5, DefaultWidth = 9, TitleLine = 21;

    /// <summary>Height in points; null where one line is enough.</summary>
    public static double? Of(SortedList<int, SheetCell> cells, IReadOnlyDictionary<int, double> widths)
    {
        int lines = 1;
        bool title = false;
        foreach ((int column, SheetCell cell) in cells)
        {
            if (cell.Style.Look is CellLook.Head or CellLook.Wrapped && cell.Text is { } text)
                lines = Math.Max(lines, Lines(text, 0.9 * widths.GetValueOrDefault(column, DefaultWidth) - 1));
            title |= cell.Style.Look == CellLook.Title;
        }
        return lines > 1 ? lines * Line + 1 : title ? TitleLine : null;
    }

    private static int Lines(string text, double perLine)
    {
        int lines = 1;
        double used = 0;
        foreach (string word in text.Split(' '))
        {
            if (used > 0 && used + 1 + word.Length > perLine)
            {
                lines++;
                used = 0;
            }
            lines += (int)((word.Length - 0.01) / Math.Max(1, perLine));
            used += (used > 0 ? 1 : 0) + word.Length;
        }
        return lines;
    }
}
