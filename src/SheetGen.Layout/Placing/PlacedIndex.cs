using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>The nails placed so far, found by where their holes run: a hash of square plan cells. Reading it changes nothing.</summary>
public sealed class PlacedIndex
{
    private readonly double _cell;
    private readonly Dictionary<(int N, int E), Cell> _cells = [];
    private long _changes;

    /// <param name="cell">Side of a cell, about a quarter of a nail's length.</param>
    public PlacedIndex(double cell) => _cell = cell;

    /// <summary>Number of changes so far.</summary>
    public long Changes => _changes;

    public void Add(Placed nail)
    {
        foreach ((int N, int E) key in PlanCells.Of(nail.Hole, 0, _cell))
        {
            if (!_cells.TryGetValue(key, out Cell? cell))
                _cells[key] = cell = new Cell();
            cell.Nails.Add(nail);
            cell.LastChange = _changes + 1;
        }
        _changes++;
    }

    public void Remove(Placed nail)
    {
        foreach ((int N, int E) key in PlanCells.Of(nail.Hole, 0, _cell))
        {
            Cell cell = _cells[key];
            cell.Nails.RemoveAll(p => ReferenceEquals(p, nail));
            cell.LastChange = _changes + 1;
        }
        _changes++;
    }

    /// <summary>True where a nail that reaches into a ball was added or removed after so many changes.</summary>
    public bool HasChanged(Vector3D center, double radius, long since)
    {
        foreach (Cell cell in CellsAround(center, radius))
        {
            if (cell.LastChange > since)
                return true;
        }
        return false;
    }

    /// <summary>Every nail whose hole may come within a distance of a hole; each once, in order of row and place.</summary>
    public List<Placed> Near(in Hole hole, double distance)
    {
        var found = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        Bounds box = Bounds.Of(hole).Grow(distance);
        foreach ((int N, int E) key in PlanCells.Of(hole, distance, _cell))
        {
            if (_cells.TryGetValue(key, out Cell? cell))
                AddMeeting(cell, box, found);
        }
        return Sorted(found);
    }

    /// <summary>Every nail whose hole may come into a ball around a point; each once, in order of row and place.</summary>
    public List<Placed> Around(Vector3D center, double radius)
    {
        var found = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        var box = new Bounds(center, center).Grow(radius);
        foreach (Cell cell in CellsAround(center, radius))
            AddMeeting(cell, box, found);
        return Sorted(found);
    }

    private static void AddMeeting(Cell cell, Bounds box, HashSet<Placed> found)
    {
        foreach (Placed nail in cell.Nails)
        {
            if (Bounds.Of(nail.Hole).Meets(box))
                found.Add(nail);
        }
    }

    private IEnumerable<Cell> CellsAround(Vector3D center, double radius)
    {
        for (int n = PlanCells.Floor(center.N - radius, _cell); n <= PlanCells.Floor(center.N + radius, _cell); n++)
        {
            for (int e = PlanCells.Floor(center.E - radius, _cell); e <= PlanCells.Floor(center.E + radius, _cell); e++)
            {
                if (_cells.TryGetValue((n, e), out Cell? cell))
                    yield return cell;
            }
        }
    }

    private static List<Placed> Sorted(HashSet<Placed> found) =>
        [.. found.OrderBy(p => p.Row.Index).ThenBy(p => p.Choice.Head.Along)];

    private sealed class Cell
    {
        public List<Placed> Nails { get; } = [];

        public long LastChange { get; set; }
    }
}
