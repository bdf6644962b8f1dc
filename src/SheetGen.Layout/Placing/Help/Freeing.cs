using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Whether an unresolved nail can stand under relaxed rules: tried with the search, nothing else left unresolved for it.</summary>
internal sealed class Freeing(District whole)
{
    /// <summary>How often room is made for a nail where no direction is free.</summary>
    public const int Trials = 20;

    private const int Others = 8;

    private readonly Insertion _insertion = new(whole);
    private readonly List<Slot> _slots = [];
    private readonly List<Placed> _hits = [];

    /// <summary>True where the nail finds a direction while all others stand as before or elsewhere. The layout stands as before.</summary>
    public bool Frees(Relaxed relaxed)
    {
        bool isFree = Put(relaxed, Trials) is not null;
        whole.Trial.Undo();
        return isFree;
    }

    /// <summary>Lets the nail and those that made room for it stand so; null, and nothing changed, where it finds no direction.</summary>
    /// <param name="trials">How often room is made for it where no direction is free.</param>
    public Turning? Keep(Relaxed relaxed, int trials)
    {
        Turning? found = Put(relaxed, trials);
        if (found is null || !IsClear())
        {
            whole.Trial.Undo();
            return null;
        }
        whole.Trial.Accept();
        return found;
    }

    private Turning? Put(Relaxed relaxed, int trials)
    {
        Placed[] far = Far(relaxed);
        int[] free = [.. Enumerable.Range(0, relaxed.Choice.Turnings.Count)
            .Where(t => relaxed.HoleAt(t) is { } hole && !Array.Exists(far, n => whole.Layout.AreTooClose(hole, n.Hole)))];
        if (free.Length == 0)
            return null;
        whole.Trial.Free(relaxed.Slot);
        int at = Array.FindIndex(free, t => whole.Layout.FirstHit(relaxed.Slot, relaxed.HoleAt(t)!.Value) is null);
        if (at >= 0)
            whole.Trial.Put(relaxed.Slot, [relaxed.NailAt(free[at])]);
        for (int i = 0; i < trials && at < 0; i++)
        {
            whole.Trial.Undo();
            int tried = whole.Random.Below(free.Length);
            if (MakesRoom(relaxed, free[tried]))
                at = tried;
        }
        return at < 0 ? null : relaxed.Choice.Turnings[free[at]];
    }

    /// <summary>False where nails of the open trial come too close to any, those too that none of their own places could reach.</summary>
    private bool IsClear()
    {
        Placed[] standing = [.. whole.Slots.SelectMany(s => s.Nails).Where(n => !n.IsUnresolved)];
        return whole.Trial.Touched.SelectMany(s => s.Nails).Where(n => !n.IsUnresolved).All(n =>
            !Array.Exists(standing, o => o != n && (o.Choice.Point - n.Choice.Point).Length < o.Hole.Length + n.Hole.Length + whole.Layout.Clearance + 2 && whole.Layout.AreTooClose(n.Hole, o.Hole)));
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
        whole.Trial.Put(slot, [relaxed.NailAt(turning)]);
        return _insertion.PutBack((Insertion.Order)whole.Random.Below(3), 0, 20, unresolved);
    }
}
