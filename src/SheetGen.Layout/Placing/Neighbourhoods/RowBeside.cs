using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>
/// A stretch of a row, on through a corner, takes the heads and directions of the same stretch of a row above or below: nails that are moved and
/// turned alike keep clear of each other, so that what one row has found spreads over the wall. What is in their way is put elsewhere.
/// </summary>
internal sealed class RowBeside : INeighbourhood
{
    /// <summary>Rows up or down, the nearest likeliest: in a staggered pattern every second one has its stations above each other.</summary>
    private const int GreatestDistance = 4;

    /// <summary>Spacings that a stretch reaches at most to each side of its seed.</summary>
    private const int GreatestReach = 6;

    /// <summary>Rows and stretches that are looked at for one that the gaps allow.</summary>
    private const int Tries = 6;

    private readonly District _district;
    private readonly Insertion _insertion;
    private readonly List<RowTask[]> _lines;
    private readonly Dictionary<RowTask, int> _lineOf = new(ReferenceEqualityComparer.Instance);
    private readonly List<Slot> _slots = [];
    private readonly List<(Slot Slot, HeadChoice Head, Placed Like)> _nails = [];
    private readonly List<Placed> _hits = [];

    public RowBeside(District district)
    {
        _district = district;
        _insertion = new Insertion(district);
        _lines = RowLines.Of(district.Layout.Rows.Select(r => r.Row));
        for (int line = 0; line < _lines.Count; line++)
        {
            foreach (RowTask row in _lines[line])
                _lineOf[row] = line;
        }
    }

    public bool MovesSideways => true;

    public bool Propose(Slot seed)
    {
        SplitMix random = _district.Random;
        Along along = seed.Grid.Head.Along;
        double spacing = seed.Row.Bay.Section.HorizontalSpacing;
        int line = _lineOf[seed.Row];
        for (int tries = 0; tries < Tries; tries++)
        {
            Along from = along - spacing * (0.5 + random.Below(GreatestReach)), to = along + spacing * (0.5 + random.Below(GreatestReach));
            int other = line + (random.Below(2) == 0 ? 1 : -1) * (1 + random.EarlyBelow(GreatestDistance));
            if (other >= 0 && other < _lines.Count && Copy(_lines[other], _lines[line], from, to))
                return PutBack();
        }
        return false;
    }

    /// <summary>What is to stand in a stretch of a line of rows, bay by bay; false where the gaps do not allow it.</summary>
    private bool Copy(RowTask[] source, RowTask[] target, Along from, Along to)
    {
        _slots.Clear();
        _nails.Clear();
        foreach (RowTask row in target)
        {
            if (row.Row.Places[^1] < from || row.Row.Places[0] > to)
                continue;
            if (Array.Find(source, r => r.Bay == row.Bay) is not { } beside || !Copy(_district.Layout.Rows[beside.Index], _district.Layout.Rows[row.Index], from, to))
                return false;
        }
        return _nails.Count > 0;
    }

    private bool Copy(RowState source, RowState target, Along from, Along to)
    {
        RowTask row = target.Row;
        (int first, int last) = Stations(target, from, to);
        if (first > last)
            return false;
        HeadChoice? before = target.Before(first), after = target.After(last), previous = before;
        double half = row.Bay.Rules.ShiftStep / 2;
        Along low = before is null ? from : Along.Max(from, before.Head.Along + row.LeastGap - half);
        Along high = after is null ? to : Along.Min(to, after.Head.Along - row.LeastGap + half);
        foreach (Placed nail in source.Nails)
        {
            Along along = nail.Choice.Head.Along;
            if (along < low || along > high)
                continue;
            if (Nearest(row, first, last, along) is not { } head || !row.FitsAsNeighbours(previous, head) || !(head.IsAtGrid || row.FreeOf(head).Any))
                return false;
            _nails.Add((target.Slots[head.Ordinal], head, nail));
            previous = head;
        }
        if (!row.FitsAsNeighbours(previous, after))
            return false;
        for (int ordinal = first; ordinal <= last; ordinal++)
            _slots.Add(target.Slots[ordinal]);
        return true;
    }

    /// <summary>The grid stations of a row within a stretch; none where one of them may not be changed, those at its ends aside.</summary>
    private (int First, int Last) Stations(RowState row, Along from, Along to)
    {
        List<Along> places = row.Row.Row.Places;
        int first = 0, last = places.Count - 1;
        while (first <= last && (places[first] < from || !_district.May(row.Slots[first])))
            first++;
        while (first <= last && (places[last] > to || !_district.May(row.Slots[last])))
            last--;
        for (int ordinal = first; ordinal <= last; ordinal++)
        {
            if (!_district.May(row.Slots[ordinal]))
                return (0, -1);
        }
        return (first, last);
    }

    /// <summary>The place of some grid stations that is nearest to a distance along the line, within half a shift step; of equal ones the least shifted.</summary>
    private static HeadChoice? Nearest(RowTask row, int first, int last, Along along)
    {
        HeadChoice? nearest = null;
        double least = row.Bay.Rules.ShiftStep / 2 + row.Quantum, same = row.Quantum / 2;
        for (int ordinal = first; ordinal <= last; ordinal++)
        {
            if (Math.Abs(row.Row.Places[ordinal] - along) > row.Bay.Section.HorizontalSpacing)
                continue;
            foreach (HeadChoice choice in row.Choices[ordinal])
            {
                double apart = Math.Abs(choice.Head.Along - along);
                if (apart < least - same || (nearest is not null && apart < least + same && Math.Abs(choice.Shift) < Math.Abs(nearest.Shift)))
                    (nearest, least) = (choice, apart);
            }
        }
        return nearest;
    }

    private bool PutBack()
    {
        int unresolved = _slots.Count(s => s.IsUnresolved);
        foreach (Slot slot in _slots)
            _district.Trial.Free(slot);
        _insertion.Clear();
        foreach ((Slot slot, HeadChoice head, Placed like) in _nails)
        {
            if (!TryPut(slot, head, like))
                _insertion.Add(slot, head);
        }
        return _insertion.PutBack(_district.Random.Below(2) == 0 ? Insertion.Order.Random : Insertion.Order.FewestFirst, 0, 0, unresolved);
    }

    /// <summary>Puts a nail turned like another one; what is in its way is taken out and waits.</summary>
    /// <returns>False where what stands still, or one that was put like it, is in the way.</returns>
    private bool TryPut(Slot slot, HeadChoice head, Placed like)
    {
        int turning = like.IsUnresolved ? -1 : head.Turnings.NumberOf(like.Turning);
        if (turning < 0 || !slot.Row.IsFree(head, turning))
            return false;
        Placed nail = slot.Row.FreeOf(head).NailAt(turning);
        _hits.Clear();
        _district.Layout.AddHits(slot, nail.Hole, _hits);
        _hits.RemoveAll(h => h.IsUnresolved);
        if (_hits.Exists(h => !_district.May(_district.Layout.SlotOf(h)) || _slots.Contains(_district.Layout.SlotOf(h))))
            return false;
        foreach (Placed hit in _hits)
        {
            Slot other = _district.Layout.SlotOf(hit);
            if (other.Nails.Length > 0)
                _insertion.Take(other);
        }
        _insertion.Put(new Insertion.Seat(slot, head), nail);
        return true;
    }
}
