using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The cheapest chain of nails over a stretch of a row: dynamic programming over (place, direction), with the exact conflict between
/// neighbours; chains that a lower limit of the rest shows to be too dear are dropped. Directions are taken cheapest first.
/// </summary>
public sealed class RowPath
{
    private const int PairLooks = 24;
    private const int OptionLooks = 10;
    private const int CoarseSteps = 5;
    private const int NailsBefore = 12;
    private const int Refinements = 4;

    private readonly RowTask _row;
    private readonly RowStretch _stretch;
    private readonly List<HeadChoice> _choices = [];
    private readonly Dictionary<HeadChoice, int> _indexOf = [];
    private readonly List<int>[] _next;
    private readonly Cost[] _ahead;
    private readonly Cost[] _aheadPaired;
    private readonly OptionList[] _options;
    private readonly int[] _order;
    private readonly List<int>[] _before;
    private readonly Cost?[] _startCost;
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
        _before = [.. _choices.Select(_ => new List<int>())];
        _startCost = new Cost?[_choices.Count];
        _order = [.. Enumerable.Range(0, _choices.Count).OrderBy(i => _choices[i].Head.Along).ThenBy(i => i)];
        foreach (int from in _order)
        {
            foreach (int to in _next[from])
                _before[to].Add(from);
        }
        foreach ((int start, Cost cost) in Starts())
            _startCost[start] = cost;
        _ahead = new Cost[_choices.Count];
        _aheadPaired = new Cost[_choices.Count];
        Measure();
    }

    /// <summary>A lower limit of the stretch's cost that leaves conflicts between nails of the row out.</summary>
    public Cost Limit { get; private set; }

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
        Chain? best = Pass(Filtered((_, turning) => IsCoarse(turning)), checkEarlier, Cost.Infinite, long.MaxValue, out _);
        for (int round = 0; best is not null && round < Refinements && Limit < best.Cost; round++)
        {
            ILookup<int, Turning> now = best.Nails.ToLookup(n => n.Choice.Label, n => n.Turning);
            if (Pass(Filtered((choice, turning) => IsNear(now, choice, turning)), checkEarlier, best.Cost, long.MaxValue, out _) is not { } better)
                break;
            best = better;
        }
        if (best is not null && !(Limit < best.Cost))
            return best with { IsExact = true };
        bool mayGainNail = best is null || best.Cost.Unresolved > Limit.Unresolved || best.Cost.Noted > Limit.Noted;
        Chain? exact = Pass(_options, checkEarlier, best?.Cost ?? Cost.Infinite, mayGainNail ? 10 * looks : looks, out bool isComplete);
        return (exact ?? best) is { } chain ? chain with { IsExact = isComplete } : null;
    }

    private bool IsCoarse(Turning turning) =>
        IsMultiple(turning.Splay) && IsMultiple(turning.Inclination - _row.Bay.Section.Inclination);

    private bool IsMultiple(double degrees)
    {
        double coarse = CoarseSteps * _row.Bay.Rules.Redirect.Step;
        return Math.Abs(degrees - Math.Round(degrees / coarse) * coarse) < 1e-9;
    }

    private bool IsNear(ILookup<int, Turning> chain, HeadChoice choice, Turning turning)
    {
        if (turning.IsStraight || choice.IsPinned)
            return true;
        double reach = 2 * _row.Bay.Rules.Redirect.Step + 1e-9;
        foreach (Turning now in chain[choice.Label])
        {
            if (Math.Abs(now.Splay - turning.Splay) <= reach && Math.Abs(now.Inclination - turning.Inclination) <= reach)
                return true;
        }
        return false;
    }

    private OptionList[] Filtered(Func<HeadChoice, Turning, bool> filter) =>
        [.. _choices.Select((choice, i) => _options[i].Filtered(turning => filter(choice, turning)))];

    private readonly record struct State(Option Option, Cost Cost, int Choice, int Before);

    private readonly record struct Link(Cost Cost, int Choice, int State);

    /// <summary>
    /// One pass over the places in order: every direction of a place takes the cheapest nail before it that it does not conflict
    /// with. Only chains under the limit are kept.
    /// </summary>
    private Chain? Pass(OptionList[] options, bool checkEarlier, Cost under, long looks, out bool isComplete)
    {
        var states = new List<State>[_choices.Count];
        (int Choice, int State) last = (-1, -1);
        Cost cost = under;
        var links = new List<Link>();
        foreach (int choice in _order)
        {
            states[choice] = [];
            links.Clear();
            foreach (int before in _before[choice])
            {
                Cost between = Between(_choices[before], _choices[choice]);
                for (int s = 0; s < states[before].Count; s++)
                    links.Add(new Link(states[before][s].Cost + between, before, s));
            }
            if (_startCost[choice] is { } start)
                links.Add(new Link(start, -1, -1));
            if (links.Count == 0 || _ahead[choice].IsInfinite)
                continue;
            links.Sort((a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : a.Choice != b.Choice ? a.Choice.CompareTo(b.Choice) : a.State.CompareTo(b.State));
            if (!Extend(options[choice], choice, states, links, checkEarlier, cost, ref looks))
            {
                isComplete = false;
                return null;
            }
            if (EndCost(_choices[choice]) is not { } end)
                continue;
            for (int s = 0; s < states[choice].Count; s++)
            {
                if (states[choice][s].Cost + end < cost)
                {
                    cost = states[choice][s].Cost + end;
                    last = (choice, s);
                }
            }
        }
        isComplete = true;
        return last.Choice < 0 ? null : new Chain(NailsOf(states, last.Choice, last.State), cost, false);
    }

    /// <summary>Adds the states of one place; false where the number of looks is used up.</summary>
    private bool Extend(
        OptionList options, int choice, List<State>[] states, List<Link> links, bool checkEarlier, Cost under, ref long looks)
    {
        Cost twice = under.Twice;
        for (int rank = 0; options.At(rank) is { } option; rank++)
        {
            Cost rest = option.Cost.Twice + AheadTwice(choice, option.Cost);
            if (!(links[0].Cost.Twice + rest < twice))
                return true;
            looks -= OptionLooks;
            foreach (Link link in links)
            {
                if (!(link.Cost.Twice + rest < twice))
                    break;
                looks--;
                if (link.Choice >= 0 && Conflicts(states, link.Choice, link.State, option, checkEarlier))
                    continue;
                states[choice].Add(new State(option, link.Cost + option.Cost, link.Choice, link.State));
                break;
            }
            if (looks < 0)
                return false;
        }
        return true;
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

    private List<Placed> NailsOf(List<State>[] states, int choice, int state)
    {
        var chain = new List<Placed>();
        while (choice >= 0)
        {
            State at = states[choice][state];
            chain.Add(new Placed(_row, _choices[choice], at.Option.Turning, at.Option.IsUnresolved, at.Option.Hole));
            (choice, state) = (at.Choice, at.Before);
        }
        chain.Reverse();
        return chain;
    }

    private bool Conflicts(List<State>[] states, int choice, int state, Option option, bool checkEarlier)
    {
        if (option.IsUnresolved)
            return false;
        for (int back = 0; choice >= 0 && back < (checkEarlier ? NailsBefore : 1); back++)
        {
            State at = states[choice][state];
            if (!at.Option.IsUnresolved && HoleDistance.CloserThan(at.Option.Hole, option.Hole, _clearance))
                return true;
            (choice, state) = (at.Choice, at.Before);
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
            if (!_row.Ends.SkipsNoRun(from.Label, label) || SkipsPin(from.Label, label))
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

    /// <summary>True where a pinned nail stands between two grid stations: it may not be left out.</summary>
    private bool SkipsPin(int from, int to)
    {
        for (int label = from + 1; label < to; label++)
        {
            if (_row.Choices[label][0].IsPinned)
                return true;
        }
        return false;
    }

    /// <summary>A pinned nail is alone at its station.</summary>
    private static bool IsPair(HeadChoice a, HeadChoice b) => a.IsPinned || b.IsPinned;

    private IEnumerable<(int Choice, Cost Cost)> Starts()
    {
        for (int i = 0; i < _choices.Count; i++)
        {
            HeadChoice choice = _choices[i];
            int skipped = choice.Label - _stretch.First;
            if (skipped > 2 || SkipsPin(_stretch.First - 1, choice.Label))
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
        if (skipped > 2 || SkipsPin(choice.Label, _stretch.Last + 1))
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
        foreach (int i in _order.Reverse())
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
