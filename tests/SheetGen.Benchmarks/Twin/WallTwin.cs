using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;

namespace SheetGen.Benchmarks.Twin;

/// <summary>A wall's finished layout beside what the exact solver says of the stations around its unresolved nails.</summary>
/// <param name="Proven">Unresolved nails that no layout can do without.</param>
/// <param name="Best">Unresolved nails of the best layout known: ours, improved around its unresolved nails while all others stand still.</param>
internal sealed record WallTwin(int Proven, int Best, double Seconds)
{
    private const int Margin = 3;

    private static readonly TwinLimits Limits = new(80, 1, 3);

    /// <param name="layout">Is improved.</param>
    public static WallTwin Of(WallProject project, LayoutState layout, CoverWatch cover, IReadOnlyList<StretchLimit> limits)
    {
        double clearance = project.Rules.NailClearance - Tolerance.Rounding, seconds = 0;
        List<Cluster> clusters = Cluster.Around(layout, limits, Margin);
        int proven = limits.Where(l => !clusters.Any(w => w.Meets(l.Where))).Sum(l => l.Cost.Unresolved);
        int alone = limits.Sum(l => l.Cost.Unresolved);
        foreach (Cluster cluster in clusters)
        {
            int found = Unresolved(layout, cluster.Stretches);
            TwinSolver.Answer open = TwinSolver.Solve(new TwinCluster(cluster.Stretches, null), clearance, found, Limits);
            proven += open.Lower;
            seconds += open.Seconds;
            if (open.Lower == found)
                continue;
            TwinSolver.Answer inside = TwinSolver.Solve(new TwinCluster(cluster.Stretches, layout), clearance, found, Limits);
            seconds += inside.Seconds;
            if (inside.Upper < found && inside.Nails is { } nails)
                Improve(layout, cover, cluster.Stretches, nails);
        }
        return new WallTwin(Math.Max(proven, alone), layout.Cost.Unresolved, seconds);
    }

    private static int Unresolved(LayoutState layout, IReadOnlyList<StretchOfRow> stretches) =>
        stretches.Sum(s => layout.Rows[s.Row.Index].CostOf(s.First, s.Last).Unresolved);

    /// <summary>Takes other nails unless they break cover more.</summary>
    private static void Improve(LayoutState layout, CoverWatch cover, IReadOnlyList<StretchOfRow> stretches, IReadOnlyList<Placed> nails)
    {
        double before = cover.Total;
        Placed[][] old = [.. stretches.Select(s => Enumerable.Range(s.First, s.Last - s.First + 1).SelectMany(l => layout.Rows[s.Row.Index].At(l)).ToArray())];
        for (int i = 0; i < stretches.Count; i++)
            Put(layout, stretches[i], nails);
        if (cover.Total <= before)
            return;
        for (int i = 0; i < stretches.Count; i++)
            Put(layout, stretches[i], old[i]);
    }

    private static void Put(LayoutState layout, StretchOfRow where, IReadOnlyList<Placed> nails)
    {
        ILookup<int, Placed> byLabel = nails.Where(where.Holds).OrderBy(n => n.Choice.Head.Along).ToLookup(n => n.Choice.Label);
        for (int label = where.First; label <= where.Last; label++)
            layout.Rows[where.Row.Index].Slots[label].Nails = [.. byLabel[label]];
    }
}
