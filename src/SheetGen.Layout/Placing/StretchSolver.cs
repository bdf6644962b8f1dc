namespace SheetGen.Layout.Placing;

/// <summary>Solves stretches of rows with everything outside them standing as it is. Solving changes nothing that it reads.</summary>
public static class StretchSolver
{
    /// <summary>Grid stations on each side of a trouble that are solved with it, so that neighbours can make room.</summary>
    public const int Margin = 3;

    /// <summary>Pairs of nails looked at in one stretch before the best chain so far is taken.</summary>
    public const long Looks = 30_000;

    /// <summary>A stretch with its new nails.</summary>
    public sealed record Solution(StretchOfRow Stretch, IReadOnlyList<Placed> Nails, Cost Old, Cost New)
    {
        public Cost Gain => New - Old;
    }

    /// <summary>
    /// The cheapest nails of the stretch around some grid stations; null where no chain was found. Where the outermost nails change,
    /// the stretch grows, so that it ends where the row is undisturbed.
    /// </summary>
    /// <param name="without">A stretch of another row whose nails are taken out of the way.</param>
    public static Solution? Solve(
        RowState state, int first, int last, PlacedIndex others, Negotiation? terms = null, StretchOfRow? without = null)
    {
        RowTask row = state.Row;
        first = Math.Max(0, first - Margin);
        last = Math.Min(row.Count - 1, last + Margin);
        while (true)
        {
            var where = new StretchOfRow(row, first, last);
            var stretch = new RowStretch(where, state.Before(first), state.After(last), false, false, state.PlainOnly);
            var beside = new Surroundings(others, nail => !where.Holds(nail) && without?.Holds(nail) != true, terms, []);
            var search = new ChainSearch(new StretchPlaces(stretch), beside, row.Bay.Rules.NailClearance);
            if (search.Cheapest(true, terms is null ? Looks : Looks / 3)?.Nails is not { } nails)
                return null;
            bool growFirst = first > 0 && IsChanged(state, nails, first);
            bool growLast = last < row.Count - 1 && IsChanged(state, nails, last);
            if (!growFirst && !growLast)
            {
                return new Solution(where, nails, RowState.CostOf(state.Between(first, last), first, last), RowState.CostOf(nails, first, last));
            }
            first = growFirst ? Math.Max(0, first - Margin - 1) : first;
            last = growLast ? Math.Min(row.Count - 1, last + Margin + 1) : last;
        }
    }

    /// <summary>A proven lower limit of what a stretch of a row costs, whatever stands beside it and in other rows.</summary>
    /// <param name="found">Nails of the stretch, of which the limit may turn out to be the cost.</param>
    public static StretchLimit LowerLimit(StretchOfRow where, IReadOnlyList<Placed> found, long looks)
    {
        (RowTask row, int first, int last) = where;
        Cost cost = RowState.CostOf(found, first, last);
        var search = new ChainSearch(new StretchPlaces(RowStretch.Open(where)), Surroundings.Empty, row.Bay.Rules.NailClearance);
        if (SameFigures(search.Limit, cost))
            return new StretchLimit(where, search.Limit, found);
        return search.Cheapest(false, looks) is { IsExact: true } chain
            ? new StretchLimit(where, chain.Cost, chain.Nails)
            : new StretchLimit(where, search.Limit.IsInfinite ? default : search.Limit, found);
    }

    public static bool SameFigures(Cost a, Cost b) =>
        a.Unresolved == b.Unresolved && a.Noted == b.Noted && a.Effort == b.Effort;

    private static bool IsChanged(RowState state, IReadOnlyList<Placed> nails, int label)
    {
        Placed[] now = [.. nails.Where(n => n.Choice.Label == label)];
        IReadOnlyList<Placed> old = state.At(label);
        return now.Length != 1 || old.Count != 1 || now[0].Choice != old[0].Choice || now[0].Turning != old[0].Turning;
    }
}
