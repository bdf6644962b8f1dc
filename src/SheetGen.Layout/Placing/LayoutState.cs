using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>All rows as they stand while the search goes on, and where their nails run into each other.</summary>
public sealed class LayoutState
{
    private readonly double _clearance;

    public LayoutState(IReadOnlyList<RowTask> rows, double clearance)
    {
        Clearance = clearance;
        _clearance = clearance - 1e-9;
        Rows = [.. rows.Select(r => new RowState(r))];
        Index = new PlacedIndex(CellSize(rows.Select(r => r.LongestNail).DefaultIfEmpty(1).Max()));
    }

    public IReadOnlyList<RowState> Rows { get; }

    /// <summary>Required clear distance of two nails.</summary>
    public double Clearance { get; }

    /// <summary>The nails that stand, by where their holes run.</summary>
    public PlacedIndex Index { get; }

    public Cost Cost => RowState.CostOf(Rows);

    public static double CellSize(double longestNail) => Math.Max(longestNail / 4, 1e-3);

    public RowState StateOf(Placed nail) => Rows[nail.Row.Index];

    public bool IsPlaced(Placed nail) => StateOf(nail).At(nail.Choice.Label).Contains(nail, ReferenceEqualityComparer.Instance);

    /// <summary>Puts other nails in the place of some, one for one.</summary>
    public void Replace(IReadOnlyList<Placed> old, IReadOnlyList<Placed> nails)
    {
        for (int i = 0; i < old.Count; i++)
        {
            Placed nail = old[i], other = nails[i];
            int label = nail.Choice.Label;
            Replace(new StretchOfRow(nail.Row, label, label), [.. StateOf(nail).At(label).Select(n => ReferenceEquals(n, nail) ? other : n)]);
        }
    }

    public void Apply(StretchSolver.Solution solution) => Replace(solution.Stretch, solution.Nails);

    public void Replace(StretchOfRow stretch, IReadOnlyList<Placed> nails) =>
        Rows[stretch.Row.Index].Replace(stretch.First, stretch.Last, nails, Index);

    /// <summary>The nails that a nail is too close to, none of the pair unresolved.</summary>
    public List<Placed> ConflictsOf(Placed nail)
    {
        var found = new List<Placed>();
        if (nail.IsUnresolved)
            return found;
        foreach (Placed other in Index.Near(nail.Hole, _clearance))
        {
            if (!ReferenceEquals(other, nail) && !other.IsUnresolved && AreTooClose(nail.Hole, other.Hole))
                found.Add(other);
        }
        return found;
    }

    /// <summary>Nails of other rows that the nail would hit at its grid place and in the directions up to the field tolerance.</summary>
    public IEnumerable<Placed> Blockers(Placed nail)
    {
        RowTask row = nail.Row;
        HeadChoice grid = row.GridChoice(nail.Choice.Label);
        List<Placed> near = Index.Around(grid.Point, 2 * row.LongestNail);
        var hits = new Dictionary<Placed, int>(ReferenceEqualityComparer.Instance);
        for (int t = 0; t < grid.Turnings.Count && !grid.Turnings[t].IsNoted; t++)
        {
            if (!row.IsFree(grid, t))
                continue;
            Hole hole = row.HoleOf(grid, grid.Turnings[t]);
            foreach (Placed other in near)
            {
                if (other.Row != row && !other.Choice.IsPinned && !other.IsUnresolved && AreTooClose(hole, other.Hole))
                    hits[other] = hits.GetValueOrDefault(other) + 1;
            }
        }
        return hits.OrderByDescending(h => h.Value).ThenBy(h => h.Key.Row.Index).ThenBy(h => h.Key.Choice.Head.Along).Select(h => h.Key);
    }

    public bool AreTooClose(in Hole a, in Hole b) => HoleDistance.CloserThan(a, b, _clearance);
}
