namespace SheetGen.Tests.Walls;

/// <summary>
/// Makes walls as they are: several heights, slopes and steps, arcs and corners to both sides, one or two walls, several sections,
/// both retained sides, ft, us-ft and m. The same seed and options always give the same wall.
/// </summary>
public sealed class RandomWall
{
    private readonly WallRandom _random;
    private readonly RandomWallOptions _options;
    private readonly string _unit;

    /// <summary>Length in the project's unit of what is a foot here: metric walls are drawn at 0.3 m to the foot, so that figures stay round.</summary>
    private readonly double _foot;

    private RandomWall(ulong seed, RandomWallOptions options)
    {
        _random = new WallRandom(seed);
        _options = options;
        _unit = options.Plain ? "ft" : _random.Chance(0.6) ? "ft" : _random.Of("us-ft", "m", "m");
        _foot = _unit == "m" ? 0.3 : 1;
    }

    /// <summary>The text of a project file.</summary>
    public static string Yaml(ulong seed, RandomWallOptions? options = null) => ScenarioYaml.Print(Scenario(seed, options));

    public static WallScenario Scenario(ulong seed, RandomWallOptions? options = null) =>
        new RandomWall(seed, options ?? new RandomWallOptions()).Make($"Random wall {seed}");

    private double L(double feet) => Math.Round(feet * _foot, 6);

    private WallScenario Make(string title)
    {
        int kind = _options.Plain ? 0 : _random.Of(0, 0, 0, 0, 1, 2, 3);
        double length = Math.Clamp(_options.Nails / 5.5 * 3.7, 25, double.MaxValue) / (kind == 0 ? 1 : 2);
        int side = _random.Of(1, -1);
        double station = L(100 * _random.Whole(0, 200) + _random.Of(0, 0, 25, 37.5));
        double scale = _random.Chance(0.3) ? _random.Between(1e6, 9.9e6) : _random.Between(2000, 20000);
        double northing = Math.Round(scale, 3), easting = Math.Round(scale * _random.Between(0.3, 1), 3);
        double azimuth = _random.Of(0, 90, 180, 270, _random.Between(0, 360, 0.25));
        var lines = new List<ScenarioLine>();
        var walls = new List<ScenarioWall>();
        bool straight = kind == 1;
        lines.Add(new ScenarioLine("WL-1", station, northing, easting, azimuth, Elements((kind == 2 ? 2.2 : 1) * length + 12, side, straight)));
        double lead = L(_random.Of(0, 0, 4, 10)), end = lines[0].End;
        if (kind == 2)
        {
            double middle = AwayFromCorners(lines[0], Math.Round(station + (end - station) / 2, 0));
            walls.Add(Wall("Wall 1", lines[0], side, station + lead, middle));
            walls.Add(Wall("Wall 2", lines[0], side, AwayFromCorners(lines[0], middle + L(_random.Of(0, 0, 12))), end));
        }
        else
        {
            walls.Add(Wall("Wall 1", lines[0], side, station + lead, end));
        }
        if (kind is 1 or 3)
        {
            // Back to back with the first wall, or a wall of its own elsewhere.
            double away = kind == 1 ? L(_random.Between(18, 60, 0.5)) * side : L(400) * side, turn = azimuth * Math.PI / 180;
            int secondSide = kind == 1 ? -side : _random.Of(side, -side);
            var second = new ScenarioLine(
                "WL-2", station + L(1000), Math.Round(northing - away * Math.Sin(turn), 3), Math.Round(easting + away * Math.Cos(turn), 3), azimuth,
                Elements(length, secondSide, straight));
            lines.Add(second);
            walls.Add(Wall("Wall 2", second, secondSide, second.Station, second.End));
        }
        var obstructions = new RandomObstructions(_random, _foot, _options);
        return new WallScenario
        {
            Title = title,
            Unit = _unit,
            Lines = lines,
            Walls = walls,
            Obstructions = walls.SelectMany(w => obstructions.Beside(w, lines.First(l => l.Name == w.Line))).ToList(),
            Rules = _options.Plain ? [] : Rules(),
        };
    }

    /// <summary>A wall's end that leaves no leg too short for a panel break.</summary>
    private double AwayFromCorners(ScenarioLine line, double station)
    {
        double least = L(6.5);
        foreach (double corner in line.Corners.Select(c => c.Station))
        {
            if (Math.Abs(station - corner) < least)
                return Math.Round(corner + (station < corner ? -least : least), 6);
        }
        return station;
    }

    private List<ScenarioElement> Elements(double feet, int side, bool straight)
    {
        var elements = new List<ScenarioElement>();
        double left = feet, heading = 0;
        while (left > 0)
        {
            double tangent = Math.Min(left, _random.Between(18, 70, 1));
            if (left - tangent < 18 || straight)
                tangent = left;
            elements.Add(ScenarioElement.Line(Math.Round(L(tangent), 2)));
            left -= tangent;
            if (left < 18)
                break;
            int turn = heading > 20 ? -1 : heading < -20 ? 1 : _random.Of(1, -1);
            bool outside = turn == side;
            if (_random.Chance(0.45) && Math.Abs(heading) < 75 && (!outside || _options.OutsideCorners != false))
            {
                double angle = _options.Plain ? _random.Between(20, 45, 1) : _random.Between(20, 90, 1);
                elements.Add(ScenarioElement.Corner(angle, turn));
                heading += angle * turn;
            }
            else
            {
                double radius = _random.Between(140, 600, 10), arc = Math.Min(left, _random.Between(25, 90, 1));
                elements.Add(ScenarioElement.Arc(Math.Round(L(radius), 2), Math.Round(L(arc), 2), turn));
                left -= arc;
                heading += turn * arc / radius * 180 / Math.PI;
            }
        }
        return elements;
    }

    private ScenarioWall Wall(string name, ScenarioLine line, int side, double start, double end)
    {
        var corners = line.Corners.Where(c => c.Station > start && c.Station < end).ToList();
        double steepest = corners.Select(c => c.Deflection * side).Append(0).Max();
        double faceOffset = _options.Plain ? 0 : L(_random.Of(0, 0, 0.5, 1.25, -0.75));
        bool battered = !_options.Plain && _random.Chance(0.2);
        if (_options.Satisfiable && steepest > 0 && faceOffset > 0)
            faceOffset = Math.Min(faceOffset, L(0.4));
        if (_options.Satisfiable && steepest > 0)
            battered = false;
        var profile = new RandomProfile(_random, _foot, _options);
        double panel = L(_random.Of(8, 10, 12));
        List<double> breaks = Breaks(start, end, panel, corners.Select(c => c.Station));
        bool fromGrade = corners.Count == 0 && line.Elements.Count == 1 && _random.Chance(0.3);
        profile.Draw(start, end, breaks, fromGrade);
        return new ScenarioWall
        {
            Name = name,
            Line = line.Name,
            Side = side,
            Start = start,
            End = end,
            FaceOffset = faceOffset,
            BatterAngle = battered ? _random.Of(3, 5, 8) : 0,
            BatterElevation = profile.Steps[0].Elevation,
            Top = profile.Top,
            Steps = fromGrade ? [] : profile.Steps,
            Grade = profile.Grade,
            Embedment = L(2),
            Rise = L(1.25),
            PanelWidth = panel,
            Sections = Sections(start, end, breaks, corners.Select(c => c.Station).ToList()),
        };
    }

    /// <summary>Panel breaks: from the wall's start on, again from every corner.</summary>
    private List<double> Breaks(double start, double end, double panel, IEnumerable<double> corners)
    {
        var breaks = new List<double>();
        double[] limits = [start, .. corners, end];
        // No nail can stand in a deep last panel that is narrower than two edge distances: a wall with one cannot be covered.
        double least = _options.Satisfiable ? panel / 2 : panel / 10;
        for (int i = 0; i + 1 < limits.Length; i++)
        {
            for (int k = 0; limits[i] + k * panel < limits[i + 1] - least; k++)
                breaks.Add(Math.Round(limits[i] + k * panel, 6));
        }
        // A wall shorter than half a panel is one panel.
        return breaks.Count > 0 ? breaks : [start];
    }

    private List<ScenarioSection> Sections(double start, double end, List<double> breaks, List<double> corners)
    {
        double least = L(30);
        int wanted = (int)Math.Clamp(Math.Floor((end - start) / least), 1, _random.Whole(1, 4));
        var limits = new List<double> { start };
        for (int i = 1; i < wanted; i++)
        {
            double about = start + (end - start) * i / wanted;
            double limit = corners.Count > 0 && _random.Chance(0.3) ? corners[_random.Whole(0, corners.Count - 1)]
                : _random.Chance(0.5) ? breaks.MinBy(b => Math.Abs(b - about)) : Math.Round(about + L(_random.Between(-3, 3, 0.5)), 2);
            if (limit - limits[^1] > least * 0.8 && end - limit > least * 0.8)
                limits.Add(limit);
        }
        limits.Add(end);
        var sections = new List<ScenarioSection>();
        for (int i = 0; i + 1 < limits.Count; i++)
        {
            double length = _random.Of(16, 20, 24, 30);
            sections.Add(new ScenarioSection
            {
                Name = ((char)('A' + i)).ToString(),
                Start = limits[i],
                End = limits[i + 1],
                Horizontal = L(_random.Of(3, 3.5, 3.5, 4, 5)),
                Vertical = L(_random.Of(3, 3.5, 3.5, 4, 5)),
                Rows = _random.Of("level", "level", "parallel", "top_parallel"),
                Pattern = _random.Of("square", "staggered"),
                TopRowDepth = L(_random.Of(1.25, 1.5, 2, 2.25, 2.5)),
                Inclination = _random.Of(10, 12, 15),
                Lengths = _random.Chance(0.5) ? [L(length)] : [L(length), L(length), L(length - 2), L(length - 4)],
                Hole = _unit == "m" ? _random.Of(0.1, 0.15, 0.2) : _random.Of(0.5, 0.5, 5.0 / 12, 8.0 / 12),
                Verification = _options.Plain ? 0 : _random.Of(0, 0, 1, 2),
                ProofPercent = _options.Plain ? 0 : _random.Of(0, 5),
                SpreadProof = _random.Chance(0.5),
                ShiftedCornerRows = !_options.Plain && corners.Any(c => c > limits[i] && c < limits[i + 1]) && _random.Chance(0.3),
            });
        }
        return sections;
    }

    private List<string> Rules()
    {
        if (_random.Chance(0.3))
            return [];
        var rules = new List<string>();
        string clear = _unit == "m" ? _random.Of("0.15", "0.1") : _random.Of("6 in", "0.25", "4 in");
        rules.Add($"clearance: {{obstruction: {clear}, nail: {clear}, boundary: {(_unit == "m" ? "0.3" : "1 ft")}}}");
        rules.Add($"drift: {_random.Of("0 %", "1 %", "2 %", "0.5 %")}");
        if (_random.Chance(0.3))
            rules.Add($"redirect: {{field_tolerance: {_random.Of(5, 10)}, step: {_random.Of(1, 1, 5)}, maximum: {_random.Of(20, 30)}, inclination: [5, 25], lengthen: {_random.Of("true", "false")}}}");
        return rules;
    }
}
