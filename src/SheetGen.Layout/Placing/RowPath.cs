using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The cheapest chain of nails over a stretch of a row: best-first search over (place, direction), with the exact conflict between
/// neighbours and a lower limit that leaves conflicts between neighbours out. Directions are taken one by one, cheapest first.
/// </summary>
public sealed class RowPath
{
    private const int PairLooks = 24;

    private readonly RowTask _row;
    private readonly RowStretch _stretch;
    private readonly List<HeadChoice> _choices = [];
    private readonly Dictionary<HeadChoice, int> _indexOf = [];
    private readonly List<int>[] _next;
    private readonly Cost[] _ahead;
    private readonly Cost[] _aheadPaired;
    private readonly OptionList[] _options;
    private readonly double _clearance;

    public RowPath(RowTask row, RowStretch stretch)
    {
        _row = row;
        _stretch = stretch;
        _clearance = row.Bay.Rules.NailClearance - 1e-9;
        for (int label = stretch.First; label <= stretch.Last; label++)
        {
            foreach (HeadChoice choice in row.Choices[label])
            {
                _indexOf[choice] = _choices.Count;
                _choices.Add(choice);
            }
        }
        _options = [.. _choices.Select(c => new OptionList(row, c, stretch))];
        _next = [.. _choices.Select(c => Successors(c).ToList())];
        _ahead = new Cost[_choices.Count];
        _aheadPaired = new Cost[_choices.Count];
        Measure();
    }

    /// <summary>A lower limit of the stretch's cost that leaves conflicts between nails of the row out.</summary>
    public Cost Limit { get; private set; }

    /// <summary>The cheapest chain, or null where the limit of looks is reached.</summary>
    /// <param name="looks">Greatest number of looks; a count, so that the result never depends on the machine.</param>
    /// <param name="perChoice">Greatest number of directions kept for one place; int.MaxValue for an exact search.</param>
    /// <param name="checkEarlier">True to check each nail against the five before it, false for neighbours only (a bound).</param>
    /// <param name="lowerLimit">A proven lower limit of the cheapest chain's cost, also where none was found.</param>
    public List<Placed>? Cheapest(int looks, int perChoice, bool checkEarlier, out Cost lowerLimit)
    {
        var queue = new PriorityQueue<Step, (Cost Cost, int Order)>();
        int order = 0;
        var done = new HashSet<(int Choice, int Option)>();
        var kept = new int[_choices.Count];
        void Push(Node? from, int choice, int rank, Cost soFar)
        {
            if (_options[choice].At(rank) is not { } option)
                return;
            if (!_ahead[choice].IsInfinite)
                queue.Enqueue(new Step(from, choice, rank, soFar), ((soFar + option.Cost).Twice + AheadTwice(choice, option.Cost), order++));
        }
        lowerLimit = Limit;
        foreach ((int choice, Cost cost) in Starts())
            Push(null, choice, 0, cost);
        for (int look = 0; queue.TryDequeue(out Step step, out var priority); look++)
        {
            lowerLimit = priority.Cost.Half;
            if (step.Choice < 0)
                return Chain(step.From!);
            if (look >= looks)
                return null;
            Push(step.From, step.Choice, step.Rank + 1, step.SoFar);
            Option option = _options[step.Choice].At(step.Rank)!.Value;
            if (kept[step.Choice] >= perChoice || done.Contains((step.Choice, step.Rank)))
                continue;
            if (step.From is not null && Conflicts(step.From, option, checkEarlier))
                continue;
            done.Add((step.Choice, step.Rank));
            kept[step.Choice]++;
            var node = new Node(step.From, step.Choice, option, step.SoFar + option.Cost);
            if (EndCost(_choices[step.Choice]) is { } end)
                queue.Enqueue(new Step(node, -1, 0, node.Cost), ((node.Cost + end).Twice, order++));
            foreach (int next in _next[step.Choice])
                Push(node, next, 0, node.Cost + Between(_choices[step.Choice], _choices[next]));
        }
        lowerLimit = Cost.Infinite;
        return null;
    }

    /// <summary>
    /// Twice a lower limit of what comes after a nail of some cost: without conflicts, or with the cheapest pairs of neighbours that
    /// do not conflict, each pair counting half of both its nails.
    /// </summary>
    private Cost AheadTwice(int choice, Cost own)
    {
        Cost single = _ahead[choice].Twice, paired = _aheadPaired[choice] - own;
        return paired > single ? paired : single;
    }

    private sealed record Node(Node? From, int Choice, Option Option, Cost Cost);

    private readonly record struct Step(Node? From, int Choice, int Rank, Cost SoFar);

    private List<Placed> Chain(Node last)
    {
        var chain = new List<Placed>();
        for (Node? node = last; node is not null; node = node.From)
            chain.Add(new Placed(_row, _choices[node.Choice], node.Option.Turning, node.Option.IsUnresolved, node.Option.Hole));
        chain.Reverse();
        return chain;
    }

    private bool Conflicts(Node from, Option option, bool checkEarlier)
    {
        Node? node = from;
        for (int back = 0; node is not null && back < (checkEarlier ? 5 : 1); back++, node = node.From)
        {
            if (node.Option.IsUnresolved || option.IsUnresolved)
                continue;
            if (HoleDistance.CloserThan(node.Option.Hole, option.Hole, _clearance))
                return true;
        }
        return false;
    }

    private static Cost Between(HeadChoice from, HeadChoice to) =>
        Placed.LeavingOut(Math.Max(0, to.Label - from.Label - 1));

    private IEnumerable<int> Successors(HeadChoice from)
    {
        double reach = from.Head.Along + Math.Max(_row.GreatestGap, _row.GreatestMovedGap);
        for (int label = from.Label; label <= Math.Min(from.Label + 3, _stretch.Last); label++)
        {
            if (!_row.Ends.SkipsNoRun(from.Label, label))
                break;
            if (_row.Ends.IsBound(from.Label, label) && _row.Choices[label][0].Head.Along > reach && label > from.Label + 1)
                break;
            foreach (HeadChoice to in _row.Choices[label])
            {
                if (to.Head.Along > from.Head.Along && _row.Fits(from, to) && (label != from.Label || !IsPair(from, to)))
                    yield return _indexOf[to];
            }
        }
    }

    /// <summary>A pinned nail is alone at its station.</summary>
    private static bool IsPair(HeadChoice a, HeadChoice b) => a.IsPinned || b.IsPinned;

    private IEnumerable<(int Choice, Cost Cost)> Starts()
    {
        for (int i = 0; i < _choices.Count; i++)
        {
            HeadChoice choice = _choices[i];
            int skipped = choice.Label - _stretch.First;
            if (skipped > 2)
                break;
            bool fits = _stretch.Before is { } before
                ? _row.Ends.SkipsNoRun(before.Label, choice.Label) && _row.Fits(before, choice)
                : _stretch.IsOpenStart || (_row.Ends.RunOf(choice.Label) == 0 && _row.Ends.CoversStart(choice));
            if (fits)
                yield return (i, Placed.LeavingOut(skipped));
        }
    }

    private Cost? EndCost(HeadChoice choice)
    {
        int skipped = _stretch.Last - choice.Label;
        if (skipped > 2)
            return null;
        bool fits = _stretch.After is { } after
            ? _row.Ends.SkipsNoRun(choice.Label, after.Label) && _row.Fits(choice, after)
            : _stretch.IsOpenEnd || (_row.Ends.RunOf(choice.Label) == _row.Ends.LastRun && _row.Ends.CoversEnd(choice));
        return fits ? Placed.LeavingOut(skipped) : null;
    }

    /// <summary>Least cost of two neighbours that do not conflict; after enough looks, a lower limit of it.</summary>
    private Cost CheapestPair(int from, int to)
    {
        OptionList a = _options[from], b = _options[to];
        if (a.Least is not { } leastA || b.Least is not { } leastB)
            return Cost.Infinite;
        Option first = a.At(0)!.Value, second = b.At(0)!.Value;
        if (first.IsUnresolved || second.IsUnresolved || !HoleDistance.CloserThan(first.Hole, second.Hole, _clearance))
            return leastA + leastB;
        Span<int> row = stackalloc int[PairLooks];
        row.Clear();
        int rows = 1;
        Cost limit = leastA + leastB;
        row[0] = 1;
        rows = 2;
        for (int look = 1; look < PairLooks; look++)
        {
            int best = -1;
            Cost least = Cost.Infinite;
            for (int i = 0; i < rows; i++)
            {
                if (a.At(i) is { } x && b.At(row[i]) is { } y && x.Cost + y.Cost < least)
                {
                    best = i;
                    least = x.Cost + y.Cost;
                }
            }
            if (best < 0)
                return Cost.Infinite;
            limit = least;
            Option p = a.At(best)!.Value, q = b.At(row[best])!.Value;
            if (p.IsUnresolved || q.IsUnresolved || !HoleDistance.CloserThan(p.Hole, q.Hole, _clearance))
                return limit;
            row[best]++;
            if (best == rows - 1 && rows < PairLooks)
                rows++;
        }
        return limit;
    }

    /// <summary>Least cost from each place to the end, conflicts between nails of the row left out.</summary>
    private void Measure()
    {
        int[] order = [.. Enumerable.Range(0, _choices.Count).OrderByDescending(i => _choices[i].Head.Along)];
        foreach (int i in order)
        {
            Cost best = EndCost(_choices[i]) ?? Cost.Infinite;
            Cost paired = best.IsInfinite || _options[i].Least is not { } own ? Cost.Infinite : best.Twice + own;
            foreach (int next in _next[i])
            {
                if (_ahead[next].IsInfinite || _options[next].Least is not { } least)
                    continue;
                Cost cost = Between(_choices[i], _choices[next]) + least + _ahead[next];
                if (cost < best)
                    best = cost;
                Cost pair = Between(_choices[i], _choices[next]).Twice + CheapestPair(i, next) + _aheadPaired[next];
                if (pair < paired)
                    paired = pair;
            }
            _ahead[i] = best;
            _aheadPaired[i] = paired;
        }
        Limit = Cost.Infinite;
        foreach ((int i, Cost start) in Starts())
        {
            if (!_ahead[i].IsInfinite && _options[i].Least is { } least && start + least + _ahead[i] < Limit)
                Limit = start + least + _ahead[i];
        }
    }
}
