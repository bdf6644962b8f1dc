using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Two lines of rows, on through corners, are searched as if no others stood; then these come back, where they can as they were, else by insertion.
/// Moves of a few nails do not find what two rows agree on while nails of others stand between theirs. What comes of it is mostly worse at first: it is
/// a start for a loop on a copy, no trial.
/// </summary>
internal sealed class RowsApart(District district)
{
    private const int Lines = 2;

    /// <summary>Spacings that the lines reach to each side of their seed.</summary>
    private const int Reach = 20;

    /// <summary>No district's number.</summary>
    private const int PartNumber = -1;

    private readonly Insertion _insertion = new(district);

    /// <param name="seed">An unresolved nail.</param>
    /// <param name="search">Searches the lines.</param>
    /// <returns>False where a row cannot be made whole: the district's copy is to be thrown away.</returns>
    public bool Run(Slot seed, Action<District> search)
    {
        Slot[] own = [.. district.Slots.Where(district.May)];
        Placed[][] before = Array.ConvertAll(own, s => s.Nails);
        HashSet<RowTask> rows = RowsAround(seed);
        Along along = seed.Grid.Head.Along;
        double reach = Reach * seed.Row.Bay.Section.HorizontalSpacing;
        bool[] isInside = Array.ConvertAll(own, s => rows.Contains(s.Row) && Math.Abs(s.Grid.Head.Along - along) <= reach);
        for (int i = 0; i < own.Length; i++)
        {
            // Nothing keeps clear of an unresolved nail; its head still covers what it did.
            if (!isInside[i])
                own[i].Nails = Array.ConvertAll(before[i], n => Placed.At(n.Row, n.Choice, n.Turning, isUnresolved: true));
        }
        District part = district.Part([.. own.Where((_, i) => isInside[i])], PartNumber);
        search(part);
        district.TakeBack(part);
        return BringBack([.. own.Zip(before).Where((_, i) => !isInside[i])]);
    }

    private HashSet<RowTask> RowsAround(Slot seed)
    {
        List<RowTask[]> lines = RowLines.Of(district.Layout.Rows.Select(r => r.Row));
        int line = lines.FindIndex(l => l.Contains(seed.Row)) - district.Random.Below(Lines);
        return [.. lines.Skip(Math.Clamp(line, 0, Math.Max(0, lines.Count - Lines))).Take(Lines).SelectMany(l => l)];
    }

    private bool BringBack((Slot Slot, Placed[] Before)[] outside)
    {
        foreach ((Slot slot, _) in outside)
            slot.Nails = [];
        _insertion.Clear();
        foreach ((Slot slot, Placed[] before) in outside)
        {
            if (Array.TrueForAll(before, n => !n.IsUnresolved && district.Layout.FirstHit(slot, n.Hole) is null))
                slot.Nails = before;
            else
                AddSeats(slot, before.Select(n => n.Choice));
        }
        bool isWhole = true;
        foreach (RowTask row in _insertion.PutBackAll())
        {
            _insertion.Clear();
            foreach ((Slot slot, _) in outside.Where(o => o.Slot.Row == row))
            {
                district.Trial.Free(slot);
                AddSeats(slot, [slot.Grid]);
            }
            _insertion.PutBackAll();
            isWhole &= IsWhole(district.Layout.Rows[row.Index]);
        }
        district.Trial.Accept();
        return isWhole;
    }

    private void AddSeats(Slot slot, IEnumerable<HeadChoice> choices)
    {
        foreach (HeadChoice choice in choices)
            _insertion.Add(slot, choice);
    }

    private static bool IsWhole(RowState row)
    {
        HeadChoice? before = null;
        foreach (Placed nail in row.Nails)
        {
            if (!row.Row.FitsAsNeighbours(before, nail.Choice))
                return false;
            before = nail.Choice;
        }
        return row.Row.FitsAsNeighbours(before, null);
    }
}
