using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>The nails placed so far, found by where their holes run: a hash of square plan cells.</summary>
public sealed class PlacedIndex
{
    private readonly double _cell;
    private readonly Dictionary<(int N, int E), List<Placed>> _cells = [];

    /// <param name="cell">Side of a cell, about a quarter of a nail's length.</param>
    public PlacedIndex(double cell) => _cell = cell;

    public void Add(Placed nail)
    {
        foreach ((int N, int E) key in PlanCells.Of(nail.Hole, 0, _cell))
        {
            if (!_cells.TryGetValue(key, out List<Placed>? list))
                _cells[key] = list = [];
            list.Add(nail);
        }
    }

    public void Remove(Placed nail)
    {
        foreach ((int N, int E) key in PlanCells.Of(nail.Hole, 0, _cell))
            _cells[key].RemoveAll(p => ReferenceEquals(p, nail));
    }

    /// <summary>Every nail whose hole may come within a distance of a hole; each once, in order of row and place.</summary>
    public List<Placed> Near(in Hole hole, double distance)
    {
        var found = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        Bounds box = Bounds.Of(hole).Grow(distance);
        foreach ((int N, int E) key in PlanCells.Of(hole, distance, _cell))
        {
            if (!_cells.TryGetValue(key, out List<Placed>? list))
                continue;
            foreach (Placed nail in list)
            {
                if (Bounds.Of(nail.Hole).Meets(box))
                    found.Add(nail);
            }
        }
        return Sorted(found);
    }

    /// <summary>Every nail whose hole may come into a ball around a point.</summary>
    public List<Placed> Around(Vector3D center, double radius)
    {
        var found = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        var box = new Bounds(center, center).Grow(radius);
        for (int n = PlanCells.Floor(center.N - radius, _cell); n <= PlanCells.Floor(center.N + radius, _cell); n++)
        {
            for (int e = PlanCells.Floor(center.E - radius, _cell); e <= PlanCells.Floor(center.E + radius, _cell); e++)
            {
                if (!_cells.TryGetValue((n, e), out List<Placed>? list))
                    continue;
                foreach (Placed nail in list)
                {
                    if (Bounds.Of(nail.Hole).Meets(box))
                        found.Add(nail);
                }
            }
        }
        return Sorted(found);
    }

    private static List<Placed> Sorted(HashSet<Placed> found) =>
        [.. found.OrderBy(p => p.Row.Index).ThenBy(p => p.Choice.Head.Along)];
}
