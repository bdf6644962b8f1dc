using System.Numerics;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>The directions of a place that one nail is in the way of, found one by one as they are asked for; from several threads at once if need be.</summary>
public sealed class HitDirections
{
    private readonly RowTask _row;
    private readonly HeadChoice _choice;
    private readonly ulong[] _known;
    private readonly ulong[] _hit;
    private readonly double _clearance;

    internal HitDirections(RowTask row, HeadChoice choice, Placed nail, int words)
    {
        _row = row;
        _choice = choice;
        Nail = nail;
        _known = new ulong[words];
        _hit = new ulong[words];
        _clearance = row.Bay.Rules.NailClearance - LayoutState.Tolerance;
    }

    public Placed Nail { get; }

    /// <summary>True for a nail that is out of reach.</summary>
    public bool IsNone => _known.Length == 0;

    /// <summary>Those of some directions of a word that come too close to the nail.</summary>
    public ulong Among(int word, ulong directions)
    {
        ulong missing = directions & ~Volatile.Read(ref _known[word]);
        if (missing != 0)
            Find(word, missing);
        return Volatile.Read(ref _hit[word]) & directions;
    }

    private void Find(int word, ulong missing)
    {
        ulong hit = 0;
        for (ulong left = missing; left != 0; left &= left - 1)
        {
            int bit = BitOperations.TrailingZeroCount(left);
            if (HoleDistance.CloserThan(_row.HoleAt(_choice, word * FreeDirections.WordSize + bit), Nail.Hole, _clearance))
                hit |= 1UL << bit;
        }
        // First what was hit, then that it is known: a reader who sees the second sees the first.
        Interlocked.Or(ref _hit[word], hit);
        Interlocked.Or(ref _known[word], missing);
    }
}
