namespace SheetGen.Layout.Placing;

/// <summary>A stretch of a row takes the nails that would be best were its row the only one; what they run into is put back elsewhere.</summary>
internal sealed class RowAlone(District district)
{
    private readonly Insertion _insertion = new(district);
    private readonly List<Placed> _hits = [];

    public bool Propose(StretchLimit limit)
    {
        (RowTask row, int first, int last) = limit.Where;
        IReadOnlyList<Slot> slots = district.Layout.Rows[row.Index].Slots;
        for (int label = first; label <= last; label++)
        {
            if (slots[label].District != district.Number)
                return false;
            district.Trial.Free(slots[label]);
        }
        _hits.Clear();
        foreach (Placed nail in limit.Alone.Where(n => !n.IsUnresolved))
            district.Layout.AddHits(slots[nail.Choice.Label], nail.Hole, _hits);
        _insertion.Clear();
        foreach (Slot hit in _hits.Where(h => !h.IsUnresolved).Select(district.Layout.SlotOf).Distinct())
        {
            if (!district.May(hit))
                return false;
            _insertion.Take(hit);
        }
        foreach (IGrouping<int, Placed> station in limit.Alone.GroupBy(n => n.Choice.Label))
            district.Trial.Put(slots[station.Key], [.. station]);
        return _insertion.PutBack(Insertion.Order.FewestFirst, 0, 0, int.MaxValue);
    }
}
