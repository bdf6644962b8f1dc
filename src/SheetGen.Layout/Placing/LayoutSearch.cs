using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The search for the best layout: each row by itself, then rows against each other until nothing gets better, then pairs of rows
/// that stand in each other's way. Work is limited by counts, and every order is fixed, so the same input gives the same layout.
/// </summary>
public sealed class LayoutSearch
{
    private const int Rounds = 5;
    private const int BlockersTried = 3;
    private const long QuickLooks = 100_000;
    private const long ProvingLooks = 100_000_000;

    private readonly IReadOnlyList<RowTask> _rows;
    private readonly RowState[] _states;
    private readonly PlacedIndex _index;
    private readonly double _clearance;
    private readonly long _boundLooks;
    private readonly IProgress<string>? _progress;

    public LayoutSearch(Site site, IReadOnlyList<RowTask> rows, PlacingOptions options, IProgress<string>? progress)
    {
        _rows = rows;
        _progress = progress;
        _boundLooks = options.Prove ? ProvingLooks : QuickLooks;
        _states = [.. rows.Select(r => new RowState(r))];
        _index = new PlacedIndex(Math.Max(rows.Select(r => r.LongestNail).DefaultIfEmpty(1).Max() / 4, 1e-3));
        _clearance = site.Project.Rules.NailClearance - 1e-9;
    }

    public IReadOnlyList<RowState> States => _states;

    public PlacedIndex Index => _index;

    /// <summary>Proven lower limit over all rows, each for itself.</summary>
    public Cost LowerLimit { get; private set; }

    public void Run()
    {
        _progress?.Report("placing rows");
        SolveRowsAlone();
        foreach (RowState state in _states)
        {
            foreach (Placed nail in state.Nails)
                _index.Add(nail);
        }
        _progress?.Report("clearing rows of each other");
        Negotiate();
        ClearConflicts();
        Improve();
        if (Exchange())
            Improve();
        if (KeepCover())
            Improve();
        ClearConflicts();
        SingleNails.Improve(_states, _index, _clearance);
    }

    /// <summary>Rows by themselves; independent of each other, so they may run side by side.</summary>
    private void SolveRowsAlone()
    {
        var limits = new Cost[_rows.Count];
        Parallel.For(0, _rows.Count, i =>
        {
            RowState state = _states[i];
            var own = new PlacedIndex(state.Row.LongestNail / 4);
            foreach (Placed nail in state.Nails)
                own.Add(nail);
            Cost sum = default;
            int after = -1;
            foreach ((int first, int last) in Troubles.Alone(state))
            {
                if (last <= after)
                    continue;
                if (StretchSolver.Solve(state, first, last, own) is not { } solution)
                {
                    MarkBlocked(state, first, last, own);
                    continue;
                }
                state.Replace(solution.First, solution.Last, solution.Nails, own);
                int from = Math.Max(after + 1, solution.First);
                if (from <= solution.Last)
                    sum += StretchSolver.LowerLimit(
                        state.Row, from, solution.Last,
                        RowState.CostOf(state.Between(from, solution.Last), from, solution.Last), _boundLooks);
                after = solution.Last;
            }
            limits[i] = sum;
        });
        LowerLimit = limits.Aggregate(default(Cost), (a, b) => a + b);
    }

    /// <summary>Where no chain fits at all, the grid stands and what is blocked is left unresolved.</summary>
    private static void MarkBlocked(RowState state, int first, int last, PlacedIndex own)
    {
        var nails = new List<Placed>();
        for (int label = first; label <= last; label++)
        {
            HeadChoice choice = state.Row.GridChoice(label);
            nails.Add(Placed.At(state.Row, choice, choice.Turnings[0], !state.Row.IsFree(choice, 0)));
        }
        state.Replace(first, last, nails, own);
    }

    private List<Placed> ConflictsOf(Placed nail)
    {
        var found = new List<Placed>();
        if (nail.IsUnresolved)
            return found;
        foreach (Placed other in _index.Near(nail.Hole, _clearance))
        {
            if (!ReferenceEquals(other, nail) && !other.IsUnresolved && HoleDistance.CloserThan(nail.Hole, other.Hole, _clearance))
                found.Add(other);
        }
        return found;
    }

    private bool IsPlaced(Placed nail) => _states[nail.Row.Index].Nails.Contains(nail);

    /// <summary>Rows in conflict are solved again and again, paying more and more for running into each other.</summary>
    private void Negotiate()
    {
        var terms = new Negotiation();
        for (terms.Round = 0; terms.Round < Negotiation.Rounds; terms.Round++)
        {
            int solved = 0;
            foreach (RowState state in _states)
            {
                var labels = new SortedSet<int>(state.Nails.Where(n => !n.Choice.IsPinned && ConflictsOf(n).Count > 0).Select(n => n.Choice.Label));
                foreach ((int first, int last) in Troubles.Join(labels))
                {
                    if (StretchSolver.Solve(state, first, last, _index, terms) is { } solution)
                        state.Replace(solution.First, solution.Last, solution.Nails, _index);
                    solved++;
                }
            }
            if (solved == 0)
                return;
            foreach (Placed nail in _states.SelectMany(s => s.Nails).Where(n => ConflictsOf(n).Count > 0))
                terms.Remember(nail);
        }
    }

    /// <summary>Pair by pair, the nail whose giving way costs less gives way.</summary>
    private void ClearConflicts()
    {
        foreach (RowState state in _states)
        {
            foreach (Placed nail in state.Nails.ToList())
            {
                foreach (Placed other in ConflictsOf(nail))
                {
                    if (!IsPlaced(nail))
                        break;
                    if (IsPlaced(other))
                        GiveWay(nail, other);
                }
            }
        }
        LeaveUnresolved();
    }

    private void GiveWay(Placed a, Placed b)
    {
        StretchSolver.Solution? first = a.Choice.IsPinned ? null : Around(a);
        StretchSolver.Solution? second = b.Choice.IsPinned ? null : Around(b);
        bool takeFirst = second is null || (first is not null && !(Gain(second) < Gain(first)));
        (Placed nail, StretchSolver.Solution? solution) = takeFirst ? (a, first) : (b, second);
        if (solution is not null)
            _states[nail.Row.Index].Replace(solution.First, solution.Last, solution.Nails, _index);
    }

    private static Cost Gain(StretchSolver.Solution solution) => new(
        solution.New.Unresolved - solution.Old.Unresolved, solution.New.Noted - solution.Old.Noted,
        solution.New.Effort - solution.Old.Effort, solution.New.Nails - solution.Old.Nails, solution.New.Shift - solution.Old.Shift);

    private StretchSolver.Solution? Around(Placed nail) =>
        StretchSolver.Solve(_states[nail.Row.Index], nail.Choice.Label, nail.Choice.Label, _index);

    /// <summary>What still conflicts after every pair had its turn: a nail goes back to its grid place and is left unresolved.</summary>
    private void LeaveUnresolved()
    {
        foreach (RowState state in _states)
        {
            foreach (Placed nail in state.Nails.ToList())
            {
                if (nail.Choice.IsPinned || !IsPlaced(nail) || ConflictsOf(nail).Count == 0)
                    continue;
                if (BackUnresolved(state, nail) is { } nails)
                    state.Replace(nail.Choice.Label, nail.Choice.Label, nails, _index);
            }
        }
    }

    /// <summary>The nail's station with the nail back at its grid place, unresolved; null where a gap would not fit.</summary>
    private static List<Placed>? BackUnresolved(RowState state, Placed nail)
    {
        int label = nail.Choice.Label;
        HeadChoice grid = state.Row.GridChoice(label);
        Placed back = Placed.At(state.Row, grid, grid.Turnings[0], true);
        if (nail.Choice == grid)
            return [.. state.Between(label, label).Select(n => ReferenceEquals(n, nail) ? back : n)];
        bool fits = (state.Before(label) is not { } before || state.Row.Fits(before, grid))
            && (state.After(label) is not { } after || state.Row.Fits(grid, after));
        return fits ? [back] : null;
    }

    /// <summary>Every stretch that is not plain is solved again with all others fixed, until nothing gets better.</summary>
    private void Improve()
    {
        for (int round = 0; round < Rounds; round++)
        {
            bool better = false;
            foreach (RowState state in _states)
            {
                foreach ((int first, int last) in Troubles.Changed(state))
                {
                    if (StretchSolver.Solve(state, first, last, _index) is not { } solution || !(solution.New < solution.Old))
                        continue;
                    state.Replace(solution.First, solution.Last, solution.Nails, _index);
                    better = true;
                }
            }
            if (!better)
                return;
        }
    }

    /// <summary>For each noted or unresolved nail: take the nails of a row in its way out, solve its stretch, then theirs.</summary>
    private bool Exchange()
    {
        bool better = false;
        foreach (RowState state in _states)
        {
            foreach (Placed nail in state.Nails.ToList())
            {
                if (nail.Choice.IsPinned || !(nail.IsUnresolved || nail.Turning.IsNoted))
                    continue;
                foreach (Placed blocker in Blockers(nail).Take(BlockersTried))
                {
                    if (!IsPlaced(nail))
                        break;
                    if (IsPlaced(blocker))
                        better |= TryExchange(nail, blocker);
                }
            }
        }
        return better;
    }

    /// <summary>Nails of other rows that the nail would hit at its grid place and in the directions up to the field tolerance.</summary>
    private IEnumerable<Placed> Blockers(Placed nail)
    {
        RowTask row = nail.Row;
        HeadChoice grid = row.GridChoice(nail.Choice.Label);
        List<Placed> near = _index.Around(grid.Point, 2 * row.LongestNail);
        var hits = new Dictionary<Placed, int>(ReferenceEqualityComparer.Instance);
        for (int t = 0; t < grid.Turnings.Count && !grid.Turnings[t].IsNoted; t++)
        {
            if (!row.IsFree(grid, t))
                continue;
            Hole hole = row.HoleOf(grid, grid.Turnings[t]);
            foreach (Placed other in near)
            {
                if (other.Row != row && !other.Choice.IsPinned && !other.IsUnresolved && HoleDistance.CloserThan(hole, other.Hole, _clearance))
                    hits[other] = hits.GetValueOrDefault(other) + 1;
            }
        }
        return hits.OrderByDescending(h => h.Value).ThenBy(h => h.Key.Row.Index).ThenBy(h => h.Key.Choice.Head.Along).Select(h => h.Key);
    }

    private bool TryExchange(Placed nail, Placed blocker)
    {
        RowState mine = _states[nail.Row.Index], theirs = _states[blocker.Row.Index];
        int first = Math.Max(0, blocker.Choice.Label - StretchSolver.Margin);
        int last = Math.Min(theirs.Row.Count - 1, blocker.Choice.Label + StretchSolver.Margin);
        List<Placed> taken = [.. theirs.Between(first, last)];
        foreach (Placed other in taken)
            _index.Remove(other);
        StretchSolver.Solution? own = Around(nail);
        foreach (Placed other in taken)
            _index.Add(other);
        if (own is null || !(own.New < own.Old))
            return false;
        List<Placed> before = [.. mine.Between(own.First, own.Last)];
        mine.Replace(own.First, own.Last, own.Nails, _index);
        StretchSolver.Solution? given = StretchSolver.Solve(theirs, first, last, _index);
        if (given is not null && Gain(own) + Gain(given) < default(Cost))
        {
            theirs.Replace(given.First, given.Last, given.Nails, _index);
            return true;
        }
        mine.Replace(own.First, own.Last, before, _index);
        return false;
    }

    /// <summary>Where moves broke cover across rows, the nails there go back to their places and only turn.</summary>
    private bool KeepCover()
    {
        bool changed = false;
        foreach (IGrouping<Bay, RowState> bay in _states.GroupBy(s => s.Row.Bay))
        {
            Head[] grid = [.. bay.SelectMany(s => s.Row.Row.Places.Select(s.Row.Row.HeadAt))];
            List<CoverBreak> given = CoverRule.Breaks(bay.Key, grid, strict: true);
            for (int round = 0; round < Rounds; round++)
            {
                Head[] heads = [.. bay.SelectMany(s => s.Nails.Select(n => n.Choice.Head))];
                List<CoverBreak> fresh = [.. CoverRule.Breaks(bay.Key, heads, strict: true)
                    .Where(b => !given.Any(g => g.Lack == b.Lack && g.Start < b.End && b.Start < g.End))];
                if (fresh.Count == 0)
                    break;
                double reach = bay.Key.Section.HorizontalSpacing * (1.1 + 0.5 * round);
                foreach (RowState state in bay)
                    changed |= PutBack(state, fresh, reach);
            }
        }
        return changed;
    }

    private bool PutBack(RowState state, List<CoverBreak> breaks, double reach)
    {
        for (int label = 0; label < state.Row.Count; label++)
        {
            double place = state.Row.Row.Places[label];
            if (breaks.Any(b => place > b.Start - reach && place < b.End + reach))
                state.PlainOnly.Add(label);
        }
        int[] moved = [.. state.Nails.Where(n => !n.Choice.IsAtGrid && state.PlainOnly.Contains(n.Choice.Label)).Select(n => n.Choice.Label)];
        if (moved.Length == 0 || StretchSolver.Solve(state, moved.Min(), moved.Max(), _index) is not { } solution)
            return false;
        state.Replace(solution.First, solution.Last, solution.Nails, _index);
        return true;
    }
}
