namespace SheetGen.Layout.Placing;

/// <summary>
/// Ends all conflicts: pair by pair, the nail whose giving way costs less gives way; what still conflicts goes back to its grid place
/// and is left unresolved.
/// </summary>
public static class GivingWay
{
    public static void Run(LayoutState layout)
    {
        foreach (Placed nail in AllOf(layout))
        {
            foreach (Placed other in layout.ConflictsOf(nail))
            {
                if (!layout.IsPlaced(nail))
                    break;
                if (layout.IsPlaced(other))
                    GiveWay(layout, nail, other);
            }
        }
        foreach (Placed nail in AllOf(layout))
        {
            if (nail.Choice.IsPinned || layout.ConflictsOf(nail).Count == 0)
                continue;
            int label = nail.Choice.Label;
            if (BackUnresolved(layout.StateOf(nail), nail) is { } nails)
                layout.Replace(new StretchOfRow(nail.Row, label, label), nails);
        }
    }

    /// <summary>Each nail that still stands when its turn comes.</summary>
    private static IEnumerable<Placed> AllOf(LayoutState layout) =>
        layout.Rows.SelectMany(state => state.Nails.ToList()).Where(layout.IsPlaced);

    private static void GiveWay(LayoutState layout, Placed a, Placed b)
    {
        StretchSolver.Solution? first = a.Choice.IsPinned ? null : Around(layout, a);
        StretchSolver.Solution? second = b.Choice.IsPinned ? null : Around(layout, b);
        bool takeFirst = second is null || (first is not null && !(second.Gain < first.Gain));
        if ((takeFirst ? first : second) is { } solution)
            layout.Apply(solution);
    }

    private static StretchSolver.Solution? Around(LayoutState layout, Placed nail) =>
        StretchSolver.Solve(layout.StateOf(nail), nail.Choice.Label, nail.Choice.Label, layout.Index);

    /// <summary>The nail's station with the nail back at its grid place, unresolved; null where a gap would not fit.</summary>
    private static List<Placed>? BackUnresolved(RowState state, Placed nail)
    {
        int label = nail.Choice.Label;
        HeadChoice grid = state.Row.GridChoice(label);
        Placed back = Placed.At(state.Row, grid, grid.Turnings[0], true);
        if (nail.Choice == grid)
            return [.. state.At(label).Select(n => ReferenceEquals(n, nail) ? back : n)];
        bool fits = (state.Before(label) is not { } before || state.Row.Fits(before, grid))
            && (state.After(label) is not { } after || state.Row.Fits(grid, after));
        return fits ? [back] : null;
    }
}
