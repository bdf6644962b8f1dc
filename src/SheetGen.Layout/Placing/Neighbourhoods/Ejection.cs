using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// An unresolved nail takes the direction whose victims bear the least penalty; the victims are put elsewhere or thrown out in turn, and a
/// nail that cannot be put anywhere bears a greater penalty from then on, so that hard nails are left alone (guided ejection search: Nagata
/// and Braysy 2009, from memory). Ends with the first nail gained.
/// </summary>
internal sealed class Ejection(District district) : INeighbourhood
{
    private const int Steps = 40;
    private const int Looks = 128;
    private const int Never = 100_000;
    private const int Ties = 3;
    private const int Shaken = 4;

    private readonly Dictionary<Slot, int> _penalties = new(ReferenceEqualityComparer.Instance);
    private readonly Insertion _insertion = new(district);
    private readonly List<Slot> _pool = [];
    private readonly List<int> _ties = [];
    private readonly List<Placed> _victims = [];

    public bool MovesSideways => true;

    public bool Propose(Slot seed)
    {
        _pool.Clear();
        foreach (Slot slot in district.Slots)
        {
            if (slot.IsUnresolved && district.May(slot) && slot.Row.FreeOf(slot.Grid).Any)
                _pool.Add(slot);
        }
        int before = _pool.Count;
        if (before == 0)
            return false;
        foreach (Slot slot in _pool)
            district.Trial.Free(slot);
        for (int step = 0; step < Steps && _pool.Count >= before; step++)
            Step();
        foreach (Slot slot in _pool)
            district.Trial.Put(slot, [Placed.Unresolved(slot.Row, slot.Label)]);
        return true;
    }

    private void Step()
    {
        SplitMix random = district.Random;
        int at = random.Below(_pool.Count);
        Slot slot = _pool[at];
        _pool.RemoveAt(at);
        int weight = Cheapest(slot);
        if (weight > 0)
            _penalties[slot] = PenaltyOf(slot) + 1;
        if (weight >= Never)
        {
            _pool.Add(slot);
            return;
        }
        int rank = weight == 0 ? _ties.Min() : _ties[random.Below(_ties.Count)];
        int turning = slot.Row.FreeOf(slot.Grid)[rank];
        Hole hole = slot.Row.HoleAt(slot.Grid, turning);
        _victims.Clear();
        district.Layout.AddHits(slot, hole, _victims);
        foreach (Placed victim in _victims)
        {
            if (victim.IsUnresolved)
                continue;
            Slot thrown = district.Layout.SlotOf(victim);
            district.Trial.Free(thrown);
            _pool.Add(thrown);
        }
        district.Trial.Put(slot, [new Placed(slot.Row, slot.Grid, slot.Grid.Turnings[turning], false, hole)]);
        for (int i = _pool.Count - 1; i >= 0; i--)
        {
            if (random.Below(2) == 0 && _insertion.TryPut(new Insertion.Seat(_pool[i], _pool[i].Grid), 20))
                _pool.RemoveAt(i);
        }
        if (weight > 0 && _pool.Count > 0)
            Shake();
    }

    /// <summary>The least weight of a direction's victims, of some directions where there are many; the ranks of the directions that have it are in the ties.</summary>
    private int Cheapest(Slot slot)
    {
        FreeDirections free = slot.Row.FreeOf(slot.Grid);
        int count = free.Count, looks = Math.Min(count, Looks), least = int.MaxValue;
        _ties.Clear();
        for (int i = 0; i < looks; i++)
        {
            int rank = looks == count ? i : district.Random.Below(count);
            int weight = WeightOf(slot, slot.Row.HoleAt(slot.Grid, free[rank]), least);
            if (weight > least)
                continue;
            if (weight < least)
                _ties.Clear();
            least = weight;
            _ties.Add(rank);
            if (least == 0 && _ties.Count >= Ties)
                break;
        }
        return least;
    }

    private int WeightOf(Slot slot, in Hole hole, int upTo)
    {
        int weight = 0;
        IReadOnlyList<Slot> near = slot.Near;
        for (int i = 0; i < near.Count; i++)
        {
            Slot other = near[i];
            foreach (Placed nail in other.Nails)
            {
                if (nail.IsUnresolved || !district.Layout.AreTooClose(hole, nail.Hole))
                    continue;
                // Only a nail at its grid place can be left out of the layout for a while: no gap depends on where it goes.
                weight += other.Nails.Length == 1 && nail.Choice.IsAtGrid && district.May(other) ? PenaltyOf(other) : Never;
                if (weight > upTo)
                    return weight;
            }
        }
        return weight;
    }

    private int PenaltyOf(Slot slot) => _penalties.GetValueOrDefault(slot, 1);

    /// <summary>Turns some nails near those thrown out at random, so that the search does not go in circles.</summary>
    private void Shake()
    {
        SplitMix random = district.Random;
        for (int i = 0; i < Shaken; i++)
        {
            Slot from = _pool[random.Below(_pool.Count)];
            if (from.Near.Count == 0)
                continue;
            Slot slot = from.Near[random.Below(from.Near.Count)];
            if (!district.May(slot) || slot.Nails.Length != 1 || slot.IsUnresolved)
                continue;
            HeadChoice choice = slot.Nails[0].Choice;
            Placed[] now = slot.Nails;
            FreeDirections free = slot.Row.FreeOf(choice);
            int count = free.Count;
            district.Trial.Free(slot);
            for (int tries = 0; tries < 6; tries++)
            {
                int turning = free[random.Below(count)];
                Hole hole = slot.Row.HoleAt(choice, turning);
                if (district.Layout.FirstHit(slot, hole) is not null)
                    continue;
                now = [new Placed(slot.Row, choice, choice.Turnings[turning], false, hole)];
                break;
            }
            district.Trial.Put(slot, now);
        }
    }
}
