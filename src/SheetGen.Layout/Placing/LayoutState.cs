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

    private LayoutState(LayoutState other, IReadOnlyList<Slot> own)
    {
        Clearance = other.Clearance;
        _clearance = other._clearance;
        var copies = own.ToDictionary(s => s.Index, s => new Slot(s));
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

    /// <summary>Clear distances that are short by less than this are kept: what rounding in double precision may take.</summary>
    public const double Tolerance = 1e-9;

    public IReadOnlyList<RowState> Rows { get; }

    public IReadOnlyList<Slot> Slots { get; }

    /// <summary>Required clear distance of two nails.</summary>
    public double Clearance { get; }

    /// <summary>A layout in which some slots may be changed while they stand still in this one; all others are shared and stand still in both.</summary>
    public LayoutState Copy(IReadOnlyList<Slot> own) => new(this, own);

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
        Slot[] near = slot.Near;
        for (int i = 0; i < near.Length; i++)
        {
            foreach (Placed nail in near[i].Nails)
            {
                if (!nail.IsUnresolved && AreTooClose(hole, nail.Hole))
                    return nail;
            }
        }
        return null;
    }

    /// <summary>Adds which directions of a place of a slot each nail around it is in the way of, unresolved ones left out.</summary>
    public static void AddAround(Slot slot, FreeDirections free, List<HitDirections> around)
    {
        AddIn(slot.Nails, 0);
        Slot[] near = slot.Near;
        for (int i = 0; i < near.Length; i++)
            AddIn(near[i].Nails, i + 1);

        void AddIn(Placed[] nails, int number)
        {
            foreach (Placed nail in nails)
            {
                if (!nail.IsUnresolved && free.HitsOf(nail, number) is { } hits)
                    around.Add(hits);
            }
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
