namespace SheetGen.Layout.Placing;

/// <summary>The best layout of every row as if it were the only one, and what each row costs at least; rows may be solved side by side.</summary>
public static class RowsAlone
{
    private const long QuickLooks = 100_000;
    private const long ProvingLooks = 100_000_000;

    /// <summary>Puts every row's best nails into its state.</summary>
    /// <returns>Proven lower limits of the stretches that are not plain, which lie beside each other: their sum is one of the whole.</returns>
    public static IReadOnlyList<StretchLimit> Solve(IReadOnlyList<RowState> rows, bool prove)
    {
        var limits = new List<StretchLimit>[rows.Count];
        Parallel.For(0, rows.Count, i => limits[i] = Solve(rows[i], prove ? ProvingLooks : QuickLooks));
        return [.. limits.SelectMany(l => l)];
    }

    private static List<StretchLimit> Solve(RowState state, long looks)
    {
        var own = new PlacedIndex(LayoutState.CellSize(state.Row.LongestNail));
        foreach (Placed nail in state.Nails)
            own.Add(nail);
        var limits = new List<StretchLimit>();
        int after = -1;
        foreach ((int first, int last) in Troubles.Alone(state))
        {
            if (last <= after)
                continue;
            if (StretchSolver.Solve(state, first, last, own) is not { } solution)
            {
                LeaveBlocked(state, first, last, own);
                continue;
            }
            (int start, int end) = (solution.Stretch.First, solution.Stretch.Last);
            state.Replace(start, end, solution.Nails, own);
            int from = Math.Max(after + 1, start);
            if (from <= end)
                limits.Add(StretchSolver.LowerLimit(new StretchOfRow(state.Row, from, end), [.. state.Between(from, end)], looks));
            after = end;
        }
        return limits;
    }

    /// <summary>Where no chain fits at all, the grid stands and what is blocked is left unresolved.</summary>
    private static void LeaveBlocked(RowState state, int first, int last, PlacedIndex own)
    {
        var nails = new List<Placed>();
        for (int label = first; label <= last; label++)
        {
            HeadChoice choice = state.Row.GridChoice(label);
            nails.Add(Placed.At(state.Row, choice, choice.Turnings[0], !state.Row.IsFree(choice, 0)));
        }
        state.Replace(first, last, nails, own);
    }
}
