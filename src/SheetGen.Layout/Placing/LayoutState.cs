using SheetGen.Layout.Rows;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>All rows as they stand while the search goes on, and where their nails run into each other.</summary>
internal sealed class LayoutState
{
    private readonly Standing _standing;

    public LayoutState(IReadOnlyList<RowTask> rows, double clearance)
    {
        Clearance = clearance;
        _standing = new Standing(rows.Sum(r => r.Count));
        var slots = new List<Slot>();
        var states = new List<RowState>();
        foreach (RowTask row in rows)
        {
            Slot[] own = [.. Enumerable.Range(0, row.Count).Select(ordinal => new Slot(slots.Count + ordinal, row, ordinal, _standing))];
            slots.AddRange(own);
            states.Add(new RowState(row, own));
        }
        Slots = slots;
        Rows = states;
        NearSlots.Find(slots, clearance);
    }

    private LayoutState(LayoutState other, IReadOnlyList<Slot> own)
    {
        Clearance = other.Clearance;
        _standing = new Standing(other._standing);
        var copies = own.ToDictionary(s => s.Index, s => new Slot(s, _standing));
        Slot CopyOf(Slot slot) => copies.GetValueOrDefault(slot.Index, slot);
        foreach (Slot copy in copies.Values)
            copy.Near = Array.ConvertAll(copy.Near, CopyOf);
        var slots = other.Slots.Select(CopyOf).ToArray();
        var rows = new RowState[other.Rows.Count];
        for (int i = 0, at = 0; i < rows.Length; at += rows[i++].Slots.Count)
            rows[i] = new RowState(other.Rows[i].Row, slots[at..(at + other.Rows[i].Slots.Count)]);
        Slots = slots;
        Rows = rows;
    }

    public IReadOnlyList<RowState> Rows { get; }

    public IReadOnlyList<Slot> Slots { get; }

    /// <summary>Required clear distance of two nails.</summary>
    public double Clearance { get; }

    /// <summary>A layout in which some slots may be changed while they stand still in this one; all others are shared and stand still in both.</summary>
    public LayoutState Copy(IReadOnlyList<Slot> own) => new(this, own);

    public Cost Cost => Slots.Aggregate(default(Cost), (sum, slot) => sum + slot.Cost);

    public Slot SlotOf(Placed nail) => Slots[nail.SlotNumber];

    /// <summary>True where a nail stands now, and others keep clear of it.</summary>
    public bool Stands(Placed nail) => _standing.Has(nail);

    public bool AreTooClose(in Hole a, in Hole b) => HoleDistance.CloserThan(a, b, Clearance - Tolerance.Rounding);

    /// <summary>A nail that a hole of a slot would be too close to, none of the pair unresolved; null where it is clear.</summary>
    public Placed? FirstHit(Slot slot, in Hole hole)
    {
        foreach (Placed own in slot.Nails)
        {
            if (!own.IsUnresolved && AreTooClose(hole, own.Hole))
                return own;
        }
        ReadOnlySpan<Placed?> first = _standing.First;
        ReadOnlySpan<Placed[]?> others = _standing.Others;
        foreach (int near in slot.NearNumbers)
        {
            if (first[near] is { } nail && AreTooClose(hole, nail.Hole))
                return nail;
            if (others[near] is not { } more)
                continue;
            foreach (Placed other in more)
            {
                if (AreTooClose(hole, other.Hole))
                    return other;
            }
        }
        return null;
    }

    /// <summary>Adds the nails around a slot that a hole of one of its places may be too close to, unresolved ones left out.</summary>
    public void AddAround(Slot slot, in Bounds reach, List<Placed> around)
    {
        foreach (Placed own in slot.Nails)
        {
            if (!own.IsUnresolved)
                around.Add(own);
        }
        ReadOnlySpan<Placed?> first = _standing.First;
        ReadOnlySpan<Placed[]?> others = _standing.Others;
        foreach (int near in slot.NearNumbers)
        {
            if (first[near] is { } nail && reach.Meets(nail.Box))
                around.Add(nail);
            if (others[near] is { } more)
                around.AddRange(more);
        }
    }

    /// <summary>Adds all nails that a hole of a slot would be too close to, unresolved ones included; nearest heads first.</summary>
    public void AddHits(Slot slot, in Hole hole, List<Placed> hits)
    {
        AddHitsIn(slot, hole, hits);
        Slot[] near = slot.Near;
        for (int i = 0; i < near.Length; i++)
            AddHitsIn(near[i], hole, hits);
    }

    private void AddHitsIn(Slot slot, in Hole hole, List<Placed> hits)
    {
        foreach (Placed nail in slot.Nails)
        {
            if (AreTooClose(hole, nail.Hole))
                hits.Add(nail);
        }
    }
}
