using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What the grid leaves uncovered, covered by moving heads: one nail near an uncovered span stands elsewhere within its reach, or where that does not
/// help one more stands there, and its neighbours of the row follow by as little as the gaps ask, to the row's end if need be. Directions are looked for
/// afterwards, nails in the way put back elsewhere.
/// </summary>
/// <param name="mostRebuilds">Moves for which directions are looked for, those that cover most first.</param>
internal sealed class CoverShift(District district, CoverWatch cover, int mostRebuilds)
{
    /// <summary>Spans that are worked on in one layout.</summary>
    private const int GreatestPasses = 100;

    /// <summary>Moves that are looked at for each span, the shortest first.</summary>
    private const int GreatestMoves = 120;

    private readonly List<Uncovered> _notAllTried = [];
    private readonly Insertion _insertion = new(district);

    /// <summary>Slots of a row and where their nails are to stand.</summary>
    /// <param name="Length">Sum of how far nails move.</param>
    private sealed record Move(IReadOnlyList<(Slot Slot, HeadChoice[] Heads)> Slots, double Length);

    /// <summary>Spans for which a count ended the work before every move was tried.</summary>
    public IReadOnlyList<Uncovered> NotAllTried => _notAllTried;

    /// <summary>Covers what can be covered, one span after the other.</summary>
    public void Run()
    {
        var tried = new HashSet<Uncovered>();
        for (int pass = 0; pass < GreatestPasses; pass++)
        {
            if (cover.Spans().Where(tried.Add).Select(s => (Uncovered?)s).FirstOrDefault() is not { } span)
                return;
            Cover(span);
        }
        _notAllTried.AddRange(cover.Spans().Where(s => !tried.Contains(s)));
    }

    private void Cover(Uncovered span)
    {
        if (!TryMoves(span, Moves(span)))
            TryMoves(span, Additions(span));
    }

    /// <summary>True where one of some moves covers more and is kept.</summary>
    private bool TryMoves(Uncovered span, IEnumerable<Move> ways)
    {
        var found = new List<(double Change, Move Move)>();
        Move[] moves = [.. ways.OrderBy(m => m.Length)];
        foreach (Move move in moves.Take(GreatestMoves))
        {
            foreach ((Slot slot, HeadChoice[] heads) in move.Slots)
                district.Trial.Put(slot, Array.ConvertAll(heads, h => Placed.At(slot.Row, h, h.Turnings[0], false)));
            double change = cover.Change(district.Trial.Touched);
            district.Trial.Undo();
            if (change < 0)
                found.Add((change, move));
        }
        foreach ((_, Move move) in found.OrderBy(f => Math.Round(f.Change, Tolerance.Decimals)).ThenBy(f => f.Move.Length).Take(mostRebuilds))
        {
            if (Rebuild(move, withNear: false) || Rebuild(move, withNear: true))
                return true;
        }
        if (moves.Length > GreatestMoves || found.Count > mostRebuilds)
            _notAllTried.Add(span);
        return false;
    }

    private Slot SlotOf(Placed nail) => district.Layout.SlotOf(nail);

    /// <summary>Moves of each nail whose cover of the span would change, with what follows it.</summary>
    private IEnumerable<Move> Moves(Uncovered span)
    {
        (Bay bay, Along start, Along end) = span;
        foreach (RowState row in district.Layout.Rows.Where(r => r.Row.Bay == bay))
        {
            Placed[] nails = [.. row.Nails];
            for (int i = 0; i < nails.Length; i++)
            {
                Along along = nails[i].Choice.Head.Along;
                if (along < start - 2 * bay.Reach || along > end + 2 * bay.Reach || !CanMove(nails[i]))
                    continue;
                foreach (HeadChoice to in row.Row.Choices[nails[i].Choice.Ordinal])
                {
                    if (to != nails[i].Choice && MayMatter(span, along, to.Head.Along) && Followed(row.Row, nails, i - 1, i + 1, to) is { } moved)
                        yield return MoveOf([(nails[i], to), .. moved]);
                }
            }
        }
    }

    /// <summary>One nail more beside that of a grid station, where it would cover a part of the span, with what makes room for it; not in a row of which the designer leaves a nail out.</summary>
    private IEnumerable<Move> Additions(Uncovered span)
    {
        (Bay bay, Along start, Along end) = span;
        foreach (RowState row in district.Layout.Rows.Where(r => r.Row.Bay == bay && r.Row.LeftOutByHand.Count == 0))
        {
            Placed[] nails = [.. row.Nails];
            foreach (Slot slot in row.Slots.Where(s => district.May(s) && s.Nails.Length == 1))
            {
                foreach (HeadChoice to in row.Row.Choices[slot.Ordinal])
                {
                    if (Covered(bay, to.Head.Along, start, end) == default)
                        continue;
                    int after = Array.FindIndex(nails, n => n.Choice.Head.Along >= to.Head.Along);
                    after = after < 0 ? nails.Length : after;
                    if (Followed(row.Row, nails, after - 1, after, to) is { } moved)
                        yield return MoveOf(moved, [.. slot.Nails.Where(n => !moved.Exists(m => m.Nail == n)).Select(n => (slot, n.Choice)), (slot, to)]);
                }
            }
        }
    }

    /// <param name="heads">Heads of slots that do not move, or are new.</param>
    private Move MoveOf(List<(Placed Nail, HeadChoice To)> moved, params IEnumerable<(Slot Slot, HeadChoice Head)> heads) => new(
        [.. moved.Select(m => (Slot: SlotOf(m.Nail), Head: m.To)).Concat(heads).GroupBy(h => h.Slot).Select(g => (g.Key, g.Select(h => h.Head).OrderBy(h => h.Head.Along).ToArray()))],
        moved.Sum(m => Math.Abs(m.To.Head.Along - m.Nail.Choice.Head.Along)));

    /// <summary>True where a nail covers another part of a span from a place, or the same part from over or under another profile.</summary>
    private static bool MayMatter(Uncovered span, Along from, Along to)
    {
        (Bay bay, Along start, Along end) = span;
        (Along From, Along To) before = Covered(bay, from, start, end), after = Covered(bay, to, start, end);
        return before != after
            || (after != default && (bay.Wall.Bottom.At(from) != bay.Wall.Bottom.At(to) || bay.Wall.Top.At(from) != bay.Wall.Top.At(to)));
    }

    /// <summary>The part of a span within half a window of a place.</summary>
    private static (Along From, Along To) Covered(Bay bay, Along along, Along start, Along end)
    {
        Along from = Along.Max(start, along - bay.HalfWindow), to = Along.Min(end, along + bay.HalfWindow);
        return to > from ? (from, to) : default;
    }

    private bool CanMove(Placed nail) => district.May(SlotOf(nail)) && SlotOf(nail).Nails.Length == 1;

    /// <summary>How the neighbours of a head follow it on both sides as far as the gaps ask; null where one cannot.</summary>
    /// <param name="before">Index of the nail before it; -1 for none.</param>
    /// <param name="after">Index of the nail after it; their number for none.</param>
    private List<(Placed Nail, HeadChoice To)>? Followed(RowTask row, Placed[] nails, int before, int after, HeadChoice to)
    {
        var moved = new List<(Placed Nail, HeadChoice To)>();
        foreach ((int from, int step) in ((int, int)[])[(before, -1), (after, 1)])
        {
            HeadChoice last = to;
            for (int i = from; ; i += step)
            {
                Placed? next = i >= 0 && i < nails.Length ? nails[i] : null;
                if (Fits(row, last, next?.Choice, step))
                    break;
                if (next is null || !CanMove(next))
                    return null;
                HeadChoice? follows = row.Choices[next.Choice.Ordinal].Where(c => Fits(row, last, c, step))
                    .MinBy(c => Math.Abs(c.Head.Along - next.Choice.Head.Along));
                if (follows is null)
                    return null;
                moved.Add((next, follows));
                last = follows;
            }
        }
        return moved;
    }

    private static bool Fits(RowTask row, HeadChoice from, HeadChoice? next, int step) => step < 0 ? row.FitsAsNeighbours(next, from) : row.FitsAsNeighbours(from, next);

    private bool Rebuild(Move move, bool withNear)
    {
        _insertion.Clear();
        var own = new HashSet<Slot>(move.Slots.Select(s => s.Slot), ReferenceEqualityComparer.Instance);
        foreach (Slot slot in own)
            district.Trial.Free(slot);
        int heads = 0;
        foreach ((Slot slot, HeadChoice[] to) in move.Slots)
        {
            foreach (HeadChoice head in to)
            {
                _insertion.Add(slot, head);
                heads++;
            }
        }
        if (withNear)
        {
            foreach (Slot near in own.SelectMany(s => s.Near).Distinct().Where(s => !own.Contains(s) && district.May(s)).ToList())
                _insertion.Take(near);
        }
        // The heads that cover come first; what then finds no direction stays unresolved, because cover counts before it.
        if (_insertion.PutBack(withNear ? Insertion.Order.SeedFirst : Insertion.Order.FewestFirst, heads, 0, int.MaxValue))
            return district.Trial.End(orEqual: false) < 0;
        district.Trial.Undo();
        return false;
    }
}
