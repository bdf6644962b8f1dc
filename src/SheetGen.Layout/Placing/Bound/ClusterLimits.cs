namespace SheetGen.Layout.Placing;

/// <summary>
/// Raises the limit of the rows alone where nails of a line of rows that are no neighbours, or stand on both sides of a corner, get in each
/// other's way: stretches that meet clusters are counted by these and by what is left of them, where that is more.
/// </summary>
internal sealed class ClusterLimits
{
    private const int Margin = 3;

    /// <summary>Most pairs of nails looked at in all clusters, and in one; a pair takes about 0.05 microseconds.</summary>
    private const long QuickLooks = 3_000_000, QuickLooksOfOne = 2_000_000;
    private const long ProvingLooks = 800_000_000, ProvingLooksOfOne = 100_000_000;

    private readonly List<Cluster> _counted = [];
    private readonly HashSet<StretchOfRow> _replaced = [];

    public ClusterLimits(LayoutState found, IReadOnlyList<StretchLimit> limits, bool prove)
    {
        List<Cluster> clusters = Cluster.Around(found, limits, Margin);
        long each = Math.Min(prove ? ProvingLooksOfOne : QuickLooksOfOne, (prove ? ProvingLooks : QuickLooks) / Math.Max(1, clusters.Count));
        Parallel.ForEach(clusters, w => w.Prove(found, each));
        clusters.RemoveAll(w => w.Needs == 0);
        List<StretchLimit> left = [.. limits];
        while (clusters.Count > 0)
            Gain += Count([clusters[0]], clusters, left);
    }

    /// <summary>What is to be added to the limit of the rows alone.</summary>
    public Cost Gain { get; }

    /// <summary>True for a grid station whose cost is counted by a cluster, or by what one leaves of a stretch.</summary>
    public bool Counts(RowTask row, int ordinal) =>
        _counted.Any(w => w.Holds(row, ordinal)) || _replaced.Any(s => s.Row == row && s.First <= ordinal && ordinal <= s.Last);

    /// <summary>Clusters and stretches that meet, counted the better way.</summary>
    private Cost Count(List<Cluster> group, List<Cluster> clusters, List<StretchLimit> limits)
    {
        clusters.Remove(group[0]);
        var stretches = new List<StretchLimit>();
        for (bool grows = true; grows;)
        {
            StretchLimit[] met = [.. limits.Where(l => group.Any(w => w.Meets(l.Where)))];
            stretches.AddRange(met);
            limits.RemoveAll(met.Contains);
            Cluster[] more = [.. clusters.Where(w => met.Any(l => w.Meets(l.Where)))];
            group.AddRange(more);
            clusters.RemoveAll(more.Contains);
            grows = more.Length > 0;
        }
        Cost alone = stretches.Aggregate(default(Cost), (sum, l) => sum + l.Cost);
        Cost together = group.Aggregate(default(Cost), (sum, w) => sum + new Cost(w.Needs, 0, 0, 0, 0));
        foreach (StretchOfRow rest in stretches.SelectMany(l => Rest(l.Where, group)))
            together += RowsAlone.LowerLimit(rest).Cost;
        if (!(alone < together))
            return default;
        _counted.AddRange(group);
        _replaced.UnionWith(stretches.Select(l => l.Where));
        return together - alone;
    }

    /// <summary>What the clusters leave of a stretch.</summary>
    private static IEnumerable<StretchOfRow> Rest(StretchOfRow where, List<Cluster> clusters)
    {
        for (int first = where.First; first <= where.Last; first++)
        {
            int last = first;
            while (last <= where.Last && !clusters.Any(w => w.Holds(where.Row, last)))
                last++;
            if (last > first)
                yield return where with { First = first, Last = last - 1 };
            first = last;
        }
    }
}
