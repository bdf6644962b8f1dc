namespace SheetGen.Layout.Placing;

/// <summary>
/// Around a nail that is left unresolved all rows are taken away and built again: nail by nail in several orders, then row by row. What
/// comes out dearer than what stood is put back as it was.
/// </summary>
public sealed class Rebuilding(LayoutState layout)
{
    /// <summary>Half width of what is taken away, in spacings.</summary>
    private const double Window = 3.2;

    private readonly List<Placed> _tried = [];

    private readonly record struct Place(RowTask Row, HeadChoice Choice);

    /// <summary>True where anything got better.</summary>
    public bool Run()
    {
        bool better = false;
        _tried.Clear();
        foreach (Placed nail in layout.Rows.SelectMany(r => r.Nails.Where(n => n.IsUnresolved && !n.Choice.IsPinned).ToList()))
        {
            if (layout.IsPlaced(nail) && !WasTriedNear(nail))
                better |= Rebuild(nail);
        }
        return better;
    }

    private bool WasTriedNear(Placed nail)
    {
        double reach = Window / 2 * nail.Row.Bay.Section.HorizontalSpacing;
        if (_tried.Any(t => layout.IsPlaced(t) && t.Row.Bay == nail.Row.Bay && Math.Abs(t.Choice.Head.Along - nail.Choice.Head.Along) <= reach))
            return true;
        _tried.Add(nail);
        return false;
    }

    private bool Rebuild(Placed nail)
    {
        List<StretchOfRow> window = WindowAround(nail);
        Place[] places = [.. window.SelectMany(s =>
            Enumerable.Range(s.First, s.Last - s.First + 1).Select(label => new Place(s.Row, s.Row.GridChoice(label))))];
        Place[][] orders =
        [
            places,
            [.. places.OrderBy(p => p.Choice.Head.Along).ThenByDescending(p => p.Choice.Head.Elevation)],
            [.. places.OrderBy(p => (p.Choice.Point.Plan - nail.Choice.Point.Plan).Length).ThenBy(p => p.Choice.Head.Elevation)],
        ];
        bool better = false;
        foreach (Place[] order in orders)
            better |= Try(window, (rows, old) => InsertNails(window, order, rows, old));
        return better | Try(window, (_, _) => InsertRows(window));
    }

    /// <summary>The grid stations of all rows whose heads are near a nail's, from the top row down.</summary>
    private List<StretchOfRow> WindowAround(Placed nail)
    {
        double reach = Window * nail.Row.Bay.Section.HorizontalSpacing;
        var window = new List<StretchOfRow>();
        foreach (RowState state in layout.Rows)
        {
            int[] near = [.. Enumerable.Range(0, state.Row.Count)
                .Where(label => (state.Row.GridChoice(label).Point.Plan - nail.Choice.Point.Plan).Length <= reach)];
            if (near.Length > 0 && FitsAtGrid(state, near[0], near[^1]))
                window.Add(new StretchOfRow(state.Row, near[0], near[^1]));
        }
        return [.. window.OrderByDescending(s => s.Row.GridChoice((s.First + s.Last) / 2).Point.Z).ThenBy(s => s.Row.Index)];
    }

    /// <summary>True where nails at the grid places of a stretch fit beside the nails before and after it.</summary>
    private static bool FitsAtGrid(RowState state, int first, int last) =>
        (state.Before(first) is not { } before || state.Row.Fits(before, state.Row.GridChoice(first)))
        && (state.After(last) is not { } after || state.Row.Fits(state.Row.GridChoice(last), after));

    /// <summary>Builds the window again; where that fails or is no better everything is put back.</summary>
    private bool Try(List<StretchOfRow> window, Func<RowState[], Cost, bool> build)
    {
        RowState[] rows = [.. window.Select(s => layout.Rows[s.Row.Index])];
        IReadOnlyList<Placed>[][] before = [.. rows.Select(r => r.Snapshot())];
        Cost old = RowState.CostOf(rows);
        foreach (StretchOfRow stretch in window)
            layout.Replace(stretch, []);
        if (build(rows, old) && HasFewer(RowState.CostOf(rows), old))
            return true;
        for (int i = 0; i < rows.Length; i++)
            rows[i].Restore(before[i], layout.Index);
        return false;
    }

    /// <summary>
    /// Each nail at its grid place takes the cheapest direction that is clear of those placed before it; where that leaves no more
    /// unresolved than before, the stretches around them are solved. False where it leaves more.
    /// </summary>
    private bool InsertNails(List<StretchOfRow> window, Place[] order, RowState[] rows, Cost old)
    {
        foreach ((RowTask row, HeadChoice choice) in order)
        {
            Placed nail = Cheapest(row, choice) ?? Placed.At(row, choice, choice.Turnings[0], !choice.IsPinned);
            layout.Replace(new StretchOfRow(row, choice.Label, choice.Label), [nail]);
        }
        if (RowState.CostOf(rows).Unresolved > old.Unresolved)
            return false;
        foreach (StretchOfRow stretch in window)
        {
            RowState state = layout.Rows[stretch.Row.Index];
            foreach (Placed nail in state.Between(stretch.First, stretch.Last).Where(n => n.IsUnresolved).ToList())
            {
                int label = nail.Choice.Label;
                if (layout.IsPlaced(nail) && StretchSolver.Solve(state, label, label, layout.Index) is { } solution && solution.New < solution.Old)
                    layout.Apply(solution);
            }
        }
        return true;
    }

    private Placed? Cheapest(RowTask row, HeadChoice choice)
    {
        for (int t = 0; t < choice.Turnings.Count; t++)
        {
            if (!row.IsFree(choice, t))
                continue;
            Placed nail = Placed.At(row, choice, choice.Turnings[t], false);
            if (layout.ConflictsOf(nail).Count == 0)
                return nail;
        }
        return null;
    }

    /// <summary>Each row takes the cheapest chain that is clear of the rows built before it; false where there is none.</summary>
    private bool InsertRows(List<StretchOfRow> window)
    {
        foreach (StretchOfRow stretch in window)
        {
            if (StretchSolver.Solve(layout.Rows[stretch.Row.Index], stretch.First, stretch.Last, layout.Index) is not { } solution)
                return false;
            layout.Apply(solution);
        }
        return true;
    }

    /// <summary>Less effort alone is not worth building again: it often costs cover.</summary>
    private static bool HasFewer(Cost cost, Cost old) =>
        cost.Unresolved != old.Unresolved ? cost.Unresolved < old.Unresolved : cost.Noted < old.Noted;
}
