namespace SheetGen.Layout.Placing;

/// <summary>Solves stretches of rows with everything outside them standing as it is.</summary>
public static class StretchSolver
{
    /// <summary>Grid stations on each side of a trouble that are solved with it, so that neighbours can make room.</summary>
    public const int Margin = 3;

    /// <summary>Pairs of nails looked at in one stretch before the best chain so far is taken.</summary>
    public const long Looks = 30_000;

    /// <summary>A stretch with its new nails; null nails where no chain was found.</summary>
    public sealed record Solution(int First, int Last, IReadOnlyList<Placed> Nails, Cost Old, Cost New);

    /// <summary>
    /// The cheapest nails of the stretch around some grid stations. Where the outermost nails change, the stretch grows, so that it
    /// ends where the row is undisturbed.
    /// </summary>
    public static Solution? Solve(RowState state, int first, int last, PlacedIndex others, Negotiation? terms = null)
    {
        RowTask row = state.Row;
        first = Math.Max(0, first - Margin);
        last = Math.Min(row.Count - 1, last + Margin);
        while (true)
        {
            IReadOnlyList<Placed>? nails = Path(state, first, last, others, terms);
            if (nails is null)
                return null;
            bool growFirst = first > 0 && IsChanged(state, nails, first);
            bool growLast = last < row.Count - 1 && IsChanged(state, nails, last);
            if (!growFirst && !growLast)
                return new Solution(first, last, nails, RowState.CostOf(state.Between(first, last), first, last), RowState.CostOf(nails, first, last));
            first = growFirst ? Math.Max(0, first - Margin - 1) : first;
            last = growLast ? Math.Min(row.Count - 1, last + Margin + 1) : last;
        }
    }

    private static bool IsChanged(RowState state, IReadOnlyList<Placed> nails, int label)
    {
        Placed[] now = [.. nails.Where(n => n.Choice.Label == label)];
        Placed[] old = [.. state.Between(label, label)];
        return now.Length != 1 || old.Length != 1 || now[0].Choice != old[0].Choice || now[0].Turning != old[0].Turning;
    }

    private static IReadOnlyList<Placed>? Path(RowState state, int first, int last, PlacedIndex others, Negotiation? terms)
    {
        List<Placed> own = [.. state.Between(first, last)];
        foreach (Placed nail in own)
            others.Remove(nail);
        var stretch = new RowStretch(
            first, last, state.Before(first), state.After(last), false, false, others, state.PlainOnly, terms);
        var path = new RowPath(state.Row, stretch);
        IReadOnlyList<Placed>? nails = path.Cheapest(true, terms is null ? Looks : Looks / 3)?.Nails;
        foreach (Placed nail in own)
            others.Add(nail);
        return nails;
    }

    /// <summary>A proven lower limit of what a stretch of a row costs, whatever stands beside it and in other rows.</summary>
    public static Cost LowerLimit(RowTask row, int first, int last, Cost found, long looks)
    {
        var stretch = new RowStretch(first, last, null, null, first > 0, last < row.Count - 1, null, new HashSet<int>(), null);
        var path = new RowPath(row, stretch);
        if (SameFigures(path.Limit, found))
            return path.Limit;
        return path.Cheapest(false, looks) is { IsExact: true } chain ? chain.Cost : path.Limit.IsInfinite ? default : path.Limit;
    }

    public static bool SameFigures(Cost a, Cost b) =>
        a.Unresolved == b.Unresolved && a.Noted == b.Noted && a.Effort == b.Effort;
}
