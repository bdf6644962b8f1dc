using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>All rows as they stand while the search goes on, and where their nails run into each other.</summary>
public sealed class LayoutState
{
    private readonly double _clearance;

    public LayoutState(IReadOnlyList<RowTask> rows, double clearance)
    {
        _clearance = clearance - 1e-9;
        Rows = [.. rows.Select(r => new RowState(r))];
        Index = new PlacedIndex(CellSize(rows.Select(r => r.LongestNail).DefaultIfEmpty(1).Max()));
    }

    public IReadOnlyList<RowState> Rows { get; }

    /// <summary>The nails that stand, by where their holes run.</summary>
    public PlacedIndex Index { get; }

    public Cost Cost => Rows.Aggregate(default(Cost), (sum, row) => sum + row.Cost);

    public static double CellSize(double longestNail) => Math.Max(longestNail / 4, 1e-3);

    public RowState StateOf(Placed nail) => Rows[nail.Row.Index];

    public bool IsPlaced(Placed nail) => StateOf(nail).At(nail.Choice.Label).Contains(nail, ReferenceEqualityComparer.Instance);

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

    public bool AreTooClose(in Hole a, in Hole b) => HoleDistance.CloserThan(a, b, _clearance);
}
