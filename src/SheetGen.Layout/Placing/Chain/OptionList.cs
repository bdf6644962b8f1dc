using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The free directions of a place, cheapest first, found as far as they are asked for; at the grid place also the grid's direction
/// left unresolved. A hole that hits a nail of another stretch is not free; one that passes through a priced place pays for it.
/// </summary>
internal sealed class OptionList
{
    private const short Blocked = -1;

    /// <summary>Directions whose answers are remembered in one piece: most places are asked for their cheapest ones only.</summary>
    private const int KnownAtOnce = 64;

    private readonly RowTask _row;
    private readonly HeadChoice _choice;
    private readonly Cost _ofPlace;
    private readonly Placed[] _near;
    private readonly Price[] _prices;
    private readonly List<Option> _free;
    private readonly short[]?[] _known;
    private readonly IReadOnlyList<int>? _only;
    private readonly List<Option> _found = [];
    private readonly PriorityQueue<Option, (Cost Cost, int Order)> _seen = new();
    private int _next;

    /// <param name="near">The nails that stand near the place.</param>
    /// <param name="prices">Places near it that a hole pays for passing through.</param>
    public OptionList(RowTask row, HeadChoice choice, Placed[] near, Price[] prices)
    {
        _row = row;
        _choice = choice;
        _ofPlace = Placed.OfPlace(row, choice);
        _near = near;
        _prices = prices;
        _free = [];
        _known = new short[choice.Turnings.Count / KnownAtOnce + 1][];
    }

    private OptionList(OptionList whole, IReadOnlyList<int> only)
    {
        _row = whole._row;
        _choice = whole._choice;
        _ofPlace = whole._ofPlace;
        _prices = whole._prices;
        _near = whole._near;
        _free = whole._free;
        _known = whole._known;
        _only = only;
    }

    /// <summary>Cost of the cheapest; null where there is none.</summary>
    public Cost? Least => At(0)?.Cost;

    private int Count => _only?.Count ?? _choice.Turnings.Count;

    /// <summary>The same with only some of the directions, given by their numbers in order.</summary>
    public OptionList Only(IReadOnlyList<int> turnings) => new(this, turnings);

    public Option? At(int rank)
    {
        while (_found.Count <= rank && FindNext())
        {
        }
        return rank < _found.Count ? _found[rank] : null;
    }

    /// <summary>Looks at directions until none that is still to come can be cheaper than the cheapest seen.</summary>
    private bool FindNext()
    {
        int last = Count;
        while (_next <= last)
        {
            int turning = _next < last ? _only?[_next] ?? _next : -1;
            if (turning >= 0 && _seen.TryPeek(out _, out var cheapest) && !(_ofPlace + _choice.Turnings[turning].Cost < cheapest.Cost))
                break;
            Option? option = turning < 0 ? LeftUnresolved() : Look(turning);
            _next++;
            if (option is null)
                continue;
            // Without prices directions come in the order of their cost.
            if (_prices.Length == 0)
            {
                _found.Add(option);
                return true;
            }
            _seen.Enqueue(option, (option.Cost, _next));
        }
        if (!_seen.TryDequeue(out Option? found, out _))
            return false;
        _found.Add(found);
        return true;
    }

    private Option? LeftUnresolved() => _choice.IsAtGrid && !_choice.IsPinned ? Make(_choice.Turnings[0], true) : null;

    /// <summary>A direction if it is free; remembered: 0 not looked at, else 1 + its number among the free ones.</summary>
    private Option? Look(int turning)
    {
        short[] known = _known[turning / KnownAtOnce] ??= new short[KnownAtOnce];
        ref short answer = ref known[turning % KnownAtOnce];
        if (answer == 0)
        {
            Option? option = Find(turning);
            if (option is not null)
                _free.Add(option);
            answer = option is null ? Blocked : (short)_free.Count;
        }
        return answer == Blocked ? null : _free[answer - 1];
    }

    private Option? Find(int turning)
    {
        if (!_row.IsFree(_choice, turning))
            return null;
        Option option = Make(_choice.Turnings[turning], false);
        if (HitsNear(option.Hole))
            return null;
        Cost extra = default;
        foreach (Price price in _prices)
        {
            if (price.IsPassedBy(option.Hole))
                extra += price.Charge;
        }
        return extra > default(Cost) ? option with { Cost = option.Cost + extra } : option;
    }

    private Option Make(Turning turning, bool isUnresolved) => new(
        turning, isUnresolved, _row.HoleOf(_choice, turning),
        _ofPlace + turning.Cost + (isUnresolved ? Placed.Unresolving : default));

    private bool HitsNear(in Hole hole)
    {
        double clearance = _row.Bay.Rules.NailClearance - Tolerance.Rounding;
        for (int i = 0; i < _near.Length; i++)
        {
            Placed nail = _near[i];
            if (!HoleDistance.CloserThan(hole, nail.Hole, clearance))
                continue;
            // The next direction is likely to hit the same nail: it comes first.
            (_near[0], _near[i]) = (nail, _near[0]);
            return true;
        }
        return false;
    }
}
