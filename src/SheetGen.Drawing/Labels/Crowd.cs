using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Labels;

/// <summary>What already stands on a sheet, found fast by place: boxes that keep texts away, leaders, and lines better not written over.</summary>
public sealed class Crowd
{
    private readonly Box _bounds;
    private readonly CellGrid _boxPlaces;
    private readonly CellGrid _linePlaces;
    private readonly List<(Box Box, bool OwnsLeader)> _boxes = [];
    private readonly List<(Point2 From, Point2 To, LineKind Kind, int Thing)> _lines = [];
    private int _things;

    // What a question has met so far: a few at most, and asked for every place of every label, so that one list serves all.
    private readonly List<int> _met = [];

    /// <summary>An empty crowd; what lies wholly outside the bounds is left out, for no label goes there.</summary>
    public Crowd(Box bounds)
    {
        _bounds = bounds;
        _boxPlaces = new CellGrid(bounds);
        _linePlaces = new CellGrid(bounds);
    }

    /// <summary>A box that keeps texts away; a nail or a hatched part lets its own leaders start within it.</summary>
    public void Add(Box box, bool ownsLeader = false)
    {
        if (!box.Overlaps(_bounds))
            return;
        _boxPlaces.Add(_boxes.Count, box);
        _boxes.Add((box, ownsLeader));
    }

    public void Add(Point2 from, Point2 to, LineKind kind) => Add(from, to, kind, _things++);

    /// <summary>Adds the lines of a primitive, with the closing side of an outline; however many pieces a curve has, it counts as one line.</summary>
    public void Add(Primitive primitive, LineKind kind)
    {
        Add(Extents.Segments(primitive), kind);
    }

    /// <summary>Adds lines that count as one.</summary>
    public void Add(IEnumerable<(Point2 From, Point2 To)> lines, LineKind kind)
    {
        foreach ((Point2 from, Point2 to) in lines)
            Add(from, to, kind, _things);
        _things++;
    }

    private void Add(Point2 from, Point2 to, LineKind kind, int thing)
    {
        if (!_bounds.Crosses(from, to))
            return;
        _linePlaces.Add(_lines.Count, from, to);
        _lines.Add((from, to, kind, thing));
    }

    public bool IsFree(Box box)
    {
        foreach (int i in _boxPlaces.In(box))
        {
            if (_boxes[i].Box.Overlaps(box))
                return false;
        }
        foreach (int i in _linePlaces.In(box))
        {
            if (_lines[i].Kind != LineKind.Soft && box.Crosses(_lines[i].From, _lines[i].To))
                return false;
        }
        return true;
    }

    /// <summary>Number of lines under a box, or under any of several, all of one outline or curve as one.</summary>
    public int LinesUnder(params ReadOnlySpan<Box> boxes)
    {
        _met.Clear();
        foreach (Box box in boxes)
        {
            foreach (int i in _linePlaces.In(box))
            {
                if (!_met.Contains(_lines[i].Thing) && box.Crosses(_lines[i].From, _lines[i].To))
                    _met.Add(_lines[i].Thing);
            }
        }
        return _met.Count;
    }

    /// <summary>
    /// How many things that no text may stand on a leader crosses, all lines of one outline or curve as one. The line that it points at is none
    /// of them, unless that belongs to a dimension.
    /// </summary>
    /// <param name="from">What it points at.</param>
    public int LinesCrossed(Point2 from, Point2 to)
    {
        _met.Clear();
        foreach (int i in _linePlaces.In(Box.Around([from, to])))
        {
            (Point2 a, Point2 b, LineKind kind, int thing) = _lines[i];
            if (kind != LineKind.Soft && !_met.Contains(thing) && DoCross(from, to, a, b, kind))
                _met.Add(thing);
        }
        return _met.Count;
    }

    /// <summary>Distance from the end of a leader within which a line is what it points at, mm.</summary>
    private const double Own = 0.8;

    private static bool DoCross(Point2 from, Point2 to, Point2 a, Point2 b, LineKind kind) => kind == LineKind.Dimension
        ? from.DistanceTo(a, b) < Own || Meet(a, b, from, to)
        : Meet(a, b, from, to) && from.DistanceTo(a, b) >= Own;

    /// <summary>False where a leader would run through a text, a nail other than its own, or another leader.</summary>
    public bool IsLeaderFree(Point2 from, Point2 to, Point2 anchor)
    {
        foreach (int i in _boxPlaces.Along(from, to))
        {
            (Box box, bool ownsLeader) = _boxes[i];
            if (box.Crosses(from, to) && !(ownsLeader && box.Contains(anchor)))
                return false;
        }
        foreach (int i in _linePlaces.Along(from, to))
        {
            if (_lines[i].Kind == LineKind.Leader && Meet(_lines[i].From, _lines[i].To, from, to))
                return false;
        }
        return true;
    }

    /// <summary>True where a line that no text may stand on runs along a segment within a distance, so that the two would look like one.</summary>
    public bool RunsAlong(Point2 from, Point2 to, double within)
    {
        Point2 way = to - from;
        double length = way.Length;
        if (length < 1e-9)
            return false;
        foreach (int i in _linePlaces.In(Box.Around([from, to]).Grown(within)))
        {
            (Point2 a, Point2 b, LineKind kind, _) = _lines[i];
            if (kind != LineKind.Soft && IsAlong(a - from, b - from, way * (1 / length), length, within))
                return true;
        }
        return false;
    }

    private static bool IsAlong(Point2 a, Point2 b, Point2 way, double length, double within)
    {
        double s = a.X * way.X + a.Y * way.Y, t = b.X * way.X + b.Y * way.Y;
        double offS = a.Y * way.X - a.X * way.Y, offT = b.Y * way.X - b.X * way.Y;
        if (Math.Abs(t - s) < 4 * Math.Abs(offT - offS) || Math.Abs(t - s) < 0.5)
            return false;
        double first = Math.Max(0, Math.Min(s, t)), last = Math.Min(length, Math.Max(s, t));
        double middle = offS + (offT - offS) * (((first + last) / 2 - s) / (t - s));
        return last - first > 0.5 && Math.Abs(middle) < within;
    }

    private static bool Meet(Point2 a, Point2 b, Point2 c, Point2 d) =>
        Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;

    private static double Side(Point2 a, Point2 b, Point2 p) => (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);
}
