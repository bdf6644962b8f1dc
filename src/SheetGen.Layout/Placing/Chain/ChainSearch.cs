using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The cheapest chain of nails over nodes that follow each other: dynamic programming over (node, direction), with the exact conflict
/// between neighbours; chains that a lower limit of the rest shows to be too dear are dropped. Directions are taken cheapest first.
/// </summary>
internal sealed class ChainSearch
{
    private const int OptionLooks = 10;
    private const int NailsBefore = 12;
    private const int Refinements = 4;
    private const int RefinedSteps = 2;

    private static readonly Cost[] CoarseSteps =
    [
        new(0, 0, 10 * Cost.Point, 0, 0), new(0, 0, 30 * Cost.Point, 0, 0), new(0, 1, 60 * Cost.Point, 0, 0), new(0, 4, 0, 0, 0), new(1, 0, 0, 0, 0),
    ];

    private readonly ChainNodes _nodes;
    private readonly OptionList[] _options;
    private readonly ChainLimit _limit;
    private readonly double _clearance;

    public ChainSearch(ChainNodes nodes, Surroundings beside, double clearance)
    {
        _nodes = nodes;
        _clearance = clearance - Tolerance.Rounding;
        _options = [.. Enumerable.Range(0, nodes.Count).Select(i => OptionsAt(i, beside))];
        _limit = new ChainLimit(nodes, _options, _clearance);
    }

    /// <summary>A lower limit of a chain's cost that leaves conflicts between its nails out.</summary>
    public Cost Limit => _limit.Whole;

    /// <summary>
    /// The cheapest chain; null where no chain fits at all. First a chain over directions in coarse steps, then, again and again, over
    /// directions near those of the last chain, at last over all directions that could still beat it.
    /// </summary>
    /// <param name="checkEarlier">
    /// True to check each nail against the twelve before it; false for neighbours only: then the cost of an exact chain is a lower
    /// limit of every chain's.
    /// </param>
    /// <param name="looks">
    /// Greatest number of pairs looked at in the last pass, ten times as many where an unresolved or noted nail may be gained; a count,
    /// so that the result depends on no clock.
    /// </param>
    public Chain? Cheapest(bool checkEarlier, long looks)
    {
        Chain? best = Coarse(checkEarlier);
        for (int round = 0; best is not null && round < Refinements && Limit < best.Cost; round++)
        {
            ILookup<(RowTask, int), Turning> now = best.Nails.ToLookup(n => (n.Row, n.Choice.Ordinal), n => n.Turning);
            var near = new Dictionary<(RowTask, int), int[]>();
            OptionList[] options = Only((row, choice) =>
            {
                if (choice.IsPinned)
                    return choice.Turnings.Coarse;
                if (!near.TryGetValue((row, choice.Ordinal), out int[]? turnings))
                    near[(row, choice.Ordinal)] = turnings = choice.Turnings.Around(now[(row, choice.Ordinal)], RefinedSteps);
                return turnings;
            });
            if (Pass(options, checkEarlier, best.Cost, long.MaxValue, out _) is not { } better)
                break;
            best = better;
        }
        if (best is not null && !(Limit < best.Cost))
            return best with { IsExact = true };
        bool mayGainNail = best is null || best.Cost.Unresolved > Limit.Unresolved || best.Cost.Noted > Limit.Noted;
        Chain? exact = Pass(_options, checkEarlier, best?.Cost ?? Cost.Infinite, mayGainNail ? 10 * looks : looks, out bool isComplete);
        return (exact ?? best) is { } chain ? chain with { IsExact = isComplete } : null;
    }

    private OptionList OptionsAt(int node, Surroundings beside)
    {
        RowTask row = _nodes.RowOf(node);
        HeadChoice choice = _nodes.ChoiceOf(node);
        return new OptionList(row, choice, beside.Near(row, choice), beside.PricesNear(row, choice));
    }

    /// <summary>The cheapest chain over coarse directions, looked for a little above the limit first: nearly all lie there.</summary>
    private Chain? Coarse(bool checkEarlier)
    {
        OptionList[] options = Only((_, choice) => choice.Turnings.Coarse);
        foreach (Cost above in CoarseSteps)
        {
            if (Pass(options, checkEarlier, Limit + above, long.MaxValue, out _) is { } chain)
                return chain;
        }
        return Pass(options, checkEarlier, Cost.Infinite, long.MaxValue, out _);
    }

    private OptionList[] Only(Func<RowTask, HeadChoice, IReadOnlyList<int>> directions) =>
        [.. _options.Select((list, i) => list.Only(directions(_nodes.RowOf(i), _nodes.ChoiceOf(i))))];

    /// <summary>
    /// One pass over the nodes in order: every direction of a node takes the cheapest nail before it that it does not conflict
    /// with. Only chains under the limit are kept.
    /// </summary>
    private Chain? Pass(OptionList[] options, bool checkEarlier, Cost under, long looks, out bool isComplete)
    {
        var ends = new List<ChainEnd>[_nodes.Count];
        (int Node, int Rank) last = (-1, -1);
        Cost cost = under;
        var links = new LinkQueue();
        foreach (int node in _nodes.InOrder)
        {
            ends[node] = [];
            if (_limit.IsDeadEnd(node))
                continue;
            links.Clear();
            foreach (int before in _nodes.Before(node))
                links.Add(before, ends[before], _nodes.Between(before, node));
            if (_nodes.Start(node) is { } start)
                links.AddStart(start);
            if (links.At(0) is null)
                continue;
            if (!Extend(options[node], node, ends, links, checkEarlier, cost, ref looks))
            {
                isComplete = false;
                return null;
            }
            if (_nodes.End(node) is not { } end)
                continue;
            for (int s = 0; s < ends[node].Count; s++)
            {
                if (ends[node][s].Cost + end < cost)
                {
                    cost = ends[node][s].Cost + end;
                    last = (node, s);
                }
            }
        }
        isComplete = true;
        return last.Node < 0 ? null : new Chain(NailsOf(ends, last.Node, last.Rank), cost, false);
    }

    /// <summary>Adds the chains that end at one node, cheapest first; false where the number of looks is used up.</summary>
    private bool Extend(
        OptionList options, int node, List<ChainEnd>[] ends, LinkQueue links, bool checkEarlier, Cost under, ref long looks)
    {
        Cost twice = under.Twice, first = links.At(0)!.Value.Cost.Twice;
        List<ChainEnd> here = ends[node];
        for (int rank = 0; options.At(rank) is { } option; rank++)
        {
            Cost rest = option.Cost.Twice + _limit.AheadTwice(node, option.Cost);
            if (!(first + rest < twice))
                break;
            looks -= OptionLooks;
            for (int k = 0; links.At(k) is { } link && link.Cost.Twice + rest < twice; k++)
            {
                looks--;
                if (link.Node >= 0 && Conflicts(ends, link.Node, link.Rank, option, checkEarlier))
                    continue;
                here.Add(new ChainEnd(option, link.Cost + option.Cost, link.Node, link.Rank));
                break;
            }
            if (looks < 0)
                return false;
        }
        SortByCost(here);
        return true;
    }

    /// <summary>Nearly in order already; equal costs keep their order.</summary>
    private static void SortByCost(List<ChainEnd> ends)
    {
        for (int i = 1; i < ends.Count; i++)
        {
            ChainEnd end = ends[i];
            int at = i;
            for (; at > 0 && end.Cost < ends[at - 1].Cost; at--)
                ends[at] = ends[at - 1];
            ends[at] = end;
        }
    }

    private List<Placed> NailsOf(List<ChainEnd>[] ends, int node, int rank)
    {
        var chain = new List<Placed>();
        while (node >= 0)
        {
            ChainEnd at = ends[node][rank];
            chain.Add(new Placed(_nodes.RowOf(node), _nodes.ChoiceOf(node), at.Option.Turning, at.Option.IsUnresolved, at.Option.Hole));
            (node, rank) = (at.Node, at.Rank);
        }
        chain.Reverse();
        return chain;
    }

    private bool Conflicts(List<ChainEnd>[] ends, int node, int rank, Option option, bool checkEarlier)
    {
        if (option.IsUnresolved)
            return false;
        for (int back = 0; node >= 0 && back < (checkEarlier ? NailsBefore : 1); back++)
        {
            ChainEnd at = ends[node][rank];
            if (!at.Option.IsUnresolved && HoleDistance.CloserThan(at.Option.Hole, option.Hole, _clearance))
                return true;
            (node, rank) = (at.Node, at.Rank);
        }
        return false;
    }
}
