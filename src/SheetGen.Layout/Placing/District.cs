namespace SheetGen.Layout.Placing;

/// <summary>
/// A part of the wall that is searched by itself while all around it stands still: its slots, the one trial that changes them and the random
/// numbers that choose. Districts that cannot come near each other may be searched at the same time.
/// </summary>
internal sealed class District
{
    private readonly CoverWatch _cover;
    private readonly ulong _seed;

    internal District(LayoutState layout, CoverWatch cover, int number, IReadOnlyList<Slot> slots, ulong seed)
    {
        _cover = cover;
        _seed = seed;
        Layout = layout;
        Number = number;
        Slots = slots;
        Trial = new Trial(layout, cover);
        Random = new SplitMix(seed);
    }

    /// <summary>The same slots in a layout of their own, with other random numbers.</summary>
    /// <param name="start">Number of the copy.</param>
    internal District Copy(int start)
    {
        LayoutState copy = Layout.Copy(Slots);
        return new District(copy, _cover.Of(copy), Number, [.. Slots.Select(s => copy.Slots[s.Index])], _seed + ((ulong)(start + 1) << 48));
    }

    /// <summary>Some of its slots as a district of their own, until they are given back.</summary>
    /// <param name="number">No other district's.</param>
    internal District Part(IReadOnlyList<Slot> slots, int number)
    {
        foreach (Slot slot in slots)
            slot.District = number;
        return new District(Layout, _cover, number, slots, _seed + 1);
    }

    /// <summary>Takes back what a part was made of.</summary>
    internal void TakeBack(District part)
    {
        foreach (Slot slot in part.Slots)
            slot.District = Number;
        Work += part.Work;
    }

    public LayoutState Layout { get; }

    public int Number { get; }

    /// <summary>Directions looked at so far: what the search spends its time on, counted so that a limit of it gives the same layout everywhere.</summary>
    public long Work { get; set; }

    public IReadOnlyList<Slot> Slots { get; }

    public Trial Trial { get; }

    internal SplitMix Random { get; }

    public Cost Cost => Slots.Aggregate(default(Cost), (sum, slot) => sum + slot.Cost);

    /// <summary>True for a slot that may be changed: of this district, and not pinned.</summary>
    public bool May(Slot slot) => slot.District == Number && !slot.IsPinned;

    /// <summary>The grid stations of a row that lie in the district around one of them.</summary>
    public (int First, int Last) RangeAround(Slot slot)
    {
        IReadOnlyList<Slot> row = Layout.Rows[slot.Row.Index].Slots;
        int first = slot.Ordinal, last = slot.Ordinal;
        while (first > 0 && row[first - 1].District == Number)
            first--;
        while (last + 1 < row.Count && row[last + 1].District == Number)
            last++;
        return (first, last);
    }
}
