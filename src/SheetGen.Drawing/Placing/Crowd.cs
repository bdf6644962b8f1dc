using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Placing;

/// <summary>What already stands on a sheet, found fast by place: boxes that keep texts away, leaders, and lines better not written over.</summary>
public sealed class Crowd
{
    private const double Cell = 8;
    private readonly Dictionary<(int, int), List<int>> _boxCells = [];
    private readonly Dictionary<(int, int), List<int>> _lineCells = [];
    private readonly List<(Box Box, bool OwnsLeader)> _boxes = [];
    private readonly List<(Point2 From, Point2 To, LineKind Kind)> _lines = [];

    /// <summary>A box that keeps texts away; a nail or a hatched part lets its own leaders start within it.</summary>
    public void Add(Box box, bool ownsLeader = false)
    {
        foreach ((int, int) cell in CellsOf(box))
            ListAt(_boxCells, cell).Add(_boxes.Count);
        _boxes.Add((box, ownsLeader));
    }

    public void Add(Point2 from, Point2 to, LineKind kind)
    {
        foreach ((int, int) cell in CellsAlong(from, to))
            ListAt(_lineCells, cell).Add(_lines.Count);
        _lines.Add((from, to, kind));
    }

    public bool IsFree(Box box)
    {
        foreach ((int, int) cell in CellsOf(box))
        {
            if (_boxCells.TryGetValue(cell, out List<int>? boxes) && boxes.Any(i => _boxes[i].Box.Overlaps(box)))
                return false;
            if (_lineCells.TryGetValue(cell, out List<int>? lines)
                && lines.Any(i => _lines[i].Kind != LineKind.Soft && box.Crosses(_lines[i].From, _lines[i].To)))
                return false;
        }
        return true;
    }

    /// <summary>Number of soft lines under a box.</summary>
    public int LinesUnder(Box box)
    {
        var met = new HashSet<int>();
        foreach ((int, int) cell in CellsOf(box))
        {
            if (_lineCells.TryGetValue(cell, out List<int>? lines))
                met.UnionWith(lines.Where(i => box.Crosses(_lines[i].From, _lines[i].To)));
        }
        return met.Count;
    }

    /// <summary>False where a leader would run through a text, a nail other than its own, or another leader.</summary>
    public bool IsLeaderFree(Point2 from, Point2 to, Point2 anchor)
    {
        foreach ((int, int) cell in CellsAlong(from, to))
        {
            if (_boxCells.TryGetValue(cell, out List<int>? boxes)
                && boxes.Any(i => !(_boxes[i].OwnsLeader && _boxes[i].Box.Contains(anchor)) && _boxes[i].Box.Crosses(from, to)))
                return false;
            if (_lineCells.TryGetValue(cell, out List<int>? lines)
                && lines.Any(i => _lines[i].Kind == LineKind.Leader && Meet(_lines[i].From, _lines[i].To, from, to)))
                return false;
        }
        return true;
    }

    private static bool Meet(Point2 a, Point2 b, Point2 c, Point2 d) =>
        Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;

    private static double Side(Point2 a, Point2 b, Point2 p) => (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);

    private static IEnumerable<(int, int)> CellsOf(Box box)
    {
        for (int x = Index(box.Left); x <= Index(box.Right); x++)
        {
            for (int y = Index(box.Bottom); y <= Index(box.Top); y++)
                yield return (x, y);
        }
    }

    private static IEnumerable<(int, int)> CellsAlong(Point2 from, Point2 to) =>
        CellsOf(Box.Around([from, to])).Where(c =>
            new Box(c.Item1 * Cell, c.Item2 * Cell, (c.Item1 + 1) * Cell, (c.Item2 + 1) * Cell).Grown(0.01).Crosses(from, to));

    private static int Index(double value) => (int)Math.Floor(value / Cell);

    private static List<int> ListAt(Dictionary<(int, int), List<int>> cells, (int, int) cell)
    {
        if (!cells.TryGetValue(cell, out List<int>? list))
            cells[cell] = list = [];
        return list;
    }
}
