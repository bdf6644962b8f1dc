using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Building;

/// <summary>The layout lines of a file, by name, and the origin that all geometry is relative to: the first line's start point.</summary>
internal sealed class LayoutLines
{
    private readonly Dictionary<string, LayoutLine?> _byName = [];
    private readonly ProblemList _problems;
    private readonly LengthUnit _unit;
    private readonly bool _namesWhole;
    private readonly decimal _originNorthing;
    private readonly decimal _originEasting;

    public LayoutLines(MapItem root, LengthUnit unit, ProblemList problems)
    {
        _unit = unit;
        _problems = problems;
        MapItem[] maps = [.. root.Maps("layout_lines")];
        MapItem? first = maps.FirstOrDefault()?.Map("start");
        _originNorthing = first?.NumberItem("northing")?.Exact ?? 0;
        _originEasting = first?.NumberItem("easting")?.Exact ?? 0;
        Origin = new Vector2D(Numbers.Nearest(_originNorthing), Numbers.Nearest(_originEasting));
        Names.CheckUnique(maps, "layout line", problems);
        _namesWhole = root.List("layout_lines") is { Faulty: false } && Array.TrueForAll(maps, m => m.Text("name") is not null);
        var built = new List<LayoutLine>();
        foreach (MapItem map in maps)
        {
            LayoutLine? line = Build(map);
            if (line is not null)
                built.Add(line);
            if (map.Text("name") is { } name)
                _byName.TryAdd(name, line);
        }
        Built = built;
    }

    public IReadOnlyList<LayoutLine> Built { get; }

    public Vector2D Origin { get; }

    /// <summary>A plan point relative to the origin; subtracted in decimals, so that large coordinates lose nothing.</summary>
    public Vector2D Relative(NumberItem northing, NumberItem easting) =>
        new(Numbers.Nearest(northing.Exact - _originNorthing), Numbers.Nearest(easting.Exact - _originEasting));

    /// <summary>The layout line that a block names, or the only one; null where it is faulty or not named, which is reported.</summary>
    public LayoutLine? Find(MapItem map)
    {
        if (map.Text("layout_line") is { } name)
        {
            if (_byName.TryGetValue(name, out LayoutLine? line))
                return line;
            if (_namesWhole)
                _problems.Add(ProblemCodes.UnknownName, map.SpotOf("layout_line"), $"there is no layout line \"{Shown.Short(name)}\"", Names.Hint(name, _byName.Keys));
            return null;
        }
        if (map.Gives("layout_line") || !_namesWhole)
            return null;
        if (_byName.Count == 1)
            return _byName.Values.First();
        _problems.Add(ProblemCodes.NameNeeded, map.Spot, "there are several layout lines: this needs \"layout_line\"", "one of " + string.Join(", ", _byName.Keys));
        return null;
    }

    private LayoutLine? Build(MapItem map)
    {
        List<LayoutElement>? elements = ReadElements(map);
        if (elements is null || map.Map("start") is not { } start || map.Text("name") is not { } name)
            return null;
        if (start.NumberItem("northing") is not { } n || start.NumberItem("easting") is not { } e)
            return null;
        if (start.Number("station") is not { } station || start.Number("azimuth") is not { } azimuth || map.IsFaulty("station_equations"))
            return null;
        double length = LayoutLine.Build(name, station, default, 0, elements).Length;
        return StationEquations.Read(map, station, length, _unit, _problems) is { } equations
            ? LayoutLine.Build(name, new Stationing(station, equations), Relative(n, e), Angles.ToRadians(azimuth), elements)
            : null;
    }

    private List<LayoutElement>? ReadElements(MapItem map)
    {
        if (map.List("elements") is not { } list)
            return null;
        var elements = new List<LayoutElement>();
        bool faulty = list.Faulty;
        foreach (MapItem item in list.Maps)
        {
            if (ReadElement(item) is { } element)
                elements.Add(element);
            else
                faulty = true;
        }
        if (faulty)
            return null;
        MapItem[] items = [.. list.Maps];
        for (int i = 0; i < elements.Count; i++)
        {
            bool isPoint = elements[i] is LayoutElement.Bend or LayoutElement.Kink;
            bool between = i > 0 && i < elements.Count - 1 && elements[i - 1] is not (LayoutElement.Bend or LayoutElement.Kink);
            if (isPoint && !between)
            {
                _problems.Add(ProblemCodes.NotHere, items[i].Spot, "a corner stands between two lines, arcs or spirals", "remove it, or add the line that it leads to");
                faulty = true;
            }
        }
        return faulty ? null : elements;
    }

    private LayoutElement? ReadElement(MapItem item)
    {
        if (item.Number("line") is { } length)
            return new LayoutElement.Tangent(length);
        if (item.Map("arc") is { } arc)
        {
            if (arc.Number("radius") is not { } radius || arc.Number("length") is not { } along || TurnOf(arc) is not { } side)
                return null;
            if (along <= 2 * Math.PI * radius)
                return new LayoutElement.Arc(radius, along, side);
            _problems.Add(ProblemCodes.OutOfRange, arc.SpotOf("length"), "the arc is longer than a full circle of its radius", "check radius and length");
            return null;
        }
        if (item.Map("spiral") is { } spiral)
            return Spiral(spiral);
        if (item.Number("kink") is { } kink)
            return new LayoutElement.Kink(kink);
        if (item.Map("corner") is { } corner && corner.Number("angle") is { } angle && TurnOf(corner) is { } turn)
            return new LayoutElement.Bend(turn, angle);
        return null;
    }

    private LayoutElement.Spiral? Spiral(MapItem spiral)
    {
        if (spiral.Number("length") is not { } length || TurnOf(spiral) is not { } side || spiral.IsFaulty("start_radius") || spiral.IsFaulty("end_radius"))
            return null;
        double start = spiral.Number("start_radius") ?? double.PositiveInfinity, end = spiral.Number("end_radius") ?? double.PositiveInfinity;
        if (start == end)
        {
            Report(spiral, "the radius of the spiral does not change", double.IsInfinity(start) ? "give end_radius (or start_radius): an end without one is straight" : "write it as an arc");
            return null;
        }
        if (length * (1 / start + 1 / end) / 2 <= 2 * Math.PI)
            return new LayoutElement.Spiral(start, end, length, side);
        Report(spiral, "the spiral turns by more than a full circle", "check its length and radii");
        return null;

        void Report(MapItem at, string message, string hint) => _problems.Add(ProblemCodes.OutOfRange, at.SpotOf("length"), message, hint);
    }

    private static Turn? TurnOf(MapItem map) => map.Text("turn") switch
    {
        "left" => Turn.Left,
        "right" => Turn.Right,
        _ => null,
    };
}
