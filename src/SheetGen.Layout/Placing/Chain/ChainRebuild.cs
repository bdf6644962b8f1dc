namespace SheetGen.Layout.Placing;

/// <summary>Rebuilds freed slots by chain search, all others standing as they are.</summary>
internal static class ChainRebuild
{
    /// <summary>Grid stations on each side of a trouble that are solved with it, so that neighbours can make room.</summary>
    public const int Margin = 3;

    /// <summary>Pairs of nails looked at in one stretch before the best chain so far is taken.</summary>
    private const long Looks = 10_000;

    /// <summary>
    /// Puts the cheapest nails into the stretch around some grid stations of a row. Where the outermost nails change, the stretch grows, so
    /// that it ends where the row is undisturbed, or where the district ends.
    /// </summary>
    /// <returns>The stretch that was solved; null where no chain was found.</returns>
    public static (int First, int Last)? Stretch(District district, RowState row, int first, int last, Surroundings beside)
    {
        (int from, int to) = district.RangeAround(row.Slots[first]);
        first = Math.Max(from, first - Margin);
        last = Math.Min(to, last + Margin);
        while (true)
        {
            for (int ordinal = first; ordinal <= last; ordinal++)
                district.Trial.Free(row.Slots[ordinal]);
            if (Cheapest(row, first, last, beside) is not { } nails)
                return null;
            Put(district.Trial, row, first, last, nails);
            bool growFirst = first > from && HasChanged(row.Slots[first]), growLast = last < to && HasChanged(row.Slots[last]);
            if (!growFirst && !growLast)
                return (first, last);
            first = growFirst ? Math.Max(from, first - Margin - 1) : first;
            last = growLast ? Math.Min(to, last + Margin + 1) : last;
        }
    }

    private static IReadOnlyList<Placed>? Cheapest(RowState row, int first, int last, Surroundings beside)
    {
        var stretch = new RowStretch(new StretchOfRow(row.Row, first, last), row.Before(first), row.After(last), false, false);
        var search = new ChainSearch(new StretchNodes(stretch), beside, row.Row.Bay.Rules.NailClearance);
        return search.Cheapest(true, Looks)?.Nails;
    }

    private static void Put(Trial trial, RowState row, int first, int last, IReadOnlyList<Placed> nails)
    {
        ILookup<int, Placed> byOrdinal = nails.ToLookup(n => n.Choice.Ordinal);
        for (int ordinal = first; ordinal <= last; ordinal++)
            trial.Put(row.Slots[ordinal], [.. byOrdinal[ordinal]]);
    }

    private static bool HasChanged(Slot slot)
    {
        Placed[] now = slot.Nails, old = slot.Before!;
        return now.Length != 1 || old.Length != 1 || now[0].Choice != old[0].Choice || now[0].Turning != old[0].Turning;
    }
}
