namespace SheetGen.Layout.Placing;

/// <summary>A stretch of a cluster: the chains of nodes that may stand for its grid stations, and the least unresolved nails of one.</summary>
internal sealed class ClusterChain
{
    /// <summary>Stands for no chain at all.</summary>
    public const int None = 1_000_000;

    private readonly StretchNodes _nodes;
    private readonly int[] _ordinal;
    private readonly bool[] _mayStayUnresolved;
    private readonly int[][] _before;
    private readonly int[] _order;
    private readonly bool[] _starts;
    private readonly bool[] _ends;

    public ClusterChain(StretchOfRow where)
    {
        Where = where;
        _nodes = new StretchNodes(RowStretch.Open(where));
        int count = _nodes.Count;
        _order = [.. _nodes.InOrder];
        _ordinal = [.. Enumerable.Range(0, count).Select(p => _nodes.ChoiceOf(p).Ordinal - where.First)];
        _mayStayUnresolved = [.. Enumerable.Range(0, count).Select(p => _nodes.ChoiceOf(p) is { IsAtGrid: true, IsPinned: false })];
        _before = [.. Enumerable.Range(0, count).Select(p => _nodes.Before(p).ToArray())];
        _starts = [.. Enumerable.Range(0, count).Select(p => _nodes.Start(p) is not null)];
        _ends = [.. Enumerable.Range(0, count).Select(p => _nodes.End(p) is not null)];
    }

    public StretchOfRow Where { get; }

    public int Stations => Where.Last - Where.First + 1;

    /// <summary>The nodes that stand for a grid station, counted from the first of the stretch.</summary>
    public IReadOnlyList<(int Node, HeadChoice Choice)> NodesOf(int station) =>
        [.. _order.Where(p => _ordinal[p] == station).Select(p => (p, _nodes.ChoiceOf(p)))];

    public int Count => _nodes.Count;

    /// <summary>Least unresolved nails of a chain.</summary>
    /// <param name="free">By node: true where a nail may stand resolved.</param>
    /// <param name="needed">By node: true where a nail there is one that its station needs.</param>
    /// <param name="needs">By station: true where one of the needed nodes must hold a resolved nail.</param>
    public int Least(bool[] free, bool[] needed, bool[] needs)
    {
        // By node: least with the need of its station still open, and with it met.
        var open = new int[Count];
        var met = new int[Count];
        // By station: the last before it that needs a nail, which no step may pass over.
        Span<int> lastNeed = stackalloc int[Stations + 1];
        lastNeed[0] = -1;
        for (int s = 0; s < Stations; s++)
            lastNeed[s + 1] = needs[s] ? s : lastNeed[s];
        int least = None;
        foreach (int node in _order)
        {
            int ordinal = _ordinal[node], fromOpen = None, fromMet = _starts[node] && lastNeed[ordinal] < 0 ? 0 : None;
            bool startsHere = fromMet == 0;
            int arrived = startsHere ? 0 : None;
            fromMet = None;
            foreach (int before in _before[node])
            {
                if (_ordinal[before] == ordinal)
                {
                    fromOpen = Math.Min(fromOpen, open[before]);
                    fromMet = Math.Min(fromMet, met[before]);
                }
                else if (lastNeed[ordinal] <= _ordinal[before])
                {
                    arrived = Math.Min(arrived, needs[_ordinal[before]] ? met[before] : Math.Min(open[before], met[before]));
                }
            }
            fromOpen = Math.Min(fromOpen, arrived);
            int own = free[node] ? 0 : _mayStayUnresolved[node] ? 1 : None;
            open[node] = Math.Min(None, fromOpen + own);
            met[node] = Math.Min(None, Math.Min(fromMet + own, free[node] && needed[node] ? fromOpen : None));
            if (_ends[node] && lastNeed[Stations] <= ordinal)
                least = Math.Min(least, needs[ordinal] ? met[node] : Math.Min(open[node], met[node]));
        }
        return least;
    }
}
