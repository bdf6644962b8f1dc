using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Proves that some stretches together cannot do with few unresolved nails, whatever stands beside them: all their places and directions are
/// looked at, each nail against every other. Stations that must have a nail keep only candidates that are clear of one of every other's; the
/// sets of candidates are halved until that leaves nothing or a layout.
/// </summary>
internal sealed class ClusterSearch
{
    /// <summary>A larger set seldom takes away another's candidates.</summary>
    private const int GreatestSupport = 600;

    private readonly ClusterChain[] _chains;
    private readonly ClusterStation[] _stations;
    private readonly int[] _firstOf;
    private readonly double _clearance;
    private readonly double[] _weight;
    private readonly int[]?[][] _support;
    private long _looks;

    public ClusterSearch(IReadOnlyList<StretchOfRow> stretches, double clearance, long looks)
    {
        _chains = [.. stretches.Select(s => new ClusterChain(s))];
        _clearance = clearance - Tolerance.Rounding;
        _looks = looks;
        var stations = new List<ClusterStation>();
        _firstOf = new int[_chains.Length];
        for (int c = 0; c < _chains.Length; c++)
        {
            _firstOf[c] = stations.Count;
            for (int s = 0; s < _chains[c].Stations; s++)
                stations.Add(new ClusterStation(stretches[c].Row, stretches[c].First + s, _chains[c].NodesOf(s)));
        }
        _stations = [.. stations];
        _weight = [.. _stations.Select(_ => 1.0)];
        _support = [.. _stations.Select(_ => new int[]?[_stations.Length])];
    }

    /// <summary>Pairs that may still be looked at.</summary>
    public long LooksLeft => _looks;

    /// <summary>What is known of the nails of a cluster's stations.</summary>
    /// <param name="May">By station: candidates that its nails may take.</param>
    /// <param name="Must">By station: candidates one of which a nail takes; null where there may be none.</param>
    private sealed record Known(CandidateSet[] May, CandidateSet?[] Must)
    {
        public Known Copy() => new((CandidateSet[])May.Clone(), (CandidateSet?[])Must.Clone());
    }

    /// <summary>True where every layout of the cluster has more than so many unresolved nails; false where that is not so or could not be proven.</summary>
    public bool NeedsMoreThan(int unresolved)
    {
        var all = new Known([.. _stations.Select(s => CandidateSet.All(s.Count))], new CandidateSet?[_stations.Length]);
        for (int s = 0; s < _stations.Length; s++)
        {
            if (_stations[s].IsPinned)
                all.Must[s] = all.May[s];
        }
        return IsRefuted(all, new Queue<int>(Enumerable.Range(0, _stations.Length).Where(s => all.Must[s] is not null)), unresolved);
    }

    private bool IsRefuted(Known known, Queue<int> changed, int unresolved)
    {
        if (!Propagate(known, changed, unresolved))
            return true;
        if (_looks < 0)
            return false;
        int station = Next(known);
        if (station < 0)
            return false;
        ClusterStation at = _stations[station];
        if (known.Must[station] is not { } must)
        {
            Known with = known.Copy();
            with.Must[station] = with.May[station];
            if (!IsRefuted(with, new Queue<int>([station]), unresolved))
                return false;
            known.May[station] = CandidateSet.Of(at.Count, _ => false);
            return IsRefuted(known, new Queue<int>(), unresolved);
        }
        CandidateSet half = Half(at, must);
        Known first = known.Copy();
        first.Must[station] = half;
        if (!IsRefuted(first, new Queue<int>([station]), unresolved))
            return false;
        // No nail of the station is in the first half.
        known.May[station] = known.May[station].Without(half);
        known.Must[station] = must.Without(half);
        return IsRefuted(known, new Queue<int>([station]), unresolved);
    }

    /// <summary>The station to look at next: few candidates, and often in the way; -1 where each has one candidate or none.</summary>
    private int Next(Known known)
    {
        int next = -1;
        double least = double.PositiveInfinity;
        for (int s = 0; s < _stations.Length; s++)
        {
            int count = known.Must[s]?.Count ?? known.May[s].Count;
            if (count == 0 || (count == 1 && known.Must[s] is not null))
                continue;
            double score = Math.Log2(count + 1) / _weight[s];
            if (score < least)
                (next, least) = (s, score);
        }
        return next;
    }

    /// <summary>Half of some candidates, cut across where they are widest.</summary>
    private static CandidateSet Half(ClusterStation station, CandidateSet candidates)
    {
        double[] widest = station.Measures[0];
        double width = -1, middle = 0;
        foreach (double[] measure in station.Measures)
        {
            double low = double.PositiveInfinity, high = double.NegativeInfinity;
            foreach (int c in candidates.Members())
            {
                low = Math.Min(low, measure[c]);
                high = Math.Max(high, measure[c]);
            }
            if (high - low > width)
                (widest, width, middle) = (measure, high - low, (low + high) / 2);
        }
        if (width <= 0)
            return candidates.Where(c => c == candidates.Members().First());
        return candidates.Where(c => widest[c] <= middle);
    }

    /// <summary>Draws conclusions; false where nothing is left.</summary>
    private bool Propagate(Known known, Queue<int> changed, int unresolved)
    {
        do
        {
            while (changed.TryDequeue(out int station))
            {
                CandidateSet must = known.Must[station]!;
                if (must.Count == 0)
                    return Fail(station);
                if (must.Count > GreatestSupport)
                    continue;
                for (int other = 0; other < _stations.Length; other++)
                {
                    if (other == station || known.May[other].Count == 0 || (_stations[other].IsPinned && _stations[station].IsPinned))
                        continue;
                    CandidateSet left = Supported(other, known.May[other], station, must);
                    if (_looks < 0)
                        return true;
                    if (left.Count == known.May[other].Count)
                        continue;
                    known.May[other] = left;
                    if (known.Must[other] is not { } need)
                        continue;
                    CandidateSet still = need.And(left);
                    known.Must[other] = still;
                    if (still.Count == 0)
                        return Fail(other);
                    if (still.Count < need.Count && !changed.Contains(other))
                        changed.Enqueue(other);
                }
            }
            if (!AddNeeds(known, changed, unresolved))
                return false;
        }
        while (changed.Count > 0);
        return true;
    }

    private bool Fail(int station)
    {
        _weight[station]++;
        return false;
    }

    /// <summary>The candidates of a station that are clear of at least one of another's.</summary>
    private CandidateSet Supported(int station, CandidateSet candidates, int other, CandidateSet must)
    {
        int[] last = _support[station][other] ??= [.. Enumerable.Repeat(-1, _stations[station].Count)];
        Hole[] holes = _stations[station].Holes, others = _stations[other].Holes;
        return candidates.Where(c =>
        {
            if (last[c] >= 0 && must[last[c]])
                return true;
            foreach (int o in must.Members())
            {
                _looks--;
                if (HoleDistance.CloserThan(holes[c], others[o], _clearance))
                    continue;
                last[c] = o;
                return true;
            }
            return false;
        });
    }

    /// <summary>Stations that cannot do without a nail must have one; false where too many stay unresolved anyhow.</summary>
    private bool AddNeeds(Known known, Queue<int> changed, int unresolved)
    {
        var least = new int[_chains.Length];
        var nodes = new ChainNodesKnown[_chains.Length];
        for (int c = 0; c < _chains.Length; c++)
        {
            nodes[c] = new ChainNodesKnown(_chains[c].Count, _chains[c].Stations);
            for (int s = 0; s < _chains[c].Stations; s++)
                nodes[c].Set(s, _stations[_firstOf[c] + s], known.May[_firstOf[c] + s], known.Must[_firstOf[c] + s]);
            _looks -= _chains[c].Count;
            least[c] = nodes[c].Least(_chains[c]);
        }
        int whole = least.Sum();
        if (whole > unresolved)
            return false;
        for (int c = 0; c < _chains.Length; c++)
        {
            for (int s = 0; s < _chains[c].Stations; s++)
            {
                int station = _firstOf[c] + s;
                if (known.Must[station] is not null || known.May[station].Count == 0)
                    continue;
                nodes[c].Clear(_stations[station]);
                _looks -= _chains[c].Count;
                bool isNeeded = whole - least[c] + nodes[c].Least(_chains[c]) > unresolved;
                if (isNeeded)
                {
                    known.Must[station] = known.May[station];
                    changed.Enqueue(station);
                }
                nodes[c].Set(s, _stations[station], known.May[station], known.Must[station]);
            }
        }
        return true;
    }

    /// <summary>Which nodes of a chain may hold a resolved nail, and which must.</summary>
    private sealed class ChainNodesKnown(int nodes, int stations)
    {
        private readonly bool[] _free = new bool[nodes];
        private readonly bool[] _needed = new bool[nodes];
        private readonly bool[] _needs = new bool[stations];

        /// <summary>Notes what a station may and must have; nothing is noted of its nodes, or that was cleared.</summary>
        public void Set(int number, ClusterStation station, CandidateSet may, CandidateSet? must)
        {
            foreach (int c in may.Members())
                _free[station.NodeOf[c]] = true;
            _needs[number] = must is not null;
            foreach (int c in must?.Members() ?? [])
                _needed[station.NodeOf[c]] = true;
        }

        public void Clear(ClusterStation station)
        {
            foreach (int node in station.NodeOf)
                _free[node] = _needed[node] = false;
        }

        public int Least(ClusterChain chain) => chain.Least(_free, _needed, _needs);
    }
}
