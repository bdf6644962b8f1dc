namespace SheetGen.Layout.Placing;

/// <summary>The best nails of every stretch of a row as if the row were the only one, and what the stretch costs at least.</summary>
public static class RowsAlone
{
    private const long QuickLooks = 100_000;
    private const long ProvingLooks = 100_000_000;

    /// <summary>What each stretch that is not plain would be with its row alone; rows are solved side by side.</summary>
    /// <returns>
    /// The stretches lie beside each other and the grid stations between them cost nothing but their nails, so that the sum of their costs is
    /// a lower limit of the whole. The layout stands as before.
    /// </returns>
    public static IReadOnlyList<StretchLimit> Solve(LayoutState layout, CoverWatch cover, bool prove)
    {
        var limits = new List<StretchLimit>[layout.Rows.Count];
        foreach (Slot slot in layout.Slots)
            slot.District = slot.Row.Index;
        Parallel.For(0, limits.Length, i =>
        {
            var alone = new District(layout, cover, i, layout.Rows[i].Slots, 0);
            limits[i] = Solve(alone, layout.Rows[i], prove ? ProvingLooks : QuickLooks);
            alone.Trial.Undo();
        });
        return [.. limits.SelectMany(l => l)];
    }

    private static List<StretchLimit> Solve(District alone, RowState row, long looks)
    {
        var limits = new List<StretchLimit>();
        int after = -1;
        foreach ((int first, int last) in Troubles.Alone(row))
        {
            if (last <= after)
                continue;
            if (ChainRebuild.Stretch(alone, row, first, last, Surroundings.OfRow(alone.Layout)) is not { } solved)
                continue;
            (int start, int end) = solved;
            int from = Math.Max(after + 1, start);
            if (from <= end)
                limits.Add(LowerLimit(new StretchOfRow(row.Row, from, end), [.. row.Slots.Take(from..(end + 1)).SelectMany(s => s.Nails)], looks));
            after = end;
        }
        return limits;
    }

    /// <summary>A proven lower limit of what a stretch of a row costs, whatever stands beside it and in other rows.</summary>
    /// <param name="found">Nails of the stretch, of which the limit may turn out to be the cost.</param>
    private static StretchLimit LowerLimit(StretchOfRow where, IReadOnlyList<Placed> found, long looks)
    {
        (RowTask row, int first, int last) = where;
        Cost cost = RowState.CostOf(found, first, last);
        var search = new ChainSearch(new StretchPlaces(RowStretch.Open(where)), Surroundings.Empty, row.Bay.Rules.NailClearance);
        if (search.Limit.HasFiguresOf(cost))
            return new StretchLimit(where, search.Limit, found, found);
        return search.Cheapest(false, looks) is { IsExact: true } chain
            ? new StretchLimit(where, chain.Cost, chain.Nails, found)
            : new StretchLimit(where, search.Limit.IsInfinite ? default : search.Limit, found, found);
    }
}
