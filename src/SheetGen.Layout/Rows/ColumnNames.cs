namespace SheetGen.Layout.Rows;

/// <summary>
/// Column numbers of grid stations as printed in marks. Columns count over the legs of a section, up-station, each leg with as many as its
/// longest row has; a grid row's station has its own column, a part row's the nearest of the bay (with a letter where two share it).
/// </summary>
internal sealed class ColumnNames
{
    private readonly Dictionary<(Bay Bay, bool Moved), int> _before = [];

    public ColumnNames(IReadOnlyList<Bay> bays, IReadOnlyList<RowHeads> rows)
    {
        foreach (bool moved in (bool[])[false, true])
        {
            int sum = 0;
            foreach (Bay bay in bays)
            {
                _before[(bay, moved)] = sum;
                int atHalfHeight = GridStations.At(bay, bay.HalfHeight).OfRow(moved ? 2 : 1).Count;
                sum += rows.Where(r => r.Bay == bay && IsMoved(r) == moved).Select(r => r.Columns.Count).Append(atHalfHeight).Max();
            }
        }
    }

    public IReadOnlyList<ColumnName> Of(RowHeads row)
    {
        int before = _before[(row.Bay, IsMoved(row))];
        var used = new Dictionary<int, int>();
        var names = new List<ColumnName>();
        foreach (Along place in row.Places)
        {
            int nearest = 0;
            for (int i = 1; i < row.Columns.Count; i++)
            {
                if (Math.Abs(row.Columns[i] - place) < Math.Abs(row.Columns[nearest] - place) - Tolerance.Rounding)
                    nearest = i;
            }
            int number = before + nearest + 1;
            int again = used.GetValueOrDefault(number);
            used[number] = again + 1;
            names.Add(new ColumnName(number, again));
        }
        return names;
    }

    private static bool IsMoved(RowHeads row) => !row.IsPart && row.Bay.Section.Pattern == Model.Pattern.Staggered && row.GridRow % 2 == 0;
}
