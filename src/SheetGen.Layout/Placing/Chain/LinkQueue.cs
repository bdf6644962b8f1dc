namespace SheetGen.Layout.Placing;

/// <summary>
/// The chains that a nail may follow, cheapest first, found as far as they are asked for: a merge of the chains that end at each node
/// before it, which are in order already.
/// </summary>
internal sealed class LinkQueue
{
    private readonly PriorityQueue<Source, (Cost Cost, int Order)> _sources = new();
    private readonly List<Link> _found = [];

    /// <param name="Node">The node before; -1 where the chain starts here.</param>
    /// <param name="Rank">Rank of the chain among those that end there, cheapest first.</param>
    public readonly record struct Link(Cost Cost, int Node, int Rank);

    private sealed record Source(int Node, int Order, List<ChainEnd> Ends, Cost Step)
    {
        public int Next { get; set; }
    }

    public void Clear()
    {
        _sources.Clear();
        _found.Clear();
    }

    public void AddStart(Cost cost) => _sources.Enqueue(new Source(-1, -1, [], cost), (cost, -1));

    /// <summary>Chains that end at a node, cheapest first, and what the step from there costs.</summary>
    public void Add(int node, List<ChainEnd> ends, Cost step)
    {
        if (ends.Count > 0)
            _sources.Enqueue(new Source(node, node, ends, step), (ends[0].Cost + step, node));
    }

    public Link? At(int rank)
    {
        while (_found.Count <= rank && _sources.TryDequeue(out Source? source, out var first))
        {
            _found.Add(new Link(first.Cost, source.Node, source.Next));
            source.Next++;
            if (source.Next < source.Ends.Count)
                _sources.Enqueue(source, (source.Ends[source.Next].Cost + source.Step, source.Order));
        }
        return rank < _found.Count ? _found[rank] : null;
    }
}
