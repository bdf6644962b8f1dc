namespace SheetGen.Layout.Placing;

/// <summary>
/// For each direction of a word up to two nails that it is too close to. That stays true whatever else moves, so while one of them stands the
/// direction need not be tested again. Two threads may write at once: what one of them adds may be lost or stand twice, never wrong.
/// </summary>
internal sealed class InWay
{
    private readonly Placed?[] _last = new Placed?[FreeDirections.WordSize];
    private readonly Placed?[] _earlier = new Placed?[FreeDirections.WordSize];

    /// <summary>Those of a direction's two nails that stand in a layout, never the same one twice; both null where it is to be tested.</summary>
    public (Placed? Last, Placed? Earlier) Standing(int bit, LayoutState layout)
    {
        Placed? last = _last[bit], earlier = _earlier[bit];
        // Another thread may have moved it on between the two looks: counted twice it would weigh twice, and the layout would depend on who was first.
        if (ReferenceEquals(earlier, last))
            earlier = null;
        return (last is not null && layout.Stands(last) ? last : null, earlier is not null && layout.Stands(earlier) ? earlier : null);
    }

    public bool IsBlocked(int bit, LayoutState layout) =>
        (_last[bit] is { } last && layout.Stands(last)) || (_earlier[bit] is { } earlier && layout.Stands(earlier));

    /// <summary>The one before may stand again, so it is kept beside the new one.</summary>
    public void Add(int bit, Placed nail)
    {
        if (!ReferenceEquals(_last[bit], nail))
            (_last[bit], _earlier[bit]) = (nail, _last[bit]);
    }
}
