using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Lower limits of what a chain costs from a node on: conflicts between nails of the row left out, or only those of neighbours kept,
/// each pair of neighbours counting half of both its nails.
/// </summary>
internal sealed class ChainLimit
{
    private const int PairLooks = 24;

    private readonly ChainNodes _nodes;
    private readonly OptionList[] _options;
    private readonly double _clearance;
    private readonly Cost[] _ahead;
    private readonly Cost[] _aheadPaired;

    public ChainLimit(ChainNodes nodes, OptionList[] options, double clearance)
    {
        _nodes = nodes;
        _options = options;
        _clearance = clearance;
        _ahead = new Cost[nodes.Count];
        _aheadPaired = new Cost[nodes.Count];
        Cost whole = Cost.Infinite;
        for (int k = nodes.Count - 1; k >= 0; k--)
        {
            int node = nodes.InOrder[k];
            Measure(node);
            if (nodes.Start(node) is { } start && !_ahead[node].IsInfinite && options[node].Least is { } least
                && start + least + _ahead[node] < whole)
                whole = start + least + _ahead[node];
        }
        Whole = whole;
    }

    /// <summary>Lower limit of a whole chain, conflicts left out.</summary>
    public Cost Whole { get; }

    /// <summary>True where no chain gets from a node to the end.</summary>
    public bool IsDeadEnd(int node) => _ahead[node].IsInfinite;

    /// <summary>Twice a lower limit of what comes after a nail of some cost.</summary>
    public Cost AheadTwice(int node, Cost own)
    {
        Cost single = _ahead[node].Twice, paired = _aheadPaired[node] - own;
        return paired > single ? paired : single;
    }

    private void Measure(int node)
    {
        Cost best = _nodes.End(node) ?? Cost.Infinite;
        Cost paired = best.IsInfinite || _options[node].Least is not { } own ? Cost.Infinite : best.Twice + own;
        foreach (int next in _nodes.Next(node))
        {
            if (_ahead[next].IsInfinite || _options[next].Least is not { } least)
                continue;
            Cost step = _nodes.Between(node, next), cost = step + least + _ahead[next];
            if (cost < best)
                best = cost;
            Cost pair = step.Twice + CheapestPair(node, next) + _aheadPaired[next];
            if (pair < paired)
                paired = pair;
        }
        _ahead[node] = best;
        _aheadPaired[node] = paired;
    }

    /// <summary>Least cost of two neighbours that do not conflict; after enough looks, a lower limit of it.</summary>
    private Cost CheapestPair(int from, int to)
    {
        OptionList a = _options[from], b = _options[to];
        if (a.At(0) is not { } first || b.At(0) is not { } second)
            return Cost.Infinite;
        Cost limit = first.Cost + second.Cost;
        if (AreClear(first, second))
            return limit;
        // By rank of the first nail: the rank of the second that was not looked at yet.
        Span<int> second0 = stackalloc int[PairLooks];
        second0.Clear();
        second0[0] = 1;
        int rows = 2;
        for (int look = 1; look < PairLooks; look++)
        {
            int best = -1;
            Cost least = Cost.Infinite;
            for (int i = 0; i < rows; i++)
            {
                if (a.At(i) is { } x && b.At(second0[i]) is { } y && x.Cost + y.Cost < least)
                {
                    best = i;
                    least = x.Cost + y.Cost;
                }
            }
            if (best < 0)
                return Cost.Infinite;
            limit = least;
            if (AreClear(a.At(best)!, b.At(second0[best])!))
                return limit;
            second0[best]++;
            if (best == rows - 1 && rows < PairLooks)
                rows++;
        }
        return limit;
    }

    private bool AreClear(Option a, Option b) =>
        a.IsUnresolved || b.IsUnresolved || !HoleDistance.CloserThan(a.Hole, b.Hole, _clearance);
}
