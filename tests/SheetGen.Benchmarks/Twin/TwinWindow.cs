using Google.OrTools.Sat;
using SheetGen.Layout.Placing;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks.Twin;

/// <summary>The best nails of a window while all others stand still: fewest unresolved, then noted, then least effort; by the CP-SAT solver of Google OR-Tools.</summary>
internal sealed class TwinWindow
{
    /// <summary>Steps of effort in a degree, as the solver counts it.</summary>
    private const int EffortSteps = 10;

    /// <summary>More effort than a window can have, and more noted nails.</summary>
    private const long EffortLimit = 100_000, NotedLimit = 200;

    /// <summary>Long presolving takes all of the time that a window needs by far.</summary>
    private const string Presolve = "cp_model_probing_level:0,symmetry_level:0,max_presolve_iterations:1";

    private readonly WindowNodes _nodes;
    private readonly CpModel _model = new();
    private readonly BoolVar[] _stands;
    private readonly BoolVar?[] _unresolved;
    private readonly List<BoolVar>[] _nails;
    private readonly List<BoolVar> _counted = [];
    private readonly List<long> _weights = [];

    public TwinWindow(WindowNodes nodes)
    {
        _nodes = nodes;
        _stands = [.. Enumerable.Range(0, nodes.Count).Select(_ => _model.NewBoolVar(""))];
        _unresolved = [.. Enumerable.Range(0, nodes.Count).Select(n => nodes.MayStayUnresolved(n) ? _model.NewBoolVar("") : null)];
        _nails = [.. nodes.Nails.Select(l => l.Select(_ => _model.NewBoolVar("")).ToList())];
        HashSet<int> now = [.. Enumerable.Range(0, nodes.Count).Where(n => nodes.Nails[n].Exists(nodes.StandsNow) || nodes.IsUnresolvedNow(n))];
        foreach ((StretchNodes stretch, int first) in nodes.Chains)
            TwinChains.Add(_model, stretch, first, _stands, Count, now);
        for (int node = 0; node < nodes.Count; node++)
            AddNode(node);
        AddPairs();
        _model.Minimize(LinearExpr.WeightedSum(_counted, _weights));
    }

    /// <returns>Null where none were found.</returns>
    public IReadOnlyList<Placed>? Solve(double seconds, out double used)
    {
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1,random_seed:1,max_deterministic_time:{seconds},{Presolve}") };
        CpSolverStatus status = solver.Solve(_model);
        used = solver.Response!.DeterministicTime;
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            return null;
        var found = new List<Placed>();
        for (int node = 0; node < _nodes.Count; node++)
        {
            if (_unresolved[node] is { } unresolved && solver.Value(unresolved) == 1)
                found.Add(_nodes.UnresolvedAt(node));
            found.AddRange(_nodes.Nails[node].Where((_, i) => solver.Value(_nails[node][i]) == 1));
        }
        return found;
    }

    private void Count(BoolVar variable, Cost cost)
    {
        long weight = (cost.Unresolved * NotedLimit + cost.Noted) * EffortLimit + cost.Effort * EffortSteps / Cost.Point;
        if (weight == 0)
            return;
        _counted.Add(variable);
        _weights.Add(weight);
    }

    /// <summary>Where a nail stands it is one of those of the place, or unresolved.</summary>
    private void AddNode(int node)
    {
        List<ILiteral> one = [_stands[node].Not(), .. _nails[node]];
        bool stands = false;
        for (int i = 0; i < _nails[node].Count; i++)
        {
            Placed nail = _nodes.Nails[node][i];
            Count(_nails[node][i], nail.Cost);
            bool now = _nodes.StandsNow(nail);
            stands |= now;
            _model.AddHint(_nails[node][i], now ? 1 : 0);
        }
        if (_unresolved[node] is { } unresolved)
        {
            one.Add(unresolved);
            Count(unresolved, _nodes.UnresolvedAt(node).Cost);
            bool now = _nodes.IsUnresolvedNow(node);
            stands |= now;
            _model.AddHint(unresolved, now ? 1 : 0);
        }
        _model.AddHint(_stands[node], stands ? 1 : 0);
        _model.AddExactlyOne(one);
    }

    /// <summary>A nail excludes all of another node that are too close to it: at most one of them and it.</summary>
    private void AddPairs()
    {
        Bounds?[] reach = [.. Enumerable.Range(0, _nodes.Count).Select(_nodes.ReachOf)];
        var close = new List<ILiteral>();
        for (int a = 0; a < _nodes.Count; a++)
        {
            for (int b = a + 1; b < _nodes.Count; b++)
            {
                if (reach[a] is not { } own || reach[b] is not { } other || !own.Meets(other))
                    continue;
                for (int i = 0; i < _nails[a].Count; i++)
                {
                    close.Clear();
                    for (int j = 0; j < _nails[b].Count; j++)
                    {
                        if (_nodes.AreTooClose(_nodes.Nails[a][i], _nodes.Nails[b][j]))
                            close.Add(_nails[b][j]);
                    }
                    if (close.Count > 0)
                        _model.AddAtMostOne([_nails[a][i], .. close]);
                }
            }
        }
    }
}
