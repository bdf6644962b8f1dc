namespace SheetGen.Layout.Placing;

/// <summary>What stands beside the nails that are solved.</summary>
/// <param name="Others">The nails placed so far; null for a bound.</param>
/// <param name="Stands">True for a nail of them that stands as it is, not solved itself nor taken out of the way.</param>
/// <param name="Terms">Terms on which a hole may run into a nail that stands; null where it may not.</param>
/// <param name="Prices">What holes are charged for passing through places in the ground.</param>
public sealed record Surroundings(PlacedIndex? Others, Func<Placed, bool> Stands, Negotiation? Terms, IReadOnlyList<Price> Prices)
{
    /// <summary>Nothing beside them at all.</summary>
    public static Surroundings Empty { get; } = Charged([]);

    /// <summary>Nothing beside them, but charges for places in the ground.</summary>
    public static Surroundings Charged(IReadOnlyList<Price> prices) => new(null, _ => false, null, prices);

    /// <summary>What a nail at a place may be charged.</summary>
    public Price[] PricesNear(RowTask row, HeadChoice choice) => choice.IsPinned
        ? []
        : [.. Prices.Where(p => p.Charge > default(Cost) && (p.Center - choice.Point).Length <= row.LongestNail + p.Radius)];

    /// <summary>What a nail at a place may run into.</summary>
    public Placed[] Near(RowTask row, HeadChoice choice)
    {
        if (Others is null || choice.IsPinned)
            return [];
        double reach = row.LongestNail + row.Bay.Rules.NailClearance + row.Radius + row.Bay.Rules.Drift * row.LongestNail;
        return [.. Others.Around(choice.Point, reach).Where(n => !n.IsUnresolved && Stands(n))];
    }
}
