using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// How many nails stay unresolved at least while all heads stand on their grid stations, in a form that an engineer can check: the stations with
/// no free direction, and the least set of stations that meets every pair of stations without two directions clear of each other.
/// </summary>
/// <param name="Blocked">Stations with no direction that is clear of what stands still.</param>
/// <param name="Pairs">Pairs of other stations without any clear pair of directions.</param>
/// <param name="Least">The least number of unresolved nails.</param>
internal sealed record GridHeads(IReadOnlyList<Slot> Blocked, IReadOnlyList<(Slot First, Slot Second)> Pairs, int Least)
{
    /// <summary>Most steps of the search for the least set; a greedy set of pairs that share no station is a limit too.</summary>
    private const int GreatestSteps = 20_000;

    public static GridHeads Of(LayoutState layout)
    {
        Slot[] open = [.. layout.Slots.Where(s => !s.IsPinned && !IsWitness(s))];
        Slot[] blocked = [.. open.Where(s => !s.Row.FreeOf(s.Grid).Any)];
        var pairs = new List<(Slot, Slot)>();
        var holes = new Dictionary<Slot, Hole[]>();
        foreach (Slot slot in open.Except(blocked))
        {
            foreach (Slot near in slot.Near)
            {
                bool isTaken = near.IsPinned || (!IsWitness(near) && near.Index < slot.Index) || !near.Row.FreeOf(near.Grid).Any;
                if (!isTaken && !HaveClearPair(layout, HolesOf(slot, holes), HolesOf(near, holes)))
                    pairs.Add((slot, near));
            }
        }
        return new GridHeads(blocked, pairs, blocked.Length + LeastOf(pairs, GreatestSteps));
    }

    /// <summary>The least number of stations that meet every pair; where the search for it takes more steps, the number of pairs found that share none.</summary>
    internal static int LeastOf(List<(Slot First, Slot Second)> pairs, int steps) => Cover(pairs, ref steps) ?? Apart(pairs);

    /// <summary>True for a station whose nail stands free at its grid place: two of them have a clear pair.</summary>
    private static bool IsWitness(Slot slot) => slot.Nails.Length == 1 && slot.Nails[0] is { IsUnresolved: false, Choice.IsAtGrid: true };

    private static bool HaveClearPair(LayoutState layout, Hole[] first, Hole[] second)
    {
        foreach (Hole x in first)
        {
            foreach (Hole y in second)
            {
                if (!layout.AreTooClose(x, y))
                    return true;
            }
        }
        return false;
    }

    /// <summary>The holes of a station's free directions, made once.</summary>
    private static Hole[] HolesOf(Slot slot, Dictionary<Slot, Hole[]> known)
    {
        if (known.TryGetValue(slot, out Hole[]? holes))
            return holes;
        FreeDirections free = slot.Row.FreeOf(slot.Grid);
        return known[slot] = [.. Enumerable.Range(0, free.Count).Select(rank => slot.Row.HoleAt(slot.Grid, free[rank]))];
    }

    /// <summary>The least vertex cover by branching on a pair; null where that takes more steps than are left.</summary>
    private static int? Cover(List<(Slot First, Slot Second)> pairs, ref int steps)
    {
        if (pairs.Count == 0)
            return 0;
        if (--steps < 0)
            return null;
        // The station in most pairs: it is in the set, or all it is paired with are.
        Slot most = pairs.SelectMany(p => (Slot[])[p.First, p.Second]).GroupBy(s => s.Index).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().First();
        HashSet<Slot> others = [.. pairs.Where(p => p.First == most || p.Second == most).Select(p => p.First == most ? p.Second : p.First)];
        int? with = Cover([.. pairs.Where(p => p.First != most && p.Second != most)], ref steps);
        // Of a pair alone either will do.
        if (with is null || others.Count == 1)
            return with + 1;
        int? without = Cover([.. pairs.Where(p => !others.Contains(p.First) && !others.Contains(p.Second))], ref steps);
        return without is null ? null : Math.Min(1 + with.Value, others.Count + without.Value);
    }

    private static int Apart(List<(Slot First, Slot Second)> pairs)
    {
        var used = new HashSet<Slot>();
        return pairs.Count(p => !used.Contains(p.First) && !used.Contains(p.Second) && used.Add(p.First) && used.Add(p.Second));
    }
}
