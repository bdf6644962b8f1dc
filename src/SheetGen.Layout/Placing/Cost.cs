namespace SheetGen.Layout.Placing;

/// <summary>
/// What a layout costs, compared figure by figure: unresolved, noted, effort, nails, shift. Sums keep the order, so least costs of
/// parts add up to a lower limit of the whole.
/// </summary>
/// <param name="Unresolved">Nails left at their grid place although something is too close.</param>
/// <param name="Noted">Nails turned beyond the field tolerance.</param>
/// <param name="Effort">1 for each degree turned, 2 for each nail off its grid station, 3 for each grid station left out; in ten-thousandths.</param>
/// <param name="Nails">Number of nails.</param>
/// <param name="Shift">Total shift along the row, in quanta.</param>
public readonly record struct Cost(int Unresolved, int Noted, long Effort, int Nails, long Shift) : IComparable<Cost>
{
    /// <summary>Effort units in one degree, or one point of effort.</summary>
    public const long Point = 10_000;

    public static Cost Infinite { get; } = new(100_000_000, 0, 0, 0, 0);

    public bool IsInfinite => Unresolved >= 50_000_000;

    public static Cost operator +(Cost a, Cost b) =>
        new(a.Unresolved + b.Unresolved, a.Noted + b.Noted, a.Effort + b.Effort, a.Nails + b.Nails, a.Shift + b.Shift);

    public static Cost operator -(Cost a, Cost b) =>
        new(a.Unresolved - b.Unresolved, a.Noted - b.Noted, a.Effort - b.Effort, a.Nails - b.Nails, a.Shift - b.Shift);

    public static bool operator <(Cost a, Cost b) => a.CompareTo(b) < 0;

    public static bool operator >(Cost a, Cost b) => a.CompareTo(b) > 0;

    public override string ToString() =>
        FormattableString.Invariant($"unresolved {Unresolved}, noted {Noted}, effort {Effort / (double)Point}, nails {Nails}, shift {Shift}");

    public int CompareTo(Cost o)
    {
        int first = Unresolved != o.Unresolved ? Unresolved.CompareTo(o.Unresolved) : Noted.CompareTo(o.Noted);
        if (first != 0)
            return first;
        if (Effort != o.Effort)
            return Effort.CompareTo(o.Effort);
        return Nails != o.Nails ? Nails.CompareTo(o.Nails) : Shift.CompareTo(o.Shift);
    }

    /// <summary>Doubled, so that halves of figures stay whole.</summary>
    public Cost Twice => this + this;

    /// <summary>Cost of turning a nail by so many degrees in all.</summary>
    public static long Degrees(double degrees) => (long)Math.Round(degrees * Point);
}
