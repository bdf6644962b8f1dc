using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>All rows as they stand while the search goes on, and where their nails run into each other.</summary>
public sealed class LayoutState
{
    private readonly double _clearance;

    public LayoutState(IReadOnlyList<RowTask> rows, double clearance)
    {
        Clearance = clearance;
        _clearance = clearance - Tolerance;
        var slots = new List<Slot>();
        var states = new List<RowState>();
        foreach (RowTask row in rows)
        {
            Slot[] own = [.. Enumerable.Range(0, row.Count).Select(label => new Slot(slots.Count + label, row, label))];
            slots.AddRange(own);
            states.Add(new RowState(row, own));
        }
        Slots = slots;
        Rows = states;
        NearSlots.Find(slots, clearance);
    }

    /// <summary>Clear distances that are short by less than this are kept: what rounding in double precision may take.</summary>
    public const double Tolerance = 1e-9;

    public IReadOnlyList<RowState> Rows { get; }

    public IReadOnlyList<Slot> Slots { get; }

    /// <summary>Required clear distance of two nails.</summary>
    public double Clearance { get; }

    public Cost Cost => Slots.Aggregate(default(Cost), (sum, slot) => sum + slot.Cost);

    public Slot SlotOf(Placed nail) => Rows[nail.Row.Index].Slots[nail.Choice.Label];

    public bool AreTooClose(in Hole a, in Hole b) => HoleDistance.CloserThan(a, b, _clearance);

    /// <summary>A nail that a hole of a slot would be too close to, none of the pair unresolved; null where it is clear.</summary>
    public Placed? FirstHit(Slot slot, in Hole hole)
    {
        foreach (Placed own in slot.Nails)
        {
            if (!own.IsUnresolved && AreTooClose(hole, own.Hole))
                return own;
        }
        IReadOnlyList<Slot> near = slot.Near;
        for (int i = 0; i < near.Count; i++)
        {
            foreach (Placed nail in near[i].Nails)
            {
                if (!nail.IsUnresolved && AreTooClose(hole, nail.Hole))
                    return nail;
            }
        }
        return null;
    }

    /// <summary>Adds all nails that a hole of a slot would be too close to, unresolved ones included; nearest heads first.</summary>
    public void AddHits(Slot slot, in Hole hole, List<Placed> hits)
    {
        AddHitsIn(slot, hole, hits);
        IReadOnlyList<Slot> near = slot.Near;
        for (int i = 0; i < near.Count; i++)
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
