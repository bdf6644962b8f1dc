namespace SheetGen.Layout.Placing;

/// <summary>What the stretches of all rows that are not plain cost at least, each as if its row were the only one.</summary>
internal static class RowsAlone
{
    private const long QuickLooks = 100_000;
    private const long ProvingLooks = 100_000_000;

    /// <summary>Limits of the layout's grid nails; rows are looked at side by side.</summary>
    /// <returns>
    /// The stretches lie beside each other and the grid stations between them cost nothing but their nails, so that the sum of their costs is
    /// a lower limit of the whole.
    /// </returns>
    public static IReadOnlyList<StretchLimit> Solve(LayoutState layout, bool prove)
    {
        StretchOfRow[] stretches = [.. layout.Rows.SelectMany(Stretches)];
        var limits = new StretchLimit[stretches.Length];
        Parallel.For(0, limits.Length, i => limits[i] = LowerLimit(stretches[i], prove ? ProvingLooks : QuickLooks));
        return limits;
    }

    private static IEnumerable<StretchOfRow> Stretches(RowState row)
    {
        int after = -1;
        foreach ((int first, int last) in Troubles.Alone(row))
        {
            int from = Math.Max(after + 1, first - ChainRebuild.Margin);
            after = Math.Min(row.Row.Count - 1, last + ChainRebuild.Margin);
            yield return new StretchOfRow(row.Row, from, after);
        }
    }

    /// <summary>A proven lower limit of what a stretch of a row costs, whatever stands beside it and in other rows.</summary>
    public static StretchLimit LowerLimit(StretchOfRow where, long looks = QuickLooks)
    {
        var search = new ChainSearch(new StretchNodes(RowStretch.Open(where)), Surroundings.Empty, where.Row.Bay.Rules.NailClearance);
        Chain? chain = search.Cheapest(false, looks);
        IReadOnlyList<Placed> nails = chain?.Nails ?? [];
        return chain is { IsExact: true } ? new StretchLimit(where, chain.Cost, nails) : new StretchLimit(where, search.Limit.IsInfinite ? default : search.Limit, nails);
    }
}
