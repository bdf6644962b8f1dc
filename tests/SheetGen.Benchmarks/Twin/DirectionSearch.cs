using System.Numerics;

namespace SheetGen.Benchmarks.Twin;

/// <summary>Can each of some nails take one of its candidates, all clear of each other? By backtracking with looking ahead; limited by steps.</summary>
internal sealed class DirectionSearch
{
    private readonly Candidate[][] _domains;
    private readonly ClearPairs _pairs;
    private readonly Dictionary<(int, int, int), ulong[]> _clear = [];
    private int _steps;

    private DirectionSearch(Candidate[][] domains, ClearPairs pairs, int steps)
    {
        _domains = domains;
        _pairs = pairs;
        _steps = steps;
    }

    /// <returns>A candidate for each nail; null where there is none, or where the steps ran out (then <paramref name="isProven"/> is false).</returns>
    public static Candidate[]? Find(Candidate[][] domains, ClearPairs pairs, int steps, out bool isProven)
    {
        var search = new DirectionSearch(domains, pairs, steps);
        ulong[][] all = [.. domains.Select(d => Full(d.Length))];
        var taken = new int[domains.Length];
        Array.Fill(taken, -1);
        bool found = search.Extend(all, taken, 0);
        isProven = found || search._steps > 0;
        return found ? [.. taken.Select((t, i) => domains[i][t])] : null;
    }

    private static ulong[] Full(int count)
    {
        var bits = new ulong[(count + 63) / 64];
        for (int i = 0; i < count; i++)
            bits[i / 64] |= 1UL << (i % 64);
        return bits;
    }

    private bool Extend(ulong[][] left, int[] taken, int depth)
    {
        if (depth == taken.Length)
            return true;
        int next = -1, least = int.MaxValue;
        for (int i = 0; i < taken.Length; i++)
        {
            int count = taken[i] >= 0 ? int.MaxValue : left[i].Sum(BitOperations.PopCount);
            if (count < least)
                (next, least) = (i, count);
        }
        if (least == 0)
            return false;
        for (int value = 0; value < _domains[next].Length; value++)
        {
            if ((left[next][value / 64] >> (value % 64) & 1) == 0)
                continue;
            if (--_steps <= 0)
                return false;
            taken[next] = value;
            var rest = (ulong[][])left.Clone();
            bool isOpen = true;
            for (int i = 0; i < taken.Length && isOpen; i++)
            {
                if (taken[i] >= 0)
                    continue;
                ulong[] clear = ClearOf(next, value, i);
                rest[i] = [.. left[i].Select((w, k) => w & clear[k])];
                isOpen = rest[i].Any(w => w != 0);
            }
            if (isOpen && Extend(rest, taken, depth + 1))
                return true;
            taken[next] = -1;
        }
        return false;
    }

    private ulong[] ClearOf(int nail, int value, int other)
    {
        if (_clear.TryGetValue((nail, value, other), out ulong[]? known))
            return known;
        Candidate[] domain = _domains[other];
        var bits = new ulong[(domain.Length + 63) / 64];
        for (int i = 0; i < domain.Length; i++)
        {
            if (!_pairs.AreTooClose(_domains[nail][value], domain[i]))
                bits[i / 64] |= 1UL << (i % 64);
        }
        return _clear[(nail, value, other)] = bits;
    }
}
