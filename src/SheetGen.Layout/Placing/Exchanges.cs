namespace SheetGen.Layout.Placing;

/// <summary>For each noted or unresolved nail: take the nails of a row in its way out, solve its stretch, then theirs.</summary>
public sealed class Exchanges(LayoutState layout)
{
    private const int BlockersTried = 3;

    public bool Run()
    {
        bool better = false;
        foreach (RowState state in layout.Rows)
        {
            foreach (Placed nail in state.Nails.ToList())
            {
                if (nail.Choice.IsPinned || !(nail.IsUnresolved || nail.Turning.IsNoted))
                    continue;
                foreach (Placed blocker in layout.Blockers(nail).Take(BlockersTried))
                {
                    if (!layout.IsPlaced(nail))
                        break;
                    if (layout.IsPlaced(blocker))
                        better |= Try(nail, blocker);
                }
            }
        }
        return better;
    }

    private bool Try(Placed nail, Placed blocker)
    {
        RowState mine = layout.StateOf(nail), theirs = layout.StateOf(blocker);
        int first = Math.Max(0, blocker.Choice.Label - StretchSolver.Margin);
        int last = Math.Min(theirs.Row.Count - 1, blocker.Choice.Label + StretchSolver.Margin);
        int label = nail.Choice.Label;
        StretchSolver.Solution? own = StretchSolver.Solve(mine, label, label, layout.Index, without: new StretchOfRow(theirs.Row, first, last));
        if (own is null || !(own.New < own.Old))
            return false;
        List<Placed> before = [.. mine.Between(own.Stretch.First, own.Stretch.Last)];
        layout.Apply(own);
        if (StretchSolver.Solve(theirs, first, last, layout.Index) is { } given && own.Gain + given.Gain < default(Cost))
        {
            layout.Apply(given);
            return true;
        }
        layout.Replace(own.Stretch, before);
        return false;
    }
}
