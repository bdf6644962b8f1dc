using System.Collections.Concurrent;
using System.Numerics;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The directions of a place that are clear of everything that stands still, as bits by their places in order (cheapest first), and which of
/// them other nails are in the way of. All of it is found when it is first asked for and remembered; it may be asked from several threads.
/// </summary>
public sealed class FreeDirections
{
    /// <summary>Directions in one word of bits.</summary>
    public const int WordSize = 64;

    /// <summary>Nails whose directions are remembered; beyond that all are forgotten, since most are long gone.</summary>
    private const int GreatestKnown = 2_000;

    private readonly RowTask _row;
    private readonly HeadChoice _choice;
    private readonly ulong[] _free;
    private readonly ulong[] _known;
    private readonly Bounds _reach;
    private ConcurrentDictionary<Placed, HitDirections>? _hits;
    private HitDirections?[]? _last;
    private Placed?[]? _nails;
    private int _count = -1;

    public FreeDirections(RowTask row, HeadChoice choice)
    {
        _row = row;
        _choice = choice;
        Words = (choice.Turnings.Count + WordSize - 1) / WordSize;
        _free = new ulong[Words];
        _known = new ulong[Words];
        double longest = choice.IsPinned ? row.LengthOf(choice, choice.Turnings[0]) : row.LongestNail;
        _reach = choice.Reach(longest).Grow(row.Radius + row.Bay.Rules.Drift * longest + row.Bay.Rules.NailClearance);
    }

    /// <summary>Number of words of bits.</summary>
    public int Words { get; }

    /// <summary>All of them, counted.</summary>
    public int Count
    {
        get
        {
            if (_count < 0)
                _count = Enumerable.Range(0, Words).Sum(w => BitOperations.PopCount(Word(w)));
            return _count;
        }
    }

    public bool Any
    {
        get
        {
            for (int turning = 0; turning < _choice.Turnings.Count; turning++)
            {
                if (_row.IsFree(_choice, turning))
                    return true;
            }
            return false;
        }
    }

    /// <summary>The place in order of the direction of a rank, from 0 to under the count.</summary>
    public int this[int rank]
    {
        get
        {
            int word = 0;
            for (int count = BitOperations.PopCount(Word(0)); rank >= count; count = BitOperations.PopCount(Word(++word)))
                rank -= count;
            ulong left = Word(word);
            for (; rank > 0; rank--)
                left &= left - 1;
            return word * WordSize + BitOperations.TrailingZeroCount(left);
        }
    }

    /// <summary>The free ones of a word of directions.</summary>
    public ulong Word(int word) => Among(word, ulong.MaxValue);

    /// <summary>The free ones of some directions of a word.</summary>
    public ulong Among(int word, ulong directions)
    {
        ulong missing = directions & ~Volatile.Read(ref _known[word]);
        if (missing != 0)
            Find(word, missing);
        return Volatile.Read(ref _free[word]) & directions;
    }

    private void Find(int word, ulong missing)
    {
        ulong free = 0;
        for (ulong left = missing; left != 0; left &= left - 1)
        {
            int bit = BitOperations.TrailingZeroCount(left), turning = word * WordSize + bit;
            if (turning < _choice.Turnings.Count && _row.IsFree(_choice, turning))
                free |= 1UL << bit;
        }
        // First what is free, then that it is known: a reader who sees the second sees the first.
        Interlocked.Or(ref _free[word], free);
        Interlocked.Or(ref _known[word], missing);
    }

    /// <summary>The nail of a direction, given by its place in order; always the same object.</summary>
    public Placed NailAt(int turning)
    {
        Placed?[] nails = _nails ?? Interlocked.CompareExchange(ref _nails, new Placed?[_choice.Turnings.Count], null) ?? _nails;
        return nails[turning] ?? Interlocked.CompareExchange(ref nails[turning], Make(turning), null) ?? nails[turning]!;
    }

    /// <summary>The directions that a nail is in the way of; null where it is in the way of none, wherever they point.</summary>
    /// <param name="near">Number of the nail's slot among those near; the nail that was asked for last there is found at once.</param>
    public HitDirections? HitsOf(Placed nail, int near)
    {
        HitDirections?[] last = _last ?? Interlocked.CompareExchange(ref _last, new HitDirections?[near + 16], null) ?? _last;
        if (near >= last.Length)
            _last = last = new HitDirections?[2 * near];
        HitDirections? hits = last[near];
        if (hits is null || !ReferenceEquals(hits.Nail, nail))
            last[near] = hits = HitsOf(nail);
        return hits.IsNone ? null : hits;
    }

    private HitDirections HitsOf(Placed nail)
    {
        ConcurrentDictionary<Placed, HitDirections> hits = _hits ?? New();
        if (hits.TryGetValue(nail, out HitDirections? known))
            return known;
        if (hits.Count >= GreatestKnown)
            hits = New();
        return hits.GetOrAdd(nail, n => new HitDirections(_row, _choice, n, _reach.Meets(n.Box) ? Words : 0));
    }

    private ConcurrentDictionary<Placed, HitDirections> New() =>
        _hits = new(1, 31, (IEqualityComparer<Placed>)ReferenceEqualityComparer.Instance);

    private Placed Make(int turning) => new(_row, _choice, _choice.Turnings[turning], false, _row.HoleAt(_choice, turning));
}
