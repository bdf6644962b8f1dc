using SheetGen.Layout.Placing;

namespace SheetGen.Benchmarks.Twin;

/// <summary>Stretches of rows that are solved together, with anything before and after them and nothing beside them.</summary>
internal sealed class TwinCluster
{
    private readonly List<(RowTask Row, HeadChoice Choice)> _nodes = [];

    public TwinCluster(IReadOnlyList<StretchOfRow> stretches)
    {
        Stretches = stretches;
        foreach (StretchOfRow where in stretches)
        {
            var places = new StretchPlaces(RowStretch.Open(where));
            Chains.Add((places, _nodes.Count));
            for (int p = 0; p < places.Count; p++)
                _nodes.Add((places.RowOf(p), places.ChoiceOf(p)));
        }
        foreach (var group in Enumerable.Range(0, _nodes.Count).GroupBy(n => (_nodes[n].Row.Index, _nodes[n].Choice.Label)))
            Stations.Add(StationOf([.. group]));
    }

    public IReadOnlyList<StretchOfRow> Stretches { get; }

    /// <summary>The places of each stretch, and the number of its first place among all.</summary>
    public List<(StretchPlaces Places, int First)> Chains { get; } = [];

    public List<TwinStation> Stations { get; } = [];

    public int Nodes => _nodes.Count;

    public bool MayStayUnresolved(int node) => _nodes[node].Choice is { IsAtGrid: true, IsPinned: false };

    private TwinStation StationOf(int[] nodes)
    {
        (RowTask row, HeadChoice first) = _nodes[nodes[0]];
        var candidates = new List<Candidate>();
        foreach (int node in nodes)
        {
            HeadChoice choice = _nodes[node].Choice;
            for (int turning = 0; turning < choice.Turnings.Count; turning++)
            {
                if (row.IsFree(choice, turning))
                    candidates.Add(new Candidate(node, choice.Turnings[turning], row.HoleAt(choice, turning)));
            }
        }
        return new TwinStation(row, first.Label, candidates, row.GridChoice(first.Label).IsPinned);
    }
}
