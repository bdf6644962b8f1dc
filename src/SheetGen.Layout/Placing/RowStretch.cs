namespace SheetGen.Layout.Placing;

/// <summary>A stretch of a row that is solved at once: grid stations First to Last, and what stands beside it.</summary>
/// <param name="Before">The nail before the stretch; null at the row's start or where the start is open.</param>
/// <param name="After">The nail after it; null at the row's end or where the end is open.</param>
/// <param name="IsOpenStart">True where anything may come before (for a bound).</param>
/// <param name="IsOpenEnd">True where anything may come after (for a bound).</param>
/// <param name="Others">The nails that stand as they are, those of the stretch itself left out when they are read; null for a bound.</param>
/// <param name="PlainOnly">Grid stations whose nail may not move off its place, because cover would break.</param>
/// <param name="Terms">Terms on which a hole may run into other stretches' nails; null where it may not.</param>
/// <param name="Without">A stretch of another row whose nails are taken out of the way; null where there is none.</param>
public sealed record RowStretch(
    RowTask Row, int First, int Last, HeadChoice? Before, HeadChoice? After, bool IsOpenStart, bool IsOpenEnd, PlacedIndex? Others,
    IReadOnlySet<int> PlainOnly, Negotiation? Terms, StretchOfRow? Without)
{
    /// <summary>True for a nail that stands as it is while the stretch is solved.</summary>
    public bool Stands(Placed nail) => !nail.IsUnresolved
        && !new StretchOfRow(Row, First, Last).Holds(nail) && Without?.Holds(nail) != true;
}
