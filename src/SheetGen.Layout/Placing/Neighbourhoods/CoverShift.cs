using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What the grid leaves uncovered, covered by moving heads: one nail near an uncovered span stands elsewhere within its reach, and its neighbours
/// of the row follow by as little as the gaps ask, to the row's end if need be. Directions are looked for afterwards, nails in the way put back elsewhere.
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

    /// <summary>Nails of a row and where each is to stand.</summary>
    private sealed record Move(IReadOnlyList<(Placed Nail, HeadChoice To)> Nails)
    {
        public double Length => Nails.Sum(n => Math.Abs(n.To.Head.Along - n.Nail.Choice.Head.Along));
    }

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
        var found = new List<(double Change, Move Move)>();
        Move[] moves = [.. Moves(span).OrderBy(m => m.Length)];
        foreach (Move move in moves.Take(GreatestMoves))
        {
            foreach ((Placed nail, HeadChoice to) in move.Nails)
                district.Trial.Put(SlotOf(nail), [Placed.At(nail.Row, to, to.Turnings[0], false)]);
            double change = cover.Change(district.Trial.Touched);
            district.Trial.Undo();
            if (change < 0)
                found.Add((change, move));
        }
        foreach ((_, Move move) in found.OrderBy(f => Math.Round(f.Change, Tolerance.Decimals)).ThenBy(f => f.Move.Length).Take(mostRebuilds))
        {
            if (Rebuild(move, withNear: false) || Rebuild(move, withNear: true))
                return;
        }
        if (moves.Length > GreatestMoves || found.Count > mostRebuilds)
            _notAllTried.Add(span);
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
                    if (to != nails[i].Choice && MayMatter(span, along, to.Head.Along) && Followed(row.Row, nails, i, to) is { } move)
                        yield return move;
                }
            }
        }
    }

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

    /// <summary>A nail's move with its neighbours following on both sides as far as the gaps ask; null where one cannot.</summary>
    private Move? Followed(RowTask row, Placed[] nails, int at, HeadChoice to)
    {
        var moved = new List<(Placed Nail, HeadChoice To)> { (nails[at], to) };
        foreach (int step in (int[])[-1, 1])
        {
            HeadChoice last = to;
            for (int i = at + step; ; i += step)
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
        return new Move(moved);
    }

    private static bool Fits(RowTask row, HeadChoice from, HeadChoice? next, int step) => step < 0 ? row.FitsAsNeighbours(next, from) : row.FitsAsNeighbours(from, next);

    private bool Rebuild(Move move, bool withNear)
    {
        _insertion.Clear();
        var own = new HashSet<Slot>(move.Nails.Select(n => SlotOf(n.Nail)), ReferenceEqualityComparer.Instance);
        foreach (Slot slot in own)
            district.Trial.Free(slot);
        foreach ((Placed nail, HeadChoice to) in move.Nails)
            _insertion.Add(SlotOf(nail), to);
        if (withNear)
        {
            foreach (Slot near in own.SelectMany(s => s.Near).Distinct().Where(s => !own.Contains(s) && district.May(s)).ToList())
                _insertion.Take(near);
        }
        // The heads that cover come first; what then finds no direction stays unresolved, because cover counts before it.
        if (_insertion.PutBack(withNear ? Insertion.Order.SeedFirst : Insertion.Order.FewestFirst, move.Nails.Count, 0, int.MaxValue))
            return district.Trial.End(orEqual: false) < 0;
        district.Trial.Undo();
        return false;
    }
}
