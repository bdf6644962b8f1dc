using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>Points in cells of the tolerance, so that one near a place is found at once.</summary>
internal sealed class PointGrid
{
    private readonly double _tolerance;
    private readonly ILookup<(long, long), DxfPoint> _cells;

    public PointGrid(IEnumerable<DxfPoint> points, double tolerance)
    {
        _tolerance = tolerance;
        _cells = points.ToLookup(CellOf);
    }

    /// <summary>True where a point lies within the tolerance.</summary>
    public bool Has(DxfPoint at)
    {
        (long x, long y) = CellOf(at);
        for (long i = x - 1; i <= x + 1; i++)
        {
            for (long j = y - 1; j <= y + 1; j++)
            {
                foreach (DxfPoint p in _cells[(i, j)])
                {
                    if ((p - at).Length <= _tolerance)
                        return true;
                }
            }
        }
        return false;
    }

    private (long, long) CellOf(DxfPoint p) => ((long)Math.Floor(p.X / _tolerance), (long)Math.Floor(p.Y / _tolerance));
}
