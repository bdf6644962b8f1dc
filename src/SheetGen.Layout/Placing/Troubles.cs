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
        var labels = new SortedSet<int>();
        Placed[] nails = [.. state.Nails];
        for (int i = 0; i < nails.Length; i++)
        {
            Placed nail = nails[i];
            if (nail.Choice.IsPinned || !row.IsFree(nail.Choice, 0))
                labels.Add(nail.Choice.Label);
            if (i == 0)
                continue;
            Placed before = nails[i - 1];
            if (HoleDistance.CloserThan(before.Hole, nail.Hole, clearance) || !row.Fits(before.Choice, nail.Choice))
            {
                labels.Add(before.Choice.Label);
                labels.Add(nail.Choice.Label);
            }
        }
        return Join(labels);
    }

    /// <summary>Stations as stretches; those that would be solved with the same neighbours are joined.</summary>
    public static List<(int First, int Last)> Join(SortedSet<int> labels)
    {
        var joined = new List<(int First, int Last)>();
        foreach (int label in labels)
        {
            if (joined.Count > 0 && label - joined[^1].Last <= 2 * ChainRebuild.Margin + 1)
                joined[^1] = (joined[^1].First, label);
            else
                joined.Add((label, label));
        }
        return joined;
    }
}
