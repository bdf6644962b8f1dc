namespace SheetGen.Layout.Placing;

/// <summary>What the stretches of all rows cost at least, each for itself, and where the layout is there already.</summary>
internal sealed class StretchLimits
{
    private readonly LayoutState _layout;
    private readonly StretchLimit?[][] _at;

    public StretchLimits(LayoutState layout, IReadOnlyList<StretchLimit> all)
    {
        _layout = layout;
        All = all;
        _at = [.. layout.Rows.Select(r => new StretchLimit?[r.Slots.Count])];
        foreach (StretchLimit limit in all)
            Array.Fill(_at[limit.Where.Row.Index], limit, limit.Where.First, limit.Where.Last - limit.Where.First + 1);
        Sum = all.Aggregate(default(Cost), (sum, l) => sum + l.Cost);
    }

    private StretchLimits(StretchLimits other, LayoutState copy)
    {
        _layout = copy;
        _at = other._at;
        All = other.All;
        Sum = other.Sum;
    }

    /// <summary>The same of a copy of the layout.</summary>
    public StretchLimits Of(LayoutState copy) => new(this, copy);

    /// <summary>They lie beside each other.</summary>
    public IReadOnlyList<StretchLimit> All { get; }

    /// <summary>A lower limit of the whole layout.</summary>
    public Cost Sum { get; }

    /// <summary>True where the stretch of a slot costs no more than it must.</summary>
    public bool IsMet(Slot slot) => LimitAt(slot) is { } limit && limit.Cost.HasFiguresOf(CostNow(limit));

    /// <summary>True where the stretch of a slot has no more unresolved (or else noted) nails than it must.</summary>
    public bool IsMet(Slot slot, bool unresolved)
    {
        if (LimitAt(slot) is not { } limit)
            return false;
        Cost now = CostNow(limit);
        return now.Unresolved == limit.Cost.Unresolved && (unresolved || now.Noted <= limit.Cost.Noted);
    }

    /// <summary>What the stretch of a slot costs over its limit; of a slot without one, what the slot costs.</summary>
    public Cost Over(Slot slot) => LimitAt(slot) is { } limit ? CostNow(limit) - limit.Cost : slot.Cost;

    private StretchLimit? LimitAt(Slot slot) => _at[slot.Row.Index][slot.Ordinal];

    private Cost CostNow(StretchLimit limit) => _layout.Rows[limit.Where.Row.Index].CostOf(limit.Where.First, limit.Where.Last);
}
