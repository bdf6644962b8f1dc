using Google.OrTools.Sat;
using SheetGen.Layout.Placing;

namespace SheetGen.Benchmarks.Twin;

/// <summary>
/// The least number of unresolved nails of a cluster, exactly or between two limits, by the CP-SAT solver of Google OR-Tools over all places
/// and directions. The directions of a station start as one box; two boxes exclude each other where no two of their candidates are clear of
/// each other, so that every answer is a lower limit. The nails of an answer are then looked for in their boxes; those that cannot stand
/// together are excluded and their boxes split, until the answer stands or reaches what is known.
/// </summary>
internal sealed class TwinSolver
{
    private const int DirectionSteps = 20_000;
    private const int GreatestDomain = 2_500;

    private readonly TwinCluster _cluster;
    private readonly ClearPairs _pairs;
    private readonly CpModel _model = new();
    private readonly List<BoolVar> _boxes = [];
    private readonly BoolVar[] _stands;
    private readonly BoolVar?[] _unresolved;
    private readonly TwinLimits _limits;
    private int _lower;
    private List<Placed>? _found;

    private TwinSolver(TwinCluster cluster, double clearance, TwinLimits limits)
    {
        _cluster = cluster;
        _limits = limits;
        _pairs = new ClearPairs(clearance);
        _stands = [.. Enumerable.Range(0, cluster.Nodes).Select(_ => _model.NewBoolVar(""))];
        _unresolved = [.. Enumerable.Range(0, cluster.Nodes).Select(n => cluster.MayStayUnresolved(n) ? _model.NewBoolVar("") : null)];
    }

    /// <summary>Lower limit and best known; equal where solved.</summary>
    /// <param name="Nails">The nails of a layout as good as the best known; null where none was found.</param>
    /// <param name="Seconds">Deterministic time of the solver.</param>
    public readonly record struct Answer(int Lower, int Upper, IReadOnlyList<Placed>? Nails, double Seconds);

    /// <param name="known">What is known to be possible; it is enough to prove that nothing is better.</param>
    public static Answer Solve(TwinCluster cluster, double clearance, int known, TwinLimits limits) => new TwinSolver(cluster, clearance, limits).Run(known);

    private Answer Run(int known)
    {
        foreach ((StretchNodes nodes, int first) in _cluster.Chains)
            TwinChains.Add(_model, nodes, first, _stands);
        foreach (TwinStation station in _cluster.Stations)
        {
            if (station.Candidates.Count > 0)
                AddLeaf(new CandidateBox(station, [.. station.Candidates], null));
            Stand(station);
        }
        _model.Minimize(LinearExpr.Sum(_unresolved.Where(u => u is not null).Select(u => u!)));
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1,random_seed:1,max_deterministic_time:{_limits.SolveSeconds}") };
        double seconds = 0;
        int round = 0, upper = known;
        for (; round < _limits.Rounds && _lower < upper && seconds < _limits.Seconds; round++)
        {
            CpSolverStatus status = solver.Solve(_model);
            seconds += solver.Response!.DeterministicTime;
            _lower = Math.Max(_lower, (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6));
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible) || _lower >= upper)
                break;
            if (Stands(solver))
                upper = Math.Min(upper, (int)Math.Round(solver.ObjectiveValue));
        }
        return new Answer(Math.Min(_lower, upper), upper, _found, seconds);
    }

    private BoolVar VariableOf(CandidateBox box) => _boxes[box.Variable];

    private void AddLeaf(CandidateBox box)
    {
        box.Variable = _boxes.Count;
        _boxes.Add(_model.NewBoolVar(""));
        box.Station.Leaves.Add(box);
        if (box.Parent is { } parent)
            _model.AddImplication(VariableOf(box), VariableOf(parent));
        foreach (TwinStation other in _cluster.Stations)
        {
            if (other == box.Station || (other.IsPinned && box.Station.IsPinned))
                continue;
            foreach (CandidateBox leaf in other.Leaves)
            {
                if (!_pairs.Exist(box, leaf))
                    _model.AddBoolOr([VariableOf(box).Not(), VariableOf(leaf).Not()]);
            }
        }
    }

    /// <summary>A nail at a place is unresolved or in a box.</summary>
    private void Stand(TwinStation station)
    {
        (StretchNodes nodes, int first) = _cluster.Chains.First(
            c => c.Nodes.RowOf(0) == station.Row && Enumerable.Range(0, c.Nodes.Count).Any(p => c.Nodes.ChoiceOf(p).Ordinal == station.Ordinal));
        for (int p = 0; p < nodes.Count; p++)
        {
            if (nodes.ChoiceOf(p).Ordinal != station.Ordinal)
                continue;
            int node = first + p;
            List<ILiteral> either = [_stands[node].Not(), .. station.Leaves.Where(l => l.Nodes.Contains(node)).Select(l => (ILiteral)VariableOf(l))];
            if (_unresolved[node] is { } unresolved)
            {
                either.Add(unresolved);
                _model.AddImplication(unresolved, _stands[node]);
            }
            _model.AddBoolOr(either);
        }
    }

    /// <summary>True where the nails of an answer can stand together; else what cannot is excluded and split.</summary>
    private bool Stands(CpSolver solver)
    {
        var nails = new List<(int Node, CandidateBox Box)>();
        foreach (TwinStation station in _cluster.Stations)
        {
            foreach (int node in station.Leaves.SelectMany(l => l.Nodes).Distinct())
            {
                if (solver.Value(_stands[node]) == 1 && (_unresolved[node] is not { } u || solver.Value(u) == 0))
                    nails.Add((node, station.Leaves.First(l => l.Nodes.Contains(node) && solver.Value(VariableOf(l)) == 1)));
            }
        }
        Candidate[][] domains = [.. nails.Select(n => n.Box.At(n.Node).ToArray())];
        bool all = true;
        var standing = new Candidate[nails.Count];
        var split = new HashSet<CandidateBox>();
        foreach (int[] group in Groups(domains, nails))
        {
            if (Find(group, domains, out _) is { } found)
            {
                for (int i = 0; i < group.Length; i++)
                    standing[group[i]] = found[i];
                continue;
            }
            all = false;
            int[] core = Core(group, domains);
            CandidateBox[] boxes = [.. core.Select(i => nails[i].Box)];
            if (CanStand([.. Enumerable.Range(0, boxes.Length)], [.. boxes.Select(b => b.Members)]) is false)
                _model.AddBoolOr(boxes.Select(b => (ILiteral)VariableOf(b).Not()));
            foreach (CandidateBox box in boxes)
                split.Add(box);
        }
        foreach (CandidateBox box in split.OrderBy(b => b.Variable))
            Split(box);
        if (all)
            _found = [.. nails.Select((n, i) => _cluster.NailAt(n.Node, standing[i])), .. UnresolvedOf(solver)];
        return all;
    }

    private IEnumerable<Placed> UnresolvedOf(CpSolver solver) =>
        from node in Enumerable.Range(0, _cluster.Nodes)
        where _unresolved[node] is { } u && solver.Value(u) == 1
        select _cluster.NailAt(node, null);

    private void Split(CandidateBox box)
    {
        if (box.Split(false) is not { } parts)
            return;
        box.Station.Leaves.Remove(box);
        AddLeaf(parts.Item1);
        AddLeaf(parts.Item2);
        Stand(box.Station);
    }

    /// <summary>Nails that any of their candidates could bring too close, as groups.</summary>
    private List<int[]> Groups(Candidate[][] domains, List<(int Node, CandidateBox Box)> nails)
    {
        int[] group = [.. Enumerable.Range(0, domains.Length)];
        for (int i = 0; i < domains.Length; i++)
        {
            for (int j = i + 1; j < domains.Length; j++)
            {
                if (group[i] == group[j] || !AnyTooClose(domains[i], domains[j]))
                    continue;
                int old = group[j], now = group[i];
                for (int k = 0; k < group.Length; k++)
                    group[k] = group[k] == old ? now : group[k];
            }
        }
        return [.. Enumerable.Range(0, domains.Length).GroupBy(i => group[i]).Select(g => g.ToArray())];
    }

    private bool AnyTooClose(Candidate[] a, Candidate[] b) => a.Any(x => b.Any(y => _pairs.AreTooClose(x, y)));

    /// <summary>Null where the steps ran out.</summary>
    private bool? CanStand(int[] nails, Candidate[][] domains) =>
        Find(nails, domains, out bool isProven) is not null ? true : isProven ? false : null;

    private Candidate[]? Find(int[] nails, Candidate[][] domains, out bool isProven)
    {
        isProven = false;
        return nails.Any(i => domains[i].Length > GreatestDomain)
            ? null
            : DirectionSearch.Find([.. nails.Select(i => domains[i])], _pairs, DirectionSteps, out isProven);
    }

    /// <summary>Nails that cannot stand together, none of which can be spared.</summary>
    private int[] Core(int[] nails, Candidate[][] domains)
    {
        if (CanStand(nails, domains) is not false)
            return nails;
        List<int> core = [.. nails];
        foreach (int nail in nails)
        {
            int[] without = [.. core.Where(i => i != nail)];
            if (without.Length > 0 && CanStand(without, domains) is false)
                core.Remove(nail);
        }
        return [.. core];
    }
}

/// <param name="Rounds">Most answers of the solver for a cluster.</param>
/// <param name="SolveSeconds">Most deterministic time of the solver for one answer.</param>
/// <param name="Seconds">Most deterministic time for a cluster.</param>
internal sealed record TwinLimits(int Rounds, double SolveSeconds, double Seconds);
