using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Whether an unresolved nail can stand under relaxed rules: tried with the search, nothing else left unresolved for it.</summary>
internal sealed class Freeing(District whole)
{
    private const int Trials = 20;
    private const int Others = 8;

    private readonly Insertion _insertion = new(whole);
    private readonly List<Slot> _slots = [];
    private readonly List<Placed> _hits = [];

    /// <summary>True where the nail finds a direction and all others stand as before or elsewhere. The layout stands as before.</summary>
    public bool Frees(Relaxed relaxed)
    {
        Placed[] far = Far(relaxed);
        int[] free = [.. Enumerable.Range(0, relaxed.Choice.Turnings.Count)
            .Where(t => relaxed.HoleAt(t) is { } hole && !Array.Exists(far, n => whole.Layout.AreTooClose(hole, n.Hole)))];
        if (free.Length == 0)
            return false;
        whole.Trial.Free(relaxed.Slot);
        bool isFree = Array.Exists(free, t => whole.Layout.FirstHit(relaxed.Slot, relaxed.HoleAt(t)!.Value) is null);
        whole.Trial.Undo();
        for (int i = 0; i < Trials && !isFree; i++)
        {
            isFree = MakesRoom(relaxed, free[whole.Random.Below(free.Length)]);
            whole.Trial.Undo();
        }
        return isFree;
    }

    /// <summary>Nails that only a relaxed direction reaches.</summary>
    private Placed[] Far(Relaxed relaxed)
    {
        var near = new HashSet<Slot>(relaxed.Slot.Near) { relaxed.Slot };
        return [.. whole.Slots.Where(s => !near.Contains(s)
                && (s.Grid.Point - relaxed.Choice.Point).Length < s.Row.LongestNail + relaxed.Row.LongestNail + whole.Layout.Clearance + 2 * s.Row.Bay.Section.HorizontalSpacing)
            .SelectMany(s => s.Nails).Where(n => !n.IsUnresolved)];
    }

    private bool MakesRoom(Relaxed relaxed, int turning)
    {
        Slot slot = relaxed.Slot;
        Hole hole = relaxed.HoleAt(turning)!.Value;
        whole.Trial.Free(slot);
        _hits.Clear();
        whole.Layout.AddHits(slot, hole, _hits);
        _slots.Clear();
        foreach (Placed hit in _hits.Where(h => !h.IsUnresolved))
        {
            Slot other = whole.Layout.SlotOf(hit);
            if (!whole.May(other))
                return false;
            if (!_slots.Contains(other))
                _slots.Add(other);
        }
        Blockers.AddNear(whole, slot, _slots, _slots.Count + whole.Random.Below(Others));
        _slots.Remove(slot);
        int unresolved = _slots.Count(s => s.IsUnresolved);
        _insertion.Clear();
        foreach (Slot other in _slots)
            _insertion.Take(other);
        whole.Trial.Put(slot, [new Placed(relaxed.Row, relaxed.Choice, relaxed.Choice.Turnings[turning], false, hole)]);
        return _insertion.PutBack((Insertion.Order)whole.Random.Below(3), 0, 20, unresolved);
    }
}
