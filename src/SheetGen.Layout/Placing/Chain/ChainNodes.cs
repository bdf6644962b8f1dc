namespace SheetGen.Layout.Placing;

/// <summary>The nodes over which a chain of nails is searched, the choices of head of some grid stations by number: which may follow which, start the chain or end it.</summary>
internal abstract class ChainNodes
{
    private readonly List<(RowTask Row, HeadChoice Choice)> _nodes = [];
    private readonly List<List<int>> _next = [];
    private readonly List<List<int>> _before = [];

    public int Count => _nodes.Count;

    /// <summary>Nodes in the order in which a chain runs through them.</summary>
    public IReadOnlyList<int> InOrder { get; protected init; } = [];

    public RowTask RowOf(int node) => _nodes[node].Row;

    public HeadChoice ChoiceOf(int node) => _nodes[node].Choice;

    public List<int> Next(int node) => _next[node];

    public List<int> Before(int node) => _before[node];

    /// <summary>What a chain that starts at a node leaves out; null where none may.</summary>
    public abstract Cost? Start(int node);

    /// <summary>What a chain that ends at a node leaves out; null where none may.</summary>
    public abstract Cost? End(int node);

    /// <summary>What a step from one node to another leaves out.</summary>
    public abstract Cost Between(int from, int to);

    protected int Add(RowTask row, HeadChoice choice)
    {
        _nodes.Add((row, choice));
        _next.Add([]);
        _before.Add([]);
        return _nodes.Count - 1;
    }

    protected void Join(int from, int to)
    {
        _next[from].Add(to);
        _before[to].Add(from);
    }
}
