namespace SheetGen.Layout.Placing;

/// <summary>Solves stretches of rows with everything outside them standing as it is.</summary>
public static class StretchSolver
{
    /// <summary>Grid stations on each side of a trouble that are solved with it, so that neighbours can make room.</summary>
    public const int Margin = 3;

    private const int Looks = 60_000;
    private const int FewPerChoice = 12;

    /// <summary>A stretch with its new nails; null nails where no chain was found.</summary>
    public sealed record Solution(int First, int Last, IReadOnlyList<Placed> Nails, Cost Old, Cost New);

    /// <summary>
    /// The cheapest nails of the stretch around some grid stations. Where the outermost nails change, the stretch grows, so that it
    /// ends where the row is undisturbed.
    /// </summary>
    public static Solution? Solve(RowState state, int first, int last, PlacedIndex others)
    {
        RowTask row = state.Row;
        first = Math.Max(0, first - Margin);
        last = Math.Min(row.Count - 1, last + Margin);
        while (true)
        {
            List<Placed>? nails = Path(state, first, last, others);
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

    private static bool IsChanged(RowState state, List<Placed> nails, int label)
    {
        Placed[] now = [.. nails.Where(n => n.Choice.Label == label)];
        Placed[] old = [.. state.Between(label, label)];
        return now.Length != 1 || old.Length != 1 || now[0].Choice != old[0].Choice || now[0].Turning != old[0].Turning;
    }

    private static List<Placed>? Path(RowState state, int first, int last, PlacedIndex others)
    {
        List<Placed> own = [.. state.Between(first, last)];
        foreach (Placed nail in own)
            others.Remove(nail);
        var stretch = new RowStretch(
            first, last, state.Before(first), state.After(last), false, false, others, state.PlainOnly);
        var path = new RowPath(state.Row, stretch);
        List<Placed>? nails = path.Cheapest(Looks, int.MaxValue, true, out _)
            ?? path.Cheapest(10 * Looks, FewPerChoice, true, out _);
        foreach (Placed nail in own)
            others.Add(nail);
        return nails;
    }

    /// <summary>A proven lower limit of what a stretch of a row costs, whatever stands beside it and in other rows.</summary>
    public static Cost LowerLimit(RowTask row, int first, int last, Cost found)
    {
        var stretch = new RowStretch(first, last, null, null, first > 0, last < row.Count - 1, null, new HashSet<int>());
        var path = new RowPath(row, stretch);
        if (SameFigures(path.Limit, found))
            return path.Limit;
        path.Cheapest(Looks, int.MaxValue, false, out Cost limit);
        return limit.IsInfinite ? default : limit;
    }

    public static bool SameFigures(Cost a, Cost b) =>
        a.Unresolved == b.Unresolved && a.Noted == b.Noted && a.Effort == b.Effort;
}
