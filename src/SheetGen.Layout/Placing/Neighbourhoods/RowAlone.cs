namespace SheetGen.Layout.Placing;

/// <summary>A stretch of a row takes the nails that its limit was found with, as if its row were the only one; what they run into is put back elsewhere.</summary>
internal sealed class RowAlone(District district)
{
    private readonly Insertion _insertion = new(district);
    private readonly List<Placed> _hits = [];

    public bool Propose(StretchLimit limit)
    {
        (RowTask row, int first, int last) = limit.Where;
        if (limit.Nails.Count == 0 || RunIntoEachOther(limit.Nails))
            return false;
        IReadOnlyList<Slot> slots = district.Layout.Rows[row.Index].Slots;
        for (int ordinal = first; ordinal <= last; ordinal++)
        {
            if (slots[ordinal].District != district.Number)
                return false;
            district.Trial.Free(slots[ordinal]);
        }
        _hits.Clear();
        foreach (Placed nail in limit.Nails.Where(n => !n.IsUnresolved))
            district.Layout.AddHits(slots[nail.Choice.Ordinal], nail.Hole, _hits);
        _insertion.Clear();
        foreach (Slot hit in _hits.Where(h => !h.IsUnresolved).Select(district.Layout.SlotOf).Distinct())
        {
            if (!district.May(hit))
                return false;
            _insertion.Take(hit);
        }
        foreach (IGrouping<int, Placed> station in limit.Nails.GroupBy(n => n.Choice.Ordinal))
            district.Trial.Put(slots[station.Key], [.. station]);
        return _insertion.PutBack(Insertion.Order.FewestFirst, 0, 0, int.MaxValue);
    }

    /// <summary>True where nails that are not neighbours are too close: the limit looks at neighbours alone.</summary>
    private bool RunIntoEachOther(IReadOnlyList<Placed> nails)
    {
        for (int i = 0; i < nails.Count; i++)
        {
            for (int j = i + 1; j < nails.Count; j++)
            {
                if (!nails[i].IsUnresolved && !nails[j].IsUnresolved && district.Layout.AreTooClose(nails[i].Hole, nails[j].Hole))
                    return true;
            }
        }
        return false;
    }
}
