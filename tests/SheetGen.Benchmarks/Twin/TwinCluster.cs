using SheetGen.Layout.Placing;

namespace SheetGen.Benchmarks.Twin;

/// <summary>Stretches of rows that are solved together, with all places of their nails.</summary>
internal sealed class TwinCluster
{
    private readonly List<(RowTask Row, HeadChoice Choice)> _nodes = [];
    private readonly LayoutState? _beside;

    /// <param name="beside">A layout whose other nails stand still; null where anything may stand before, after and beside the stretches.</param>
    public TwinCluster(IReadOnlyList<StretchOfRow> stretches, LayoutState? beside)
    {
        Stretches = stretches;
        _beside = beside;
        foreach (StretchOfRow where in stretches)
        {
            RowState? row = beside?.Rows[where.Row.Index];
            var nodes = new StretchNodes(row is null
                ? RowStretch.Open(where)
                : new RowStretch(where, row.Before(where.First), row.After(where.Last), false, false));
            Chains.Add((nodes, _nodes.Count));
            for (int p = 0; p < nodes.Count; p++)
                _nodes.Add((nodes.RowOf(p), nodes.ChoiceOf(p)));
        }
        foreach (var group in Enumerable.Range(0, _nodes.Count).GroupBy(n => (_nodes[n].Row.Index, _nodes[n].Choice.Ordinal)))
            Stations.Add(StationOf([.. group]));
    }

    public IReadOnlyList<StretchOfRow> Stretches { get; }

    /// <summary>The places of each stretch, and the number of its first place among all.</summary>
    public List<(StretchNodes Nodes, int First)> Chains { get; } = [];

    public List<TwinStation> Stations { get; } = [];

    public int Nodes => _nodes.Count;

    public bool MayStayUnresolved(int node) => _nodes[node].Choice is { IsAtGrid: true, IsPinned: false };

    /// <summary>The nail at a place; unresolved where it has no direction.</summary>
    public Placed NailAt(int node, Candidate? candidate)
    {
        (RowTask row, HeadChoice choice) = _nodes[node];
        return Placed.At(row, choice, candidate?.Turning ?? choice.Turnings[0], candidate is null);
    }

    private bool IsInside(Placed nail) => Stretches.Any(s => s.Holds(nail));

    private TwinStation StationOf(int[] nodes)
    {
        (RowTask row, HeadChoice first) = _nodes[nodes[0]];
        Placed[] beside = _beside is null || row.GridChoice(first.Ordinal).IsPinned
            ? []
            : [.. _beside.Rows[row.Index].Slots[first.Ordinal].Near.SelectMany(s => s.Nails).Where(n => !n.IsUnresolved && !IsInside(n))];
        var candidates = new List<Candidate>();
        foreach (int node in nodes)
        {
            HeadChoice choice = _nodes[node].Choice;
            for (int turning = 0; turning < choice.Turnings.Count; turning++)
            {
                if (!row.IsFree(choice, turning))
                    continue;
                var candidate = new Candidate(node, choice.Turnings[turning], row.HoleAt(choice, turning));
                if (!beside.Any(n => _beside!.AreTooClose(candidate.Hole, n.Hole)))
                    candidates.Add(candidate);
            }
        }
        return new TwinStation(row, first.Ordinal, candidates, row.GridChoice(first.Ordinal).IsPinned);
    }
}
