using System.Globalization;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What a layout costs, compared figure by figure: unresolved, noted, effort, nails, shift. Sums keep the order, so least costs of
/// parts add up to a lower limit of the whole. The figures are the digits of one whole number, so that sums and comparisons are those
/// of numbers; differences of costs may be compared and added, but not read figure by figure.
/// </summary>
public readonly record struct Cost : IComparable<Cost>
{
    /// <summary>Effort units in one degree, or one point of effort.</summary>
    public const long Point = 10_000;

    private const int ShiftBits = 26;
    private const int NailBits = 18;
    private const int EffortBits = 40;
    private const int NotedBits = 18;
    private const int InfiniteUnresolved = 4_000_000;

    private readonly Int128 _value;

    /// <param name="unresolved">Nails left at their grid place although something is too close.</param>
    /// <param name="noted">Nails turned beyond the field tolerance.</param>
    /// <param name="effort">1 for each degree turned, 2 for each nail off its grid station, 3 for each grid station left out; in ten-thousandths.</param>
    /// <param name="nails">Number of nails.</param>
    /// <param name="shift">Total shift along the row, in quanta.</param>
    public Cost(int unresolved, int noted, long effort, int nails, long shift) =>
        _value = ((((((((Int128)unresolved << NotedBits) + noted) << EffortBits) + effort) << NailBits) + nails) << ShiftBits) + shift;

    private Cost(Int128 value) => _value = value;

    public static Cost Infinite { get; } = new(InfiniteUnresolved, 0, 0, 0, 0);

    public int Unresolved => (int)(_value >> (ShiftBits + NailBits + EffortBits + NotedBits));

    public int Noted => (int)Digits(ShiftBits + NailBits + EffortBits, NotedBits);

    public long Effort => Digits(ShiftBits + NailBits, EffortBits);

    public int Nails => (int)Digits(ShiftBits, NailBits);

    public long Shift => Digits(0, ShiftBits);

    public bool IsInfinite => Unresolved >= InfiniteUnresolved / 2;

    /// <summary>Doubled, so that halves of figures stay whole.</summary>
    public Cost Twice => new(_value + _value);

    public static Cost operator +(Cost a, Cost b) => new(a._value + b._value);

    public static Cost operator -(Cost a, Cost b) => new(a._value - b._value);

    public static bool operator <(Cost a, Cost b) => a._value < b._value;

    public static bool operator >(Cost a, Cost b) => a._value > b._value;

    /// <summary>A part or a multiple; rounded toward 0.</summary>
    public Cost Times(double factor) => new((Int128)((double)_value * factor));

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

    /// <summary>Cost of turning a nail by so many degrees in all.</summary>
    public static long Degrees(double degrees) => (long)Math.Round(degrees * Point);

    public int CompareTo(Cost other) => _value.CompareTo(other._value);

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"unresolved {Unresolved}, noted {Noted}, effort {Effort / (double)Point}, nails {Nails}, shift {Shift}");

    private long Digits(int from, int count) => (long)((_value >> from) & (((Int128)1 << count) - 1));
}
