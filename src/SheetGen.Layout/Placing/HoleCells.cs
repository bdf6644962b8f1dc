using SheetGen.Model.Geometry;

namespace SheetGen.Layout.Placing;

/// <summary>Holes found by where they run: a hash of square plan cells.</summary>
public sealed class HoleCells
{
    private readonly double _cell;
    private readonly Dictionary<(int N, int E), List<Hole>> _cells = [];

    public HoleCells(double cell) => _cell = cell;

    public void Add(Hole hole)
    {
        foreach ((int N, int E) key in PlanCells.Of(hole, 0, _cell))
        {
            if (!_cells.TryGetValue(key, out List<Hole>? list))
                _cells[key] = list = [];
            list.Add(hole);
        }
    }

    public IEnumerable<Hole> Near(Hole hole, double distance) => PlanCells.Of(hole, distance, _cell)
        .SelectMany(key => _cells.TryGetValue(key, out List<Hole>? list) ? list : []).Distinct();
}
