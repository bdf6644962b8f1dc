namespace SheetGen.Layout.Placing;

/// <summary>
/// Every stretch that is not plain is solved again with all others fixed, until nothing gets better. A stretch near which nothing has
/// changed since it was last solved is passed over: it would come out the same. So is one that stands as its row alone would have it:
/// other rows can only make it dearer.
/// </summary>
public sealed class Improver
{
    private const int Rounds = 5;

    private readonly LayoutState _layout;
    private readonly HashSet<Placed> _bestAlone;

    private readonly Dictionary<StretchOfRow, (long Changes, StretchOfRow Whole)> _solved = [];

    /// <param name="layout">The layout with every row as it would stand alone.</param>
    public Improver(LayoutState layout)
    {
        _layout = layout;
        _bestAlone = new HashSet<Placed>(layout.Rows.SelectMany(r => r.Nails), ReferenceEqualityComparer.Instance);
    }

    public void Run()
    {
        for (int round = 0; round < Rounds; round++)
        {
            bool better = false;
            foreach (RowState state in _layout.Rows)
            {
                foreach ((int first, int last) in Troubles.Changed(state))
                    better |= Improve(state, first, last);
            }
            if (!better)
                return;
        }
    }

    /// <summary>Needed where the rules of a row have changed, not only nails.</summary>
    public void Forget() => _solved.Clear();

    private bool Improve(RowState state, int first, int last)
    {
        var stretch = new StretchOfRow(state.Row, first, last);
        if (_solved.TryGetValue(stretch, out var before) && !HasChangedNear(before.Whole, before.Changes))
            return false;
        if (state.Between(first - StretchSolver.Margin, last + StretchSolver.Margin).All(_bestAlone.Contains))
            return false;
        StretchSolver.Solution? solution = StretchSolver.Solve(state, first, last, _layout.Index);
        if (solution is null || !(solution.New < solution.Old))
        {
            _solved[stretch] = (_layout.Index.Changes, solution?.Stretch ?? stretch);
            return false;
        }
        _layout.Apply(solution);
        return true;
    }

    private bool HasChangedNear(StretchOfRow stretch, long since)
    {
        RowTask row = stretch.Row;
        double reach = row.LongestNail + row.Bay.Section.HorizontalSpacing + row.Bay.Rules.NailClearance
            + 2 * (row.Radius + row.Bay.Rules.Drift * row.LongestNail);
        for (int label = Math.Max(0, stretch.First - 1); label <= Math.Min(row.Count - 1, stretch.Last + 1); label++)
        {
            if (_layout.Index.HasChanged(row.GridChoice(label).Point, reach, since))
                return true;
        }
        return false;
    }
}
