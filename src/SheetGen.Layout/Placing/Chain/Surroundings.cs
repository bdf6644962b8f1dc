namespace SheetGen.Layout.Placing;

/// <summary>What stands beside the nails that are solved.</summary>
/// <param name="Layout">The nails placed so far; null for a bound.</param>
/// <param name="Prices">What holes are charged for passing through places in the ground.</param>
internal sealed record Surroundings(LayoutState? Layout, IReadOnlyList<Price> Prices)
{
    /// <summary>Nothing beside them at all.</summary>
    public static Surroundings Empty { get; } = Charged([]);

    /// <summary>Nothing beside them, but charges for places in the ground.</summary>
    public static Surroundings Charged(IReadOnlyList<Price> prices) => new(null, prices);

    /// <summary>All nails that stand.</summary>
    public static Surroundings Of(LayoutState layout) => new(layout, []);

    /// <summary>What a nail at a place may be charged.</summary>
    public Price[] PricesNear(RowTask row, HeadChoice choice) => choice.IsPinned
        ? []
        : [.. Prices.Where(p => p.Charge > default(Cost) && (p.Center - choice.Point).Length <= row.LongestNail + p.Radius)];

    /// <summary>What a nail at a place may run into, nearest heads first.</summary>
    public Placed[] Near(RowTask row, HeadChoice choice)
    {
        if (Layout is null || choice.IsPinned)
            return [];
        var near = new List<Placed>();
        Layout.AddAround(Layout.Rows[row.Index].Slots[choice.Ordinal], row.FreeOf(choice).Reach, near);
        return [.. near];
    }
}
