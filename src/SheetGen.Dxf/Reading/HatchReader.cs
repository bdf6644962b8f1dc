namespace SheetGen.Dxf;

/// <summary>Reads hatches. Their groups repeat and so must be taken in order.</summary>
internal sealed class HatchReader
{
    private const int PolylineBoundary = 2, Line = 1, CircularArc = 2;
    private const double FullTurn = 360 - 1e-6;

    private readonly EntityReader _reader;
    private readonly Record _record;
    private readonly Plane _plane;
    private readonly double _z;
    private int _at;

    private HatchReader(EntityReader reader, Record record, Plane plane)
    {
        (_reader, _record, _plane, _z) = (reader, record, plane, record.Real(30));
    }

    internal static DxfHatch? Read(EntityReader reader, Record record, Plane plane, string layer)
    {
        if (!reader.IsFlat(record, plane))
            return null;
        var hatch = new HatchReader(reader, record, plane);
        var boundaries = hatch.Boundaries();
        return boundaries is null ? null : new(layer, [.. boundaries]) { Pattern = hatch.Pattern() };
    }

    private List<DxfSequence<DxfVertex>>? Boundaries()
    {
        var boundaries = new List<DxfSequence<DxfVertex>>();
        Seek(91);
        for (var count = TakeWhole(91); count > 0 && Seek(92); count--)
        {
            var flags = TakeWhole(92);
            var boundary = (flags & PolylineBoundary) != 0 ? Polyline() : Edges();
            if (boundary is null)
            {
                _reader.Log.Warn(_record, "HATCH whose boundary is not a closed chain of lines and arcs is left out");
                return null;
            }
            boundaries.Add([.. boundary]);
        }
        return boundaries;
    }

    private List<DxfVertex> Polyline()
    {
        var vertices = new List<DxfVertex>();
        Seek(93);
        var count = TakeWhole(93);
        while (vertices.Count < count && Seek(10, 92, 97))
        {
            var point = TakePoint(10);
            vertices.Add(new(point, _plane.Bulge(Peek(42) ? TakeReal(42) : 0)));
        }
        return vertices;
    }

    private List<DxfVertex>? Edges()
    {
        var vertices = new List<DxfVertex>();
        Seek(93);
        DxfPoint? last = null;
        for (var count = TakeWhole(93); count > 0 && Seek(72, 92, 97); count--)
        {
            var edge = TakeWhole(72) switch { Line => Straight(), CircularArc => Arc(), _ => null };
            if (edge is not { } found || (last is { } end && !Meet(end, found.Vertices[0].Point)))
                return null;
            vertices.AddRange(found.Vertices);
            last = found.End;
        }
        return last is { } finish && Meet(finish, vertices[0].Point) ? vertices : null;
    }

    private static bool Meet(DxfPoint a, DxfPoint b) => (a - b).Length <= 1e-6 * (1 + a.Length);

    private (List<DxfVertex> Vertices, DxfPoint End)? Straight()
    {
        var start = TakePoint(10);
        return ([start], TakePoint(11));
    }

    private (List<DxfVertex> Vertices, DxfPoint End)? Arc()
    {
        var center = new Xyz(TakeReal(10), TakeReal(20), _z);
        var (radius, start, end) = (TakeReal(40), TakeReal(50), TakeReal(51));
        // A clockwise arc has its angles counted clockwise too.
        var sense = TakeWhole(73) != 0 ? 1 : -1;
        var sweep = (end - start) % 360;
        if (sweep <= 0)
            sweep += 360;
        DxfPoint At(double angle)
        {
            var arm = new DxfPoint(radius, 0).Rotated(sense * angle);
            return Map(new(center.X + arm.X, center.Y + arm.Y, _z));
        }
        var pieces = sweep > FullTurn ? 2 : 1;
        var bulge = _plane.Bulge(sense * DxfBulge.OfSweep(sweep / pieces));
        return ([.. Enumerable.Range(0, pieces).Select(i => new DxfVertex(At(start + (i * sweep / pieces)), bulge))], At(start + sweep));
    }

    private DxfHatchPattern? Pattern()
    {
        if (_record.Integer(70) == 1)
            return null;
        Seek(76);
        var kind = (DxfPatternKind)TakeWhole(76);
        var (angle, scale) = (Peek(52) ? TakeReal(52) : 0, Peek(41) ? TakeReal(41) : 1);
        Seek(78);
        var lines = new List<DxfPatternLine>();
        for (var count = TakeWhole(78); count > 0 && Seek(53); count--)
        {
            var direction = _plane.Angle(TakeReal(53));
            var (start, offset) = (Vector(TakeReal(43), TakeReal(44)), Vector(TakeReal(45), TakeReal(46)));
            var dashes = new List<double>();
            for (var dash = TakeWhole(79); dash > 0 && Peek(49); dash--)
                dashes.Add(TakeReal(49));
            lines.Add(new(direction, start, offset, [.. dashes]));
        }
        return new(_record.Name(2, "_USER"), [.. lines])
        {
            Kind = Enum.IsDefined(kind) ? kind : DxfPatternKind.Custom,
            Scale = scale > 0 ? scale : 1,
            Angle = _plane.Turn(angle),
        };
    }

    private DxfPoint Vector(double x, double y) => new(_plane.IsMirrored && x != 0 ? -x : x, y);

    private DxfPoint Map(Xyz point) => _reader.Map(_record, _plane, point);

    private DxfPoint TakePoint(int code) => Map(new(TakeReal(code), TakeReal(code + 10), _z));

    private bool Peek(int code) => _at < _record.Groups.Count && _record.Groups[_at].Code == code;

    /// <summary>Goes on to the next group of a code, but not past those that stop the search.</summary>
    private bool Seek(int code, params ReadOnlySpan<int> stops)
    {
        for (; _at < _record.Groups.Count; _at++)
        {
            if (Peek(code))
                return true;
            if (stops.Contains(_record.Groups[_at].Code))
                return false;
        }
        return false;
    }

    private double TakeReal(int code) => Peek(code) ? _record.ToReal(_record.Groups[_at++]) : Missing(code);

    private int TakeWhole(int code) => Peek(code) ? _record.ToInteger(_record.Groups[_at++]) : (int)Missing(code);

    private double Missing(int code)
    {
        _reader.Log.Warn(_record, $"HATCH: group code {code} is missing or out of order; 0 is taken");
        return 0;
    }
}
