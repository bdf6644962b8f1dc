namespace SheetGen.Layout.Placing;

/// <summary>Stations of a line of rows, and how many of them must stay unresolved whatever stands beside them.</summary>
internal sealed class Cluster(IReadOnlyList<StretchOfRow> stretches)
{
    public IReadOnlyList<StretchOfRow> Stretches { get; } = stretches;

    public int Needs { get; private set; }

    public bool Meets(StretchOfRow other) => Stretches.Any(s => s.Row == other.Row && s.First <= other.Last && other.First <= s.Last);

    public bool Holds(RowTask row, int ordinal) => Stretches.Any(s => s.Row == row && s.First <= ordinal && ordinal <= s.Last);

    /// <summary>Proves how many stay unresolved at least, up to how many do.</summary>
    /// <param name="looks">Most pairs of nails to look at.</param>
    public void Prove(LayoutState found, long looks)
    {
        if (!Stretches.All(s => Fits(found.Rows[s.Row.Index], s)))
            return;
        int unresolved = Stretches.Sum(s => found.Rows[s.Row.Index].CostOf(s.First, s.Last).Unresolved);
        var search = new ClusterSearch(Stretches, found.Clearance, looks);
        while (Needs < unresolved && search.NeedsMoreThan(Needs))
            Needs++;
    }

    /// <summary>True where all neighbours stand as the search places them; beside pinned nails they may not.</summary>
    private static bool Fits(RowState row, StretchOfRow where)
    {
        HeadChoice? before = row.Before(where.First);
        for (int ordinal = where.First; ordinal <= where.Last; ordinal++)
        {
            foreach (Placed nail in row.At(ordinal))
            {
                if (!row.Row.FitsAsNeighbours(before, nail.Choice))
                    return false;
                before = nail.Choice;
            }
        }
        return row.Row.FitsAsNeighbours(before, row.After(where.Last));
    }

    /// <summary>
    /// Clusters around the unresolved nails of the lines that have more than their limits say, so many stations to both sides; those that meet
    /// are one.
    /// </summary>
    public static List<Cluster> Around(LayoutState found, IReadOnlyList<StretchLimit> limits, int margin)
    {
        var clusters = new List<Cluster>();
        foreach (RowTask[] line in RowLines.Of(found.Rows.Select(r => r.Row)))
        {
            (RowTask Row, int Ordinal)[] stations = [.. line.SelectMany(r => Enumerable.Range(0, r.Count).Select(ordinal => (r, ordinal)))];
            int[] unresolved = [.. Enumerable.Range(0, stations.Length).Where(i => found.Rows[stations[i].Row.Index].Slots[stations[i].Ordinal].IsUnresolved)];
            if (unresolved.Length <= limits.Where(l => line.Contains(l.Where.Row)).Sum(l => l.Cost.Unresolved))
                continue;
            for (int i = 0; i < unresolved.Length;)
            {
                int first = Math.Max(0, unresolved[i] - margin), last = unresolved[i];
                for (; i < unresolved.Length && unresolved[i] - margin <= last + margin + 1; i++)
                    last = unresolved[i];
                last = Math.Min(stations.Length - 1, last + margin);
                clusters.Add(new Cluster(StretchesOf(stations[first..(last + 1)])));
            }
        }
        return clusters;
    }

    private static StretchOfRow[] StretchesOf((RowTask Row, int Ordinal)[] stations) =>
        [.. stations.GroupBy(s => s.Row).Select(g => new StretchOfRow(g.Key, g.Min(s => s.Ordinal), g.Max(s => s.Ordinal)))];
}
