namespace SheetGen.Layout.Placing;

/// <summary>What stands beside the nails that are solved.</summary>
/// <param name="Others">The nails placed so far; null for a bound.</param>
/// <param name="Stands">True for a nail of them that stands as it is, not solved itself nor taken out of the way.</param>
/// <param name="Terms">Terms on which a hole may run into a nail that stands; null where it may not.</param>
public sealed record Surroundings(PlacedIndex? Others, Func<Placed, bool> Stands, Negotiation? Terms)
{
    /// <summary>Nothing beside them at all.</summary>
    public static Surroundings Empty { get; } = new(null, _ => false, null);

    /// <summary>What a nail at a place may run into.</summary>
    public Placed[] Near(RowTask row, HeadChoice choice)
    {
        if (Others is null || choice.IsPinned)
            return [];
        double reach = row.LongestNail + row.Bay.Rules.NailClearance + row.Radius + row.Bay.Rules.Drift * row.LongestNail;
        return [.. Others.Around(choice.Point, reach).Where(n => !n.IsUnresolved && Stands(n))];
    }
}
