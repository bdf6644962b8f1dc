using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The free directions of a place, cheapest first, found as far as they are asked for; last of all, at the grid place only, the
/// grid's direction left unresolved.
/// </summary>
public sealed class OptionList
{
    private readonly RowTask _row;
    private readonly HeadChoice _choice;
    private readonly List<Option> _found = [];
    private readonly List<Placed>? _near;
    private readonly bool _isClosed;
    private int _next;
    private bool _isComplete;

    public OptionList(RowTask row, HeadChoice choice, RowStretch stretch)
    {
        _row = row;
        _choice = choice;
        _isClosed = stretch.PlainOnly.Contains(choice.Label) && !choice.IsAtGrid && !choice.IsPinned;
        double reach = row.LongestNail + row.Bay.Rules.NailClearance + row.Radius + row.Bay.Rules.Drift * row.LongestNail;
        _near = _isClosed || choice.IsPinned ? null : stretch.Others?.Around(choice.Point, reach);
    }

    /// <summary>Cost of the cheapest; null where there is none.</summary>
    public Cost? Least => At(0)?.Cost;

    public Option? At(int rank)
    {
        while (_found.Count <= rank && !_isComplete)
            FindNext();
        return rank < _found.Count ? _found[rank] : null;
    }

    private void FindNext()
    {
        if (_isClosed)
        {
            _isComplete = true;
            return;
        }
        for (; _next < _choice.Turnings.Count; _next++)
        {
            if (!_row.IsFree(_choice, _next))
                continue;
            Turning turning = _choice.Turnings[_next];
            Hole hole = _row.HoleOf(_choice, turning);
            if (IsBlocked(hole))
                continue;
            _next++;
            _found.Add(new Option(turning, false, hole, Placed.CostOf(_row, _choice, turning, false)));
            return;
        }
        _isComplete = true;
        if (_choice.IsAtGrid && !_choice.IsPinned)
        {
            Turning straight = _choice.Turnings[0];
            _found.Add(new Option(straight, true, _row.HoleOf(_choice, straight), Placed.CostOf(_row, _choice, straight, true)));
        }
    }

    private bool IsBlocked(in Hole hole)
    {
        if (_near is null)
            return false;
        double clearance = _row.Bay.Rules.NailClearance - 1e-9;
        foreach (Placed nail in _near)
        {
            if (!nail.IsUnresolved && HoleDistance.CloserThan(hole, nail.Hole, clearance))
                return true;
        }
        return false;
    }
}
