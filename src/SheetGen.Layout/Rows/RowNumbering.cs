using SheetGen.Model.Results;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Numbers of a section's rows: whole for grid rows; a part row takes the number of the grid row above and, in tenths, how far it
/// lies down to the next (hundredths where tenths would repeat), so that a new part row renames nothing.
/// </summary>
internal static class RowNumbering
{
    /// <summary>The number of each row. A part row for which none of 99 is left between two grid rows has none: it is left out, and cover tells it.</summary>
    public static Dictionary<RowHeads, RowNumber> Of(IReadOnlyList<RowHeads> rows)
    {
        var numbers = new Dictionary<RowHeads, RowNumber>();
        var taken = new Dictionary<int, double>();
        foreach (IGrouping<Bay, RowHeads> bay in rows.GroupBy(r => r.Bay))
        {
            RowHeads[] grid = [.. bay.Where(r => !r.IsPart).OrderBy(r => r.GridRow)];
            foreach (RowHeads row in bay.OrderByDescending(r => r.Level))
            {
                if ((row.IsPart ? PartNumber(row, grid, taken) : RowNumber.Grid(row.GridRow)) is { } number)
                    numbers[row] = number;
            }
        }
        return numbers;
    }

    private static RowNumber? PartNumber(RowHeads row, RowHeads[] grid, Dictionary<int, double> taken)
    {
        double spacing = row.Bay.Section.VerticalSpacing;
        double level = Comparable(row);
        RowHeads? above = grid.LastOrDefault(g => Comparable(g) > level);
        RowHeads? below = grid.FirstOrDefault(g => Comparable(g) <= level);
        double top, gap;
        int whole;
        if (above is not null)
        {
            whole = above.GridRow;
            top = Comparable(above);
            gap = below is not null ? (top - Comparable(below)) / (below.GridRow - whole) : spacing;
        }
        else
        {
            whole = (below?.GridRow ?? 1) - 1;
            top = below is not null ? Comparable(below) + spacing : row.Bay.HighestTop.Number;
            gap = spacing;
        }
        double share = Math.Clamp((top - level) / gap, 0.01, 0.99);
        int tenths = Math.Clamp((int)Math.Round(share * 10), 1, 9) * 10;
        foreach (int fraction in Fractions(tenths, (int)Math.Round(share * 100)))
        {
            int hundredths = whole * 100 + fraction;
            if (!taken.TryGetValue(hundredths, out double other) || Math.Abs(other - row.Level) < Tolerance.Rounding)
            {
                taken[hundredths] = row.Level;
                return new RowNumber(hundredths);
            }
        }
        return null;
    }

    /// <summary>Levels of rows that follow the top are compared as elevations at the bay's highest top.</summary>
    private static double Comparable(RowHeads row) =>
        row.IsLevel ? row.Level : row.Bay.Section.Rows == Model.RowKind.Parallel ? row.Level : (row.Bay.HighestTop + row.Level).Number;

    private static IEnumerable<int> Fractions(int tenths, int exact)
    {
        yield return tenths;
        for (int away = 0; away < 99; away++)
        {
            if (exact + away is > 0 and < 100)
                yield return exact + away;
            if (away > 0 && exact - away is > 0 and < 100)
                yield return exact - away;
        }
    }
}
