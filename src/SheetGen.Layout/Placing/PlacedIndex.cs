using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Nails found by where their boxes lie: a hash of square plan cells. Reading it changes nothing.</summary>
/// <param name="cell">Side of a cell, about a quarter of a nail's length.</param>
internal sealed class PlacedIndex(double cell)
{
    private readonly Dictionary<(int N, int E), List<Placed>> _cells = [];

    public void Add(Placed nail)
    {
        foreach ((int N, int E) key in CellsOf(nail.Box))
        {
            if (!_cells.TryGetValue(key, out List<Placed>? nails))
                _cells[key] = nails = [];
            nails.Add(nail);
        }
    }

    public void Remove(Placed nail)
    {
        foreach ((int N, int E) key in CellsOf(nail.Box))
            _cells[key].Remove(nail);
    }

    /// <summary>Every nail whose hole may come within a distance of a hole; each once, in order of row and place.</summary>
    public List<Placed> Near(in Hole hole, double distance) => Meeting(Bounds.Of(hole).Grow(distance));

    /// <summary>Every nail whose hole may come into a ball around a point; each once, in order of row and place.</summary>
    public List<Placed> Around(Vector3D center, double radius) => Meeting(new Bounds(center, center).Grow(radius));

    private List<Placed> Meeting(Bounds box)
    {
        var found = new HashSet<Placed>(ReferenceEqualityComparer.Instance);
        foreach ((int N, int E) key in CellsOf(box))
        {
            if (_cells.TryGetValue(key, out List<Placed>? nails))
                found.UnionWith(nails.Where(n => n.Box.Meets(box)));
        }
        return [.. found.OrderBy(p => p.Row.Index).ThenBy(p => p.Choice.Head.Along)];
    }

    private IEnumerable<(int N, int E)> CellsOf(Bounds box)
    {
        for (int n = Floor(box.Low.N); n <= Floor(box.High.N); n++)
        {
            for (int e = Floor(box.Low.E); e <= Floor(box.High.E); e++)
                yield return (n, e);
        }
    }

    private int Floor(double value) => (int)Math.Floor(value / cell);
}
