using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Lower limits of what a chain costs from a place on: conflicts between nails of the row left out, or only those of neighbours kept,
/// each pair of neighbours counting half of both its nails.
/// </summary>
internal sealed class ChainLimit
{
    private const int PairLooks = 24;

    private readonly ChainPlaces _places;
    private readonly OptionList[] _options;
    private readonly double _clearance;
    private readonly Cost[] _ahead;
    private readonly Cost[] _aheadPaired;

    public ChainLimit(ChainPlaces places, OptionList[] options, double clearance)
    {
        _places = places;
        _options = options;
        _clearance = clearance;
        _ahead = new Cost[places.Count];
        _aheadPaired = new Cost[places.Count];
        Cost whole = Cost.Infinite;
        for (int k = places.Count - 1; k >= 0; k--)
        {
            int place = places.InOrder[k];
            Measure(place);
            if (places.Start(place) is { } start && !_ahead[place].IsInfinite && options[place].Least is { } least
                && start + least + _ahead[place] < whole)
                whole = start + least + _ahead[place];
        }
        Whole = whole;
    }

    /// <summary>Lower limit of a whole chain, conflicts left out.</summary>
    public Cost Whole { get; }

    /// <summary>True where no chain gets from a place to the end.</summary>
    public bool IsDeadEnd(int place) => _ahead[place].IsInfinite;

    /// <summary>Twice a lower limit of what comes after a nail of some cost.</summary>
    public Cost AheadTwice(int place, Cost own)
    {
        Cost single = _ahead[place].Twice, paired = _aheadPaired[place] - own;
        return paired > single ? paired : single;
    }

    private void Measure(int place)
    {
        Cost best = _places.End(place) ?? Cost.Infinite;
        Cost paired = best.IsInfinite || _options[place].Least is not { } own ? Cost.Infinite : best.Twice + own;
        foreach (int next in _places.Next(place))
        {
            if (_ahead[next].IsInfinite || _options[next].Least is not { } least)
                continue;
            Cost step = _places.Between(place, next), cost = step + least + _ahead[next];
            if (cost < best)
                best = cost;
            Cost pair = step.Twice + CheapestPair(place, next) + _aheadPaired[next];
            if (pair < paired)
                paired = pair;
        }
        _ahead[place] = best;
        _aheadPaired[place] = paired;
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
