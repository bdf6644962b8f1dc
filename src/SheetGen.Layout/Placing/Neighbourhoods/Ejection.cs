using System.Numerics;
using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// An unresolved nail takes the direction whose victims bear the least penalty; the victims are put elsewhere or thrown out in turn, and a
/// nail that cannot be put anywhere bears a greater penalty from then on, so that hard nails are left alone (guided ejection search: Nagata
/// and Braysy 2009, from memory). Ends with the first nail gained.
/// </summary>
internal sealed class Ejection(District district) : INeighbourhood
{
    private const int Steps = 400;
    private const int Never = 100_000;
    private const int Shaken = 4;

    private readonly int[] _penalties = new int[district.Layout.Slots.Count];
    private readonly Dictionary<Slot, int> _failed = new(ReferenceEqualityComparer.Instance);
    private readonly Insertion _insertion = new(district);
    private readonly List<Slot> _pool = [];
    private readonly List<int> _ties = [];
    private readonly List<Placed> _victims = [];
    private readonly List<Placed> _removed = [];
    private readonly List<Placed> _around = [];
    private readonly List<int> _weights = [];

    public bool MovesSideways => true;

    public bool Propose(Slot seed)
    {
        _pool.Clear();
        _failed.Clear();
        _removed.Clear();
        if (!CanBeFreed(seed))
            return false;
        _pool.Add(seed);
        _pool.AddRange(seed.Near.Where(CanBeFreed));
        int before = _pool.Count;
        foreach (Slot slot in _pool)
            district.Trial.Free(slot);
        for (int step = 0; step < Steps && _pool.Count >= before; step++)
            Step();
        foreach (Slot slot in _pool)
            district.Trial.Put(slot, [Placed.Unresolved(slot.Row, slot.Ordinal)]);
        return true;
    }

    /// <summary>True for an unresolved nail that has a direction clear of all that stands still.</summary>
    private bool CanBeFreed(Slot slot) => slot.IsUnresolved && district.May(slot) && slot.Row.FreeOf(slot.Grid).Any;

    private void Step()
    {
        SplitMix random = district.Random;
        int at = random.Below(_pool.Count);
        Slot slot = _pool[at];
        _pool.RemoveAt(at);
        int weight = Cheapest(slot);
        if (weight > 0)
            _penalties[slot.Index]++;
        if (weight >= Never)
        {
            _pool.Add(slot);
            return;
        }
        Placed nail = slot.Row.FreeOf(slot.Grid).NailAt(_ties[random.Below(_ties.Count)]);
        _victims.Clear();
        district.Layout.AddHits(slot, nail.Hole, _victims);
        foreach (Placed victim in _victims)
        {
            if (victim.IsUnresolved)
                continue;
            Slot thrown = district.Layout.SlotOf(victim);
            district.Trial.Free(thrown);
            _removed.Add(victim);
            _pool.Add(thrown);
        }
        district.Trial.Put(slot, [nail]);
        for (int i = _pool.Count - 1; i >= 0; i--)
        {
            if (random.Below(2) != 0 || !HasChangedAround(_pool[i]))
                continue;
            if (_insertion.TryPut(new Insertion.Seat(_pool[i], _pool[i].Grid), 20))
                _pool.RemoveAt(i);
            else
                _failed[_pool[i]] = _removed.Count;
        }
        if (weight > 0 && _pool.Count > 0)
            Shake();
    }

    /// <summary>True where a nail that may have been in the way was taken out since no direction was found.</summary>
    private bool HasChangedAround(Slot slot)
    {
        if (!_failed.TryGetValue(slot, out int from))
            return true;
        Bounds reach = slot.Row.FreeOf(slot.Grid).Reach;
        for (int i = from; i < _removed.Count; i++)
        {
            if (reach.Meets(_removed[i].Box))
                return true;
        }
        return false;
    }

    /// <summary>The least weight of a direction's victims; the directions that have it are in the ties.</summary>
    private int Cheapest(Slot slot)
    {
        FreeDirections free = slot.Row.FreeOf(slot.Grid);
        _around.Clear();
        district.Layout.AddAround(slot, free.Reach, _around);
        _weights.Clear();
        foreach (Placed nail in _around)
            _weights.Add(WeightOf(nail));
        int least = int.MaxValue;
        _ties.Clear();
        for (int word = 0; word < free.Words; word++)
        {
            InWay inWay = free.InWay(word);
            district.Work += BitOperations.PopCount(free.Word(word));
            for (ulong left = free.Word(word); left != 0; left &= left - 1)
            {
                int bit = BitOperations.TrailingZeroCount(left), turning = word * FreeDirections.WordSize + bit;
                (Placed? last, Placed? earlier) = inWay.Standing(bit, district.Layout);
                if ((last is null ? 0 : WeightOf(last)) + (earlier is null ? 0 : WeightOf(earlier)) > least)
                    continue;
                int weight = WeightOf(slot.Row.HoleAt(slot.Grid, turning), least, out Placed? first, out Placed? second);
                if (second is not null)
                    inWay.Add(bit, second);
                if (first is not null)
                    inWay.Add(bit, first);
                if (weight > least)
                    continue;
                if (weight < least)
                    _ties.Clear();
                least = weight;
                _ties.Add(turning);
                if (least == 0)
                    return 0;
            }
        }
        return least;
    }

    /// <summary>What those in the way of a hole weigh, added up until it is more than a limit; the first two of them are given.</summary>
    private int WeightOf(in Hole hole, int limit, out Placed? first, out Placed? second)
    {
        int sum = 0;
        first = second = null;
        for (int i = 0; i < _around.Count && sum <= limit; i++)
        {
            if (!district.Layout.AreTooClose(hole, _around[i].Hole))
                continue;
            sum += _weights[i];
            if (first is null)
                first = _around[i];
            else
                second ??= _around[i];
            // The heaviest come first: they end the sum early.
            if (i > 0 && _weights[i] >= _weights[i - 1])
                Swap(i, i / 2);
        }
        return sum;
    }

    private void Swap(int i, int j)
    {
        (_around[i], _around[j]) = (_around[j], _around[i]);
        (_weights[i], _weights[j]) = (_weights[j], _weights[i]);
    }

    /// <summary>Only a nail at its grid place can be left out of the layout for a while: no gap depends on where it goes.</summary>
    private int WeightOf(Placed nail)
    {
        Slot slot = district.Layout.SlotOf(nail);
        return slot.Nails.Length == 1 && nail.Choice.IsAtGrid && district.May(slot) ? PenaltyOf(slot) : Never;
    }

    private int PenaltyOf(Slot slot) => _penalties[slot.Index] + 1;

    /// <summary>Turns some nails near those thrown out at random, so that the search does not go in circles.</summary>
    private void Shake()
    {
        SplitMix random = district.Random;
        for (int i = 0; i < Shaken; i++)
        {
            Slot from = _pool[random.Below(_pool.Count)];
            if (from.Near.Length == 0)
                continue;
            Slot slot = from.Near[random.Below(from.Near.Length)];
            if (!district.May(slot) || slot.Nails.Length != 1 || slot.IsUnresolved)
                continue;
            HeadChoice choice = slot.Nails[0].Choice;
            Placed[] now = slot.Nails;
            FreeDirections free = slot.Row.FreeOf(choice);
            int count = free.Count;
            district.Trial.Free(slot);
            for (int tries = 0; tries < 6; tries++)
            {
                Placed other = free.NailAt(free[random.Below(count)]);
                if (district.Layout.FirstHit(slot, other.Hole) is not null)
                    continue;
                _removed.Add(now[0]);
                now = [other];
                break;
            }
            district.Trial.Put(slot, now);
        }
    }
}
