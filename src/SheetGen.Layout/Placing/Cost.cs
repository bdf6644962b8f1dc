using System.Globalization;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What a layout costs, compared figure by figure: unresolved, noted, effort, nails, shift. Sums keep the order, so least costs of
/// parts add up to a lower limit of the whole. The figures are the digits of one whole number of 128 bits, so that sums and comparisons
/// are those of numbers; differences of costs may be compared and added, but not read figure by figure.
/// </summary>
/// <remarks>Two words rather than an Int128, because code that touches an Int128 cannot be compiled ahead.</remarks>
internal readonly record struct Cost : IComparable<Cost>
{
    /// <summary>Effort units in one degree, or one point of effort.</summary>
    public const long Point = 10_000;

    private const int ShiftBits = 26;
    private const int NailBits = 18;
    private const int EffortBits = 40;
    private const int NotedBits = 18;
    private const int InfiniteUnresolved = 4_000_000;

    private const double Word = 18446744073709551616.0;

    private readonly long _high;
    private readonly ulong _low;

    /// <param name="unresolved">Nails left at their grid place although something is too close.</param>
    /// <param name="noted">Nails turned beyond the field tolerance.</param>
    /// <param name="effort">1 for each degree turned, 2 for each nail off its grid station, 3 for each grid station left out; in ten-thousandths.</param>
    /// <param name="nails">Number of nails.</param>
    /// <param name="shift">Total shift along the row, in quanta.</param>
    public Cost(int unresolved, int noted, long effort, int nails, long shift) =>
        this = Digit(unresolved, NotedBits + EffortBits + NailBits + ShiftBits) + Digit(noted, EffortBits + NailBits + ShiftBits)
            + Digit(effort, NailBits + ShiftBits) + Digit(nails, ShiftBits) + Digit(shift, 0);

    private Cost(long high, ulong low)
    {
        _high = high;
        _low = low;
    }

    public static Cost Infinite { get; } = new(InfiniteUnresolved, 0, 0, 0, 0);

    public int Unresolved => (int)(_high >> (ShiftBits + NailBits + EffortBits + NotedBits - 64));

    public int Noted => (int)Digits(ShiftBits + NailBits + EffortBits, NotedBits);

    public long Effort => Digits(ShiftBits + NailBits, EffortBits);

    public int Nails => (int)Digits(ShiftBits, NailBits);

    public long Shift => Digits(0, ShiftBits);

    public bool IsInfinite => Unresolved >= InfiniteUnresolved / 2;

    /// <summary>Doubled, so that halves of figures stay whole.</summary>
    public Cost Twice => this + this;

    public static Cost operator +(Cost a, Cost b)
    {
        ulong low = a._low + b._low;
        return new(a._high + b._high + (low < a._low ? 1 : 0), low);
    }

    public static Cost operator -(Cost a, Cost b) => new(a._high - b._high - (a._low < b._low ? 1 : 0), a._low - b._low);

    public static bool operator <(Cost a, Cost b) => a._high < b._high || (a._high == b._high && a._low < b._low);

    public static bool operator >(Cost a, Cost b) => b < a;

    /// <summary>A part or a multiple; rounded toward 0.</summary>
    public Cost Times(double factor)
    {
        if (_high < 0)
            return default(Cost) - (default(Cost) - this).Times(factor);
        double product = Math.Truncate((_high * Word + _low) * factor);
        double high = Math.Floor(product / Word);
        return new((long)high, (ulong)(product - high * Word));
    }

    /// <summary>
    /// The least cost of whole figures that is not less: a rest that no layout of so many nails can have counts as one more of the figure
    /// before it.
    /// </summary>
    public Cost RoundedUp(int nails, long effortOfNail)
    {
        if (Noted > nails)
            return new Cost(Unresolved + 1, 0, 0, 0, 0);
        return Effort > nails * effortOfNail ? new Cost(Unresolved, Noted + 1, 0, 0, 0) : this;
    }

    /// <summary>True where the figures that a layout is judged by are the same: unresolved, noted, effort.</summary>
    public bool HasFiguresOf(Cost other) => Unresolved == other.Unresolved && Noted == other.Noted && Effort == other.Effort;

    /// <summary>Cost of turning a nail by so many degrees in all.</summary>
    public static long Degrees(double degrees) => (long)Math.Round(degrees * Point);

    public int CompareTo(Cost other) => _high != other._high ? _high.CompareTo(other._high) : _low.CompareTo(other._low);

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"unresolved {Unresolved}, noted {Noted}, effort {Effort / (double)Point}, nails {Nails}, shift {Shift}");

    /// <summary>A figure at its place in the whole number; one below 0 borrows from those before it.</summary>
    private static Cost Digit(long figure, int place) => place switch
    {
        0 => new(figure >> 63, (ulong)figure),
        < 64 => new(figure >> (64 - place), (ulong)figure << place),
        _ => new(figure << (place - 64), 0),
    };

    private long Digits(int from, int count)
    {
        ulong bits = from switch
        {
            0 => _low,
            < 64 => (_low >> from) | ((ulong)_high << (64 - from)),
            _ => (ulong)(_high >> (from - 64)),
        };
        return (long)(bits & ((1UL << count) - 1));
    }
}
