using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Where a row needs solving: stretches of grid stations, near ones joined.</summary>
internal static class Troubles
{
    /// <summary>Stations whose plain nail hits something that stands still, or its plain neighbour, and pinned ones.</summary>
    public static List<(int First, int Last)> Alone(RowState state)
    {
        RowTask row = state.Row;
        double clearance = row.Bay.Rules.NailClearance - Tolerance.Rounding;
        var ordinals = new SortedSet<int>();
        Placed[] nails = [.. state.Nails];
        for (int i = 0; i < nails.Length; i++)
        {
            Placed nail = nails[i];
            if (nail.Choice.IsPinned || !row.IsFree(nail.Choice, 0))
                ordinals.Add(nail.Choice.Ordinal);
            if (i == 0)
                continue;
            Placed before = nails[i - 1];
            if (HoleDistance.CloserThan(before.Hole, nail.Hole, clearance) || !row.Fits(before.Choice, nail.Choice))
            {
                ordinals.Add(before.Choice.Ordinal);
                ordinals.Add(nail.Choice.Ordinal);
            }
        }
        return Join(ordinals);
    }

    /// <summary>Stations as stretches; those that would be solved with the same neighbours are joined.</summary>
    public static List<(int First, int Last)> Join(SortedSet<int> ordinals)
    {
        var joined = new List<(int First, int Last)>();
        foreach (int ordinal in ordinals)
        {
            if (joined.Count > 0 && ordinal - joined[^1].Last <= 2 * ChainRebuild.Margin + 1)
                joined[^1] = (joined[^1].First, ordinal);
            else
                joined.Add((ordinal, ordinal));
        }
        return joined;
    }
}
