namespace SheetGen.Layout.Placing;

/// <summary>
/// A nail, those that are in the way of one of its directions, and others near by, up to fourteen of any row: all taken out and put back
/// greedily at their places.
/// </summary>
internal sealed class Blockers(District district) : INeighbourhood
{
    private const int Least = 2;
    private const int Greatest = 14;

    private readonly Insertion _insertion = new(district);
    private readonly List<Slot> _slots = [];

    public bool MovesSideways => true;

    public bool Propose(Slot seed)
    {
        SplitMix random = district.Random;
        int count = Least + random.Below(Greatest - Least + 1);
        _slots.Clear();
        _slots.Add(seed);
        AddInWay(district, seed, seed.Nails.Length > 0 ? seed.Nails[random.Below(seed.Nails.Length)].Choice : seed.Grid, _slots, count);
        AddNear(district, seed, _slots, count);
        int unresolved = _slots.Count(s => s.IsUnresolved);
        _insertion.Clear();
        foreach (Slot slot in _slots)
            _insertion.Take(slot);
        Insertion.Order order = (Insertion.Order)random.Below(3);
        return _insertion.PutBack(order, seed.Nails.Length, random.Below(3) == 0 ? 150 : 20, unresolved);
    }

    /// <summary>Adds the slots whose nails are in the way of a direction of a place, an early one likelier than a late one.</summary>
    public static void AddInWay(District district, Slot slot, HeadChoice choice, List<Slot> slots, int upTo)
    {
        FreeDirections free = slot.Row.FreeOf(choice);
        int count = free.Count;
        if (choice.IsPinned || count == 0)
            return;
        Placed nailed = free.NailAt(free[district.Random.EarlyBelow(count)]);
        var hits = new List<Placed>();
        district.Layout.AddHits(slot, nailed.Hole, hits);
        foreach (Placed nail in hits)
        {
            Slot other = district.Layout.SlotOf(nail);
            if (slots.Count < upTo && district.May(other) && !slots.Contains(other))
                slots.Add(other);
        }
    }

    /// <summary>Adds slots near another at random, the nearest likeliest.</summary>
    public static void AddNear(District district, Slot slot, List<Slot> slots, int upTo)
    {
        for (int tries = 0; tries < 2 * upTo && slots.Count < upTo && slot.Near.Length > 0; tries++)
        {
            Slot other = slot.Near[district.Random.EarlyBelow(slot.Near.Length)];
            if (district.May(other) && !slots.Contains(other))
                slots.Add(other);
        }
    }
}
