using System.Numerics;
using SheetGen.Model.Geometry;

namespace SheetGen.Tests.Placing;

/// <summary>A direction of a place, or the grid's nail left unresolved.</summary>
internal sealed record Choice(Vector3D Head, Vector3D Tip, long Cost, bool IsUnresolved);

/// <summary>A place where a nail may stand for a grid station, with its choices, the cheapest first.</summary>
internal sealed record Place(double Along, int Label, Choice[] Choices, bool IsPinned);

/// <summary>The cheapest choices of given places, all pairs clear of each other, by trying all that may be cheaper than the best so far.</summary>
/// <param name="apart">Least distance of two axes.</param>
internal sealed class EveryTurn(double apart)
{
    private readonly Dictionary<(Place, Place), ulong[]> _clear = [];

    /// <summary>The least cost; the limit where there is none under it.</summary>
    public long Least(Place[] places, long limit)
    {
        var clear = new ulong[places.Length][][];
        for (int i = 0; i < places.Length; i++)
            clear[i] = [.. places.Select(p => p == places[i] ? [] : Clear(places[i], p))];
        Try(places, clear, [.. places.Select(p => (1UL << p.Choices.Length) - 1)], 0, ref limit);
        return limit;
    }

    /// <param name="open">By place the choices that are clear of all that were chosen; 0 where one was chosen.</param>
    private void Try(Place[] places, ulong[][][] clear, ulong[] open, long cost, ref long best)
    {
        int[] left = [.. Enumerable.Range(0, places.Length).Where(i => open[i] != 0)];
        if (cost + AtLeast(places, clear, open, left) >= best)
            return;
        if (left.Length == 0)
        {
            best = cost;
            return;
        }
        int next = left.MinBy(i => BitOperations.PopCount(open[i]));
        for (ulong rest = open[next]; rest != 0; rest &= rest - 1)
        {
            int choice = BitOperations.TrailingZeroCount(rest);
            ulong[] then = [.. open];
            then[next] = 0;
            foreach (int i in left)
                then[i] = i == next ? 0 : open[i] & clear[next][i][choice];
            if (left.All(i => i == next || then[i] != 0))
                Try(places, clear, then, cost + places[next].Choices[choice].Cost, ref best);
        }
    }

    /// <summary>What is left costs at least its cheapest choices, and of pairs that share no place what both together cost more.</summary>
    private static long AtLeast(Place[] places, ulong[][][] clear, ulong[] open, int[] left)
    {
        long sum = left.Sum(i => Cheapest(places[i], open[i]));
        List<int> free = [.. left];
        while (free.Count > 1)
        {
            int one = free[0];
            free.RemoveAt(0);
            (int other, long more) = (-1, 0);
            foreach (int i in free)
            {
                long both = Together(places[one], open[one], places[i], open[i], clear[one][i]) - Cheapest(places[one], open[one]) - Cheapest(places[i], open[i]);
                if (both > more)
                    (other, more) = (i, both);
            }
            sum += more;
            free.Remove(other);
        }
        return sum;
    }

    private static long Cheapest(Place place, ulong open) => place.Choices[BitOperations.TrailingZeroCount(open)].Cost;

    private static long Together(Place a, ulong openA, Place b, ulong openB, ulong[] clear)
    {
        long least = SmallFigures.NoCost, cheapest = Cheapest(b, openB);
        for (; openA != 0; openA &= openA - 1)
        {
            int x = BitOperations.TrailingZeroCount(openA);
            if (a.Choices[x].Cost + cheapest >= least)
                break;
            if ((openB & clear[x]) is not 0 and var both)
                least = Math.Min(least, a.Choices[x].Cost + Cheapest(b, both));
        }
        return least;
    }

    /// <summary>By choice of one place the choices of another that are clear of it, bit by bit.</summary>
    private ulong[] Clear(Place a, Place b)
    {
        if (!_clear.TryGetValue((a, b), out ulong[]? clear))
        {
            clear = new ulong[a.Choices.Length];
            for (int x = 0; x < clear.Length; x++)
            {
                for (int y = 0; y < b.Choices.Length; y++)
                    clear[x] |= AreClear(a.Choices[x], b.Choices[y]) ? 1UL << y : 0;
            }
            _clear[(a, b)] = clear;
        }
        return clear;
    }

    private bool AreClear(Choice a, Choice b) => a.IsUnresolved || b.IsUnresolved || Small3.Between(a.Head, a.Tip, b.Head, b.Tip) >= apart - 1e-9;
}
