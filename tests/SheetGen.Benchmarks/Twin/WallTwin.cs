using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;

namespace SheetGen.Benchmarks.Twin;

/// <summary>A wall's finished layout beside the best that is known: our own search carried on for long, then what the exact solver makes of it.</summary>
/// <param name="Proven">Unresolved nails that no layout can do without.</param>
/// <param name="Longer">What our own search leaves when it goes on.</param>
/// <param name="Best">What the best layout known leaves: improved by the solver around its unresolved nails, then window by window, while all others stand still.</param>
/// <param name="Seconds">Deterministic time of the solver.</param>
internal sealed record WallTwin(int Proven, Cost Longer, Cost Best, double Seconds)
{
    private const int Margin = 3;

    /// <summary>Long loops side by side, and times that they go on with other random numbers: ten times what the product does.</summary>
    private const int Starts = 10, Goes = 2;

    private const int MostDirections = 1_500_000;

    private static readonly TwinLimits Limits = new(80, 1, 3);

    /// <param name="search">Has run; its layout is improved.</param>
    /// <param name="tell">Told of each gain of a window.</param>
    public static WallTwin Of(WallProject project, LayoutSearch search, IReadOnlyList<StretchLimit> limits, Action<string>? tell)
    {
        LayoutState layout = search.Layout;
        SearchOn(layout, search.Cover, limits);
        Cost longer = layout.Cost;
        (int proven, double seconds) = Clusters(project, layout, search.Cover, limits);
        var windows = new TwinWindows(layout, search.Cover, tell);
        windows.Improve();
        return new WallTwin(proven, longer, layout.Cost, seconds + windows.Seconds);
    }

    private static void SearchOn(LayoutState layout, CoverWatch cover, IReadOnlyList<StretchLimit> limits)
    {
        for (int go = 1; go <= Goes; go++)
        {
            foreach (Slot slot in layout.Slots)
                slot.District = 0;
            var district = new District(layout, cover, 0, layout.Slots, 1000UL * (ulong)go);
            new DistrictSearch(district, new StretchLimits(layout, limits), new PlacingOptions { MostDirections = MostDirections }).Run(Starts);
        }
    }

    private static (int Proven, double Seconds) Clusters(WallProject project, LayoutState layout, CoverWatch cover, IReadOnlyList<StretchLimit> limits)
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
        return (Math.Max(proven, alone), seconds);
    }

    private static int Unresolved(LayoutState layout, IReadOnlyList<StretchOfRow> stretches) =>
        stretches.Sum(s => layout.Rows[s.Row.Index].CostOf(s.First, s.Last).Unresolved);

    /// <summary>Takes other nails unless they break cover more.</summary>
    private static void Improve(LayoutState layout, CoverWatch cover, IReadOnlyList<StretchOfRow> stretches, IReadOnlyList<Placed> nails)
    {
        var trial = new Trial(layout, cover);
        foreach (StretchOfRow where in stretches)
        {
            ILookup<int, Placed> byOrdinal = nails.Where(where.Holds).OrderBy(n => n.Choice.Head.Along).ToLookup(n => n.Choice.Ordinal);
            for (int ordinal = where.First; ordinal <= where.Last; ordinal++)
                trial.Put(layout.Rows[where.Row.Index].Slots[ordinal], [.. byOrdinal[ordinal]]);
        }
        trial.End(orEqual: false);
    }
}
