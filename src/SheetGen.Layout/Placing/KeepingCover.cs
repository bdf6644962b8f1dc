using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Placing;

/// <summary>Where moves broke cover across rows, the nails there go back to their places and only turn.</summary>
public static class KeepingCover
{
    private const int Rounds = 5;

    /// <summary>True where anything was put back.</summary>
    public static bool Run(LayoutState layout)
    {
        bool changed = false;
        foreach (IGrouping<Bay, RowState> bay in layout.Rows.GroupBy(s => s.Row.Bay))
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
                    changed |= PutBack(layout, state, fresh, reach);
            }
        }
        return changed;
    }

    private static bool PutBack(LayoutState layout, RowState state, List<CoverBreak> breaks, double reach)
    {
        for (int label = 0; label < state.Row.Count; label++)
        {
            double place = state.Row.Row.Places[label];
            if (breaks.Any(b => place > b.Start - reach && place < b.End + reach))
                state.PlainOnly.Add(label);
        }
        int[] moved = [.. state.Nails.Where(n => !n.Choice.IsAtGrid && state.PlainOnly.Contains(n.Choice.Label)).Select(n => n.Choice.Label)];
        if (moved.Length == 0 || StretchSolver.Solve(state, moved.Min(), moved.Max(), layout.Index) is not { } solution)
            return false;
        layout.Apply(solution);
        return true;
    }
}
