using System.Numerics;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The directions of a place that are clear of everything that stands still, as bits by their places in order (cheapest first): found when they
/// are first asked for and remembered. They may be asked for from several threads.
/// </summary>
internal sealed class FreeDirections
{
    /// <summary>Directions in one word of bits.</summary>
    public const int WordSize = 64;

    private readonly RowTask _row;
    private readonly HeadChoice _choice;
    private readonly ulong[] _free;
    private readonly ulong[] _known;
    private readonly InWay?[] _inWay;
    private readonly DirectionFan _fan;
    private readonly (Obstacle Still, DirectionFan.Seen Rod)[] _rods;
    private readonly Obstacle[] _others;
    private Placed?[]? _nails;
    private int _count = -1;
    private int _coarseCount = -1;

    public FreeDirections(RowTask row, HeadChoice choice)
    {
        _row = row;
        _choice = choice;
        Words = (choice.Turnings.Count + WordSize - 1) / WordSize;
        _free = new ulong[Words];
        _known = new ulong[Words];
        _inWay = new InWay?[Words];
        _fan = new DirectionFan(row, choice, row.TableOf(choice));
        double longest = choice.IsPinned ? row.LengthOf(choice, choice.Turnings[0]) : row.LongestNail;
        Bounds reach = choice.Reach(longest).Grow(row.Radius + row.Bay.Rules.Drift * longest);
        Reach = reach.Grow(row.Bay.Rules.NailClearance);
        Obstacle[] near = Array.FindAll(row.Near(choice), o => o.Reach.Meets(reach));
        _rods = [.. from still in near where still.Rod is not null select (still, _fan.See(still.Rod!.Value, still.Required - Tolerance.Rounding, isOpen: true))];
        _others = Array.FindAll(near, o => o.Rod is null);
    }

    /// <summary>A box around all that a hole of this place may come too close to, whatever its direction.</summary>
    public Bounds Reach { get; }

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

    /// <summary>Those of the directions in coarse steps, counted.</summary>
    public int CoarseCount
    {
        get
        {
            if (_coarseCount < 0)
                _coarseCount = _choice.Turnings.Coarse.Count(IsFree);
            return _coarseCount;
        }
    }

    public bool Any
    {
        get
        {
            // The cheapest few first: most places have a free one among them.
            const ulong Early = 0xFF;
            if (Among(0, Early) != 0)
                return true;
            for (int word = 0; word < Words; word++)
            {
                if (Word(word) != 0)
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

    public bool IsFree(int turning) => Among(turning / WordSize, 1UL << (turning % WordSize)) != 0;

    /// <summary>What is known to be in the way of a word of directions.</summary>
    public InWay InWay(int word) => _inWay[word] ?? Interlocked.CompareExchange(ref _inWay[word], new InWay(), null) ?? _inWay[word]!;

    private void Find(int word, ulong missing)
    {
        int count = _choice.Turnings.Count - word * WordSize;
        ulong free = missing & (count < WordSize ? (1UL << count) - 1 : ulong.MaxValue);
        // Straight round bodies strike out all directions at once, the others one by one.
        for (int i = 0; i < _rods.Length && free != 0; i++)
            free &= ~Struck(word, free, _rods[i].Still, _rods[i].Rod);
        // What was in the way of the last direction is likely to be in the way of the next one.
        Obstacle? last = null;
        for (ulong left = free; left != 0; left &= left - 1)
        {
            int bit = BitOperations.TrailingZeroCount(left);
            Hole hole = _row.HoleAt(_choice, word * WordSize + bit);
            if (last is null || !RowTask.AreTooClose(hole, last))
            {
                if (RowTask.FirstHit(hole, _others) is not { } hit)
                    continue;
                last = hit;
            }
            free &= ~(1UL << bit);
        }
        // First what is free, then that it is known: a reader who sees the second sees the first.
        Interlocked.Or(ref _free[word], free);
        Interlocked.Or(ref _known[word], missing);
    }

    /// <summary>Those of some directions of a word that come too close to a straight round body.</summary>
    private ulong Struck(int word, ulong among, Obstacle still, in DirectionFan.Seen rod)
    {
        (ulong struck, ulong open) = _fan.Decide(word, among, rod);
        for (; open != 0; open &= open - 1)
        {
            int bit = BitOperations.TrailingZeroCount(open);
            if (RowTask.AreTooClose(_row.HoleAt(_choice, word * WordSize + bit), still))
                struck |= 1UL << bit;
        }
        return struck;
    }

    /// <summary>The nail of a direction, given by its place in order; always the same object.</summary>
    public Placed NailAt(int turning)
    {
        Placed?[] nails = _nails ?? Interlocked.CompareExchange(ref _nails, new Placed?[_choice.Turnings.Count], null) ?? _nails;
        return nails[turning] ?? Interlocked.CompareExchange(ref nails[turning], Make(turning), null) ?? nails[turning]!;
    }

    private Placed Make(int turning) => new(_row, _choice, _choice.Turnings[turning], false, _row.HoleAt(_choice, turning));
}
