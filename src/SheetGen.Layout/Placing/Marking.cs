using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>Marks of the nails that a search has placed, and of grid stations that it left out.</summary>
internal static class Marking
{
    /// <summary>Marks of a row's nails, in the row's order.</summary>
    public static Dictionary<Placed, string> Of(this Marks names, RowState state)
    {
        var marks = new Dictionary<Placed, string>(ReferenceEqualityComparer.Instance);
        RowTask row = state.Row;
        Dictionary<int, int> next = row.Columns.Concat(row.LeftOutByHand.Select(l => l.Column))
            .GroupBy(c => c.Number).ToDictionary(g => g.Key, g => g.Max(c => c.Further) + 1);
        foreach (IGrouping<int, Placed> station in state.Nails.GroupBy(n => n.Choice.Ordinal))
        {
            ColumnName column = row.Columns[station.Key];
            Placed[] nails = [.. station.OrderBy(n => Math.Abs(n.Choice.Shift)).ThenBy(n => n.Choice.Shift)];
            marks[nails[0]] = names.Of(row.Bay, row.Number, column);
            foreach (Placed added in nails[1..])
                marks[added] = names.Of(row.Bay, row.Number, column with { Further = next[column.Number]++ });
        }
        return marks;
    }

    public static string OfStation(this Marks names, RowTask row, int ordinal) => names.Of(row.Bay, row.Number, row.Columns[ordinal]);
}
