namespace SheetGen.Layout.Placing;

/// <summary>
/// All rows around a nail, on both legs where a corner is near, go back to their grid places and are built again nail by nail in several orders.
/// </summary>
internal sealed class Window(District district) : INeighbourhood
{
    /// <summary>Half widths of what is taken away, in spacings.</summary>
    private static readonly double[] Reaches = [1.2, 2.2, 3.2, 5.2];

    private readonly Insertion _insertion = new(district);

    public bool MovesSideways => true;

    public bool Propose(Slot seed)
    {
        SplitMix random = district.Random;
        double reach = Reaches[random.Below(Reaches.Length)] * seed.Row.Bay.Section.HorizontalSpacing;
        var window = new List<Slot>();
        foreach (Slot slot in (IEnumerable<Slot>)[seed, .. seed.Near])
        {
            if (district.May(slot) && (slot.Grid.Point.Plan - seed.Grid.Point.Plan).Length <= reach)
                window.Add(slot);
        }
        int unresolved = window.Count(s => s.IsUnresolved);
        _insertion.Clear();
        bool toGrid = random.Below(2) == 0;
        foreach (Slot slot in window)
        {
            if (!toGrid)
            {
                _insertion.Take(slot);
                continue;
            }
            district.Trial.Free(slot);
            _insertion.Add(slot, slot.Grid);
        }
        return _insertion.PutBack((Insertion.Order)random.Below(4), 1, random.Below(3) * 20, unresolved);
    }
}
