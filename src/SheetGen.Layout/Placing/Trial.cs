namespace SheetGen.Layout.Placing;

/// <summary>
/// The one transaction of the search. Whatever is put into slots is tried: it is kept as a whole where it breaks cover at no more stations
/// and is better (or no worse, where the move is sideways), else every slot stands again as it did.
/// </summary>
internal sealed class Trial(LayoutState layout, CoverWatch cover)
{
    private readonly List<Slot> _touched = [];

    public IReadOnlyList<Slot> Touched => _touched;

    /// <summary>What the touched slots cost now, less what they cost before.</summary>
    public Cost Change
    {
        get
        {
            Cost change = default;
            foreach (Slot slot in _touched)
                change += slot.Cost - Slot.CostOf(slot.Before!);
            return change;
        }
    }

    public void Put(Slot slot, Placed[] nails)
    {
        if (slot.Before is null)
        {
            slot.Before = slot.Nails;
            _touched.Add(slot);
        }
        slot.Nails = nails;
    }

    public void Free(Slot slot) => Put(slot, []);

    /// <summary>Ends the trial: keeps what stands or undoes all of it.</summary>
    /// <param name="orEqual">True to keep also what is neither better nor worse.</param>
    /// <returns>Under 0 where it was kept and is better, 0 where it is equal, over 0 where it was worse; kept or undone.</returns>
    public int End(bool orEqual)
    {
        int order = Compare(default);
        if (order < 0 || (order == 0 && orEqual))
            Close();
        else
            Undo();
        return order;
    }

    /// <summary>Keeps what stands, whatever it costs.</summary>
    public void Accept() => Close();

    public void Undo()
    {
        foreach (Slot slot in _touched)
            slot.Nails = slot.Before!;
        Close();
    }

    private void Close()
    {
        foreach (Slot slot in _touched)
            slot.Before = null;
        _touched.Clear();
    }

    /// <summary>Cover against what it was before the trial, then its cost against what it may cost more than before.</summary>
    /// <returns>Over 0 where it is not to be kept.</returns>
    public int Compare(Cost most)
    {
        int cost = Change.CompareTo(most);
        Slot[] moved = [.. _touched.Where(HasMoved)];
        if (moved.Length == 0)
            return cost;
        if ((cost > 0 && !cover.IsBrokenAt(moved)) || !moved.All(FitsInRow))
            return 1;
        int covered = cover.Compare(moved);
        return covered != 0 ? covered : cost;
    }

    private static bool HasMoved(Slot slot)
    {
        Placed[] before = slot.Before!, now = slot.Nails;
        if (before.Length != now.Length)
            return true;
        for (int i = 0; i < now.Length; i++)
        {
            if (now[i].Choice != before[i].Choice)
                return true;
        }
        return false;
    }

    /// <summary>True where the gaps on both sides of a slot's nails are allowed; a pinned nail stands whatever its gaps are.</summary>
    private bool FitsInRow(Slot slot)
    {
        RowState row = layout.Rows[slot.Row.Index];
        HeadChoice? before = row.Before(slot.Ordinal), after = row.After(slot.Ordinal);
        if (slot.Nails.Length == 0)
            return slot.Row.FitsAsNeighbours(before, after);
        for (int i = 0; i < slot.Nails.Length; i++)
        {
            HeadChoice choice = slot.Nails[i].Choice;
            if (slot.Nails[i].IsUnresolved && !choice.IsAtGrid)
                return false;
            HeadChoice? next = i + 1 < slot.Nails.Length ? slot.Nails[i + 1].Choice : after;
            if (!slot.Row.FitsAsNeighbours(before, choice) || !slot.Row.FitsAsNeighbours(choice, next))
                return false;
            before = choice;
        }
        return true;
    }
}
