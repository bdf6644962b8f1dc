namespace SheetGen.Layout.Placing;

/// <summary>
/// One to eight neighbouring grid stations of a row get new heads between the nails beside them: the grid's, or random ones with one nail more
/// or as many. What is in their way is taken out and put back with them.
/// </summary>
internal sealed class NewHeads(District district) : INeighbourhood
{
    private const int GreatestStations = 8;
    private const int GreatestOthers = 12;
    private const int Tries = 20;

    private readonly Insertion _insertion = new(district);
    private readonly List<Slot> _slots = [];
    private readonly List<HeadChoice> _heads = [];
    private readonly List<HeadChoice> _fitting = [];

    public bool MovesSideways => true;

    public bool Propose(Slot seed)
    {
        SplitMix random = district.Random;
        int length = 1 + random.Below(GreatestStations);
        (int from, int to) = district.RangeAround(seed);
        int first = Math.Max(from, seed.Ordinal - random.Below(length)), last = Math.Min(to, first + length - 1);
        RowState row = district.Layout.Rows[seed.Row.Index];
        if (!MakeHeads(row, first, last))
            return false;
        _slots.Clear();
        for (int ordinal = first; ordinal <= last; ordinal++)
            _slots.Add(row.Slots[ordinal]);
        int own = _slots.Count, upTo = own + 1 + random.Below(GreatestOthers);
        HeadChoice source = _heads[random.Below(_heads.Count)];
        Blockers.AddInWay(district, row.Slots[source.Ordinal], source, _slots, upTo);
        Blockers.AddNear(district, seed, _slots, upTo);
        int unresolved = _slots.Count(s => s.IsUnresolved);
        _insertion.Clear();
        for (int i = 0; i < own; i++)
            district.Trial.Free(_slots[i]);
        foreach (HeadChoice head in _heads)
            _insertion.Add(row.Slots[head.Ordinal], head);
        for (int i = own; i < _slots.Count; i++)
            _insertion.Take(_slots[i]);
        return _insertion.PutBack((Insertion.Order)random.Below(3), _heads.Count, random.Below(3) == 0 ? 150 : 20, unresolved);
    }

    private bool MakeHeads(RowState row, int first, int last)
    {
        SplitMix random = district.Random;
        for (int ordinal = first; ordinal <= last; ordinal++)
        {
            if (row.Slots[ordinal].IsPinned || row.Row.Ends.RunOf(ordinal) != row.Row.Ends.RunOf(first))
                return false;
        }
        HeadChoice? before = row.Before(first), after = row.After(last);
        for (int tries = 0; tries < Tries; tries++)
        {
            _heads.Clear();
            bool isGrid = tries == 0 && random.Below(4) == 0;
            int count = last - first + 1 + (isGrid || random.Below(5) == 0 ? 0 : 1);
            if (isGrid)
            {
                for (int ordinal = first; ordinal <= last; ordinal++)
                    _heads.Add(row.Slots[ordinal].Grid);
            }
            else if (!Walk(row, first, last, count, before, after))
            {
                continue;
            }
            if (FitTogether(row.Row, before, after) && _heads.All(h => h.IsAtGrid || row.Row.FreeOf(h).Any))
                return true;
        }
        return false;
    }

    /// <summary>Heads one after the other, each a random one of those that fit behind the last; of three the one with the most free directions.</summary>
    private bool Walk(RowState row, int first, int last, int count, HeadChoice? before, HeadChoice? after)
    {
        RowTask task = row.Row;
        for (int i = 0; i < count; i++)
        {
            _fitting.Clear();
            for (int ordinal = i == 0 ? first : _heads[^1].Ordinal; ordinal <= last; ordinal++)
            {
                if (_heads.Count(h => h.Ordinal == ordinal) >= 2)
                    continue;
                foreach (HeadChoice choice in task.Choices[ordinal])
                {
                    if (after is not null)
                    {
                        double left = after.Head.Along - choice.Head.Along;
                        if (left > (count - i) * task.GreatestMovedGap || left < (count - i) * task.LeastGap)
                            continue;
                    }
                    if (task.FitsAsNeighbours(before, choice))
                        _fitting.Add(choice);
                }
            }
            if (_fitting.Count == 0)
                return false;
            HeadChoice best = _fitting[district.Random.Below(_fitting.Count)];
            int most = FreedomOf(task, best);
            for (int again = 0; again < 2; again++)
            {
                HeadChoice other = _fitting[district.Random.Below(_fitting.Count)];
                int freedom = FreedomOf(task, other);
                if (freedom > most)
                    (best, most) = (other, freedom);
            }
            _heads.Add(best);
            before = best;
        }
        return true;
    }

    private static int FreedomOf(RowTask row, HeadChoice choice) => choice.IsPinned ? choice.Turnings.Coarse.Count : row.FreeOf(choice).CoarseCount;

    private bool FitTogether(RowTask row, HeadChoice? before, HeadChoice? after)
    {
        foreach (HeadChoice head in _heads)
        {
            if (!row.FitsAsNeighbours(before, head))
                return false;
            before = head;
        }
        return row.FitsAsNeighbours(before, after);
    }
}
