namespace SheetGen.Layout.Placing;

/// <summary>The places over which a chain of nails is searched: which may follow which, start the chain or end it.</summary>
internal abstract class ChainPlaces
{
    private readonly List<(RowTask Row, HeadChoice Choice)> _places = [];
    private readonly List<List<int>> _next = [];
    private readonly List<List<int>> _before = [];

    public int Count => _places.Count;

    /// <summary>Places in the order in which a chain runs through them.</summary>
    public IReadOnlyList<int> InOrder { get; protected init; } = [];

    public RowTask RowOf(int place) => _places[place].Row;

    public HeadChoice ChoiceOf(int place) => _places[place].Choice;

    public List<int> Next(int place) => _next[place];

    public List<int> Before(int place) => _before[place];

    /// <summary>What a chain that starts at a place leaves out; null where none may.</summary>
    public abstract Cost? Start(int place);

    /// <summary>What a chain that ends at a place leaves out; null where none may.</summary>
    public abstract Cost? End(int place);

    /// <summary>What a step from one place to another leaves out.</summary>
    public abstract Cost Between(int from, int to);

    protected int Add(RowTask row, HeadChoice choice)
    {
        _places.Add((row, choice));
        _next.Add([]);
        _before.Add([]);
        return _places.Count - 1;
    }

    protected void Join(int from, int to)
    {
        _next[from].Add(to);
        _before[to].Add(from);
    }
}
