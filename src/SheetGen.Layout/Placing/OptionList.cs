using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The free directions of a place, cheapest first, found as far as they are asked for; at the grid place also the grid's direction
/// left unresolved. A hole that hits a nail of another stretch is not free, or, while rows negotiate, pays for each.
/// </summary>
public sealed class OptionList
{
    private readonly RowTask _row;
    private readonly HeadChoice _choice;
    private readonly List<Option> _found = [];
    private readonly PriorityQueue<Option, (Cost Cost, int Order)> _seen = new();
    private readonly List<Placed>? _near;
    private readonly Negotiation? _terms;
    private readonly bool _isClosed;
    private readonly Func<Turning, bool>? _filter;
    private int _next;

    public OptionList(RowTask row, HeadChoice choice, RowStretch stretch)
    {
        _row = row;
        _choice = choice;
        _filter = null;
        _terms = stretch.Terms;
        _isClosed = stretch.PlainOnly.Contains(choice.Label) && !choice.IsAtGrid && !choice.IsPinned;
        double reach = row.LongestNail + row.Bay.Rules.NailClearance + row.Radius + row.Bay.Rules.Drift * row.LongestNail;
        _near = _isClosed || choice.IsPinned ? null : stretch.Others?.Around(choice.Point, reach);
    }

    private OptionList(OptionList whole, Func<Turning, bool> filter)
    {
        _row = whole._row;
        _choice = whole._choice;
        _filter = filter;
        _terms = whole._terms;
        _isClosed = whole._isClosed;
        _near = whole._near;
    }

    /// <summary>The same with fewer directions.</summary>
    public OptionList Filtered(Func<Turning, bool> filter) => new(this, filter);

    /// <summary>Cost of the cheapest; null where there is none.</summary>
    public Cost? Least => At(0)?.Cost;

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
        int last = _isClosed ? -1 : _choice.Turnings.Count;
        while (_next <= last)
        {
            if (_next < last && _seen.TryPeek(out _, out var cheapest)
                && !(Placed.CostOf(_row, _choice, _choice.Turnings[_next], false) < cheapest.Cost))
                break;
            Look(_next++);
        }
        if (!_seen.TryDequeue(out Option option, out _))
            return false;
        _found.Add(option);
        return true;
    }

    private void Look(int index)
    {
        bool unresolved = index == _choice.Turnings.Count;
        if (!unresolved && _filter is not null && !_filter(_choice.Turnings[index]))
            return;
        if (unresolved ? !_choice.IsAtGrid || _choice.IsPinned : !_row.IsFree(_choice, index))
            return;
        Turning turning = _choice.Turnings[unresolved ? 0 : index];
        Hole hole = _row.HoleOf(_choice, turning);
        Cost cost = Placed.CostOf(_row, _choice, turning, unresolved);
        if (!unresolved)
        {
            if (Toll(hole) is not { } toll)
                return;
            cost += toll;
        }
        _seen.Enqueue(new Option(turning, unresolved, hole, cost), (cost, index));
    }

    /// <summary>What the nails that a hole hits ask for it; null where one of them does not negotiate.</summary>
    private Cost? Toll(in Hole hole)
    {
        Cost toll = default;
        if (_near is null)
            return toll;
        double clearance = _row.Bay.Rules.NailClearance - 1e-9;
        foreach (Placed nail in _near)
        {
            if (nail.IsUnresolved || !HoleDistance.CloserThan(hole, nail.Hole, clearance))
                continue;
            if (_terms is null || nail.Choice.IsPinned)
                return null;
            toll += _terms.TollOf(nail);
        }
        return toll;
    }
}
