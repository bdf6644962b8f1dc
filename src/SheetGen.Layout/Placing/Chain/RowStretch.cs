namespace SheetGen.Layout.Placing;

/// <summary>A stretch of a row that is solved at once: grid stations First to Last, and its ends.</summary>
/// <param name="Before">The nail before the stretch; null at the row's start or where the start is open.</param>
/// <param name="After">The nail after it; null at the row's end or where the end is open.</param>
/// <param name="IsOpenStart">True where anything may come before (for a bound).</param>
/// <param name="IsOpenEnd">True where anything may come after (for a bound).</param>
internal sealed record RowStretch(StretchOfRow Where, HeadChoice? Before, HeadChoice? After, bool IsOpenStart, bool IsOpenEnd)
{
    /// <summary>A stretch with anything before and after it, for a lower limit.</summary>
    public static RowStretch Open(StretchOfRow where) =>
        new(where, null, null, where.First > 0, where.Last < where.Row.Count - 1);
}
