using SheetGen.Model.Geometry;

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
                foreach (Placed blocker in Blockers(nail).Take(BlockersTried))
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

    /// <summary>Nails of other rows that the nail would hit at its grid place and in the directions up to the field tolerance.</summary>
    private IEnumerable<Placed> Blockers(Placed nail)
    {
        RowTask row = nail.Row;
        HeadChoice grid = row.GridChoice(nail.Choice.Label);
        List<Placed> near = layout.Index.Around(grid.Point, 2 * row.LongestNail);
        var hits = new Dictionary<Placed, int>(ReferenceEqualityComparer.Instance);
        for (int t = 0; t < grid.Turnings.Count && !grid.Turnings[t].IsNoted; t++)
        {
            if (!row.IsFree(grid, t))
                continue;
            Hole hole = row.HoleOf(grid, grid.Turnings[t]);
            foreach (Placed other in near)
            {
                if (other.Row != row && !other.Choice.IsPinned && !other.IsUnresolved && layout.AreTooClose(hole, other.Hole))
                    hits[other] = hits.GetValueOrDefault(other) + 1;
            }
        }
        return hits.OrderByDescending(h => h.Value).ThenBy(h => h.Key.Row.Index).ThenBy(h => h.Key.Choice.Head.Along).Select(h => h.Key);
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
