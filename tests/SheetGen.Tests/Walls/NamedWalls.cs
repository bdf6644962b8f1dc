namespace SheetGen.Tests.Walls;

/// <summary>Small walls that each ask one hard question, by name.</summary>
public static class NamedWalls
{
    public static IReadOnlyList<(string Name, WallScenario Scenario)> All { get; } =
    [
        ("one-nail", Straight(3, 4.5)),
        ("one-column", Straight(3.5, 20)),
        ("two-columns", Straight(6, 20)),
        ("under-nail-height", Straight(20, 1.99)),
        ("over-nail-height", Straight(20, 2.05)),
        ("tapers-to-nothing", Shaped([(0, 112), (40, 100.5)], [(0, 100)], 40)),
        ("step-at-section-limit", Shaped([(0, 118), (40, 118)], [(0, 100), (20, 102.5)], 40, 20)),
        ("corner-at-section-limit", Bent(20, 45, 20)),
        ("outside-corner-15", Bent(20, 15, null)),
        ("outside-corner-90", Bent(20, 90, null)),
        ("outside-corner-90-offset", Bent(20, 90, null, faceOffset: 0.5)),
        ("inside-corner-90", Bent(20, -90, null)),
        ("inside-corner-30-offset", Bent(20, -30, null, faceOffset: 0.5)),
        ("outside-corner-batter", Bent(20, 60, null, batter: 5)),
        ("steep-top", Shaped([(0, 106), (10, 106), (16, 118), (40, 118)], [(0, 98)], 40)),
        ("steep-top-parallel", Shaped([(0, 106), (10, 106), (16, 118), (40, 118)], [(0, 98)], 40, rows: "parallel")),
        ("top-steps", Shaped([(0, 112), (15, 112), (15, 115), (30, 115), (30, 111), (45, 111)], [(0, 100), (20, 101)], 45)),
        ("back-to-back", BackToBack()),
    ];

    private static ScenarioSection Section(string name, double start, double end, string rows = "level") => new()
    {
        Name = name,
        Start = start,
        End = end,
        Horizontal = 3.5,
        Vertical = 3.5,
        Rows = rows,
        TopRowDepth = 2,
        Lengths = [20],
        Hole = 0.5,
    };

    private static WallScenario Straight(double length, double height) => Shaped([(0, 100 + height), (length, 100 + height)], [(0, 100)], length);

    private static WallScenario Shaped(
        IReadOnlyList<(double Station, double Elevation)> top, IReadOnlyList<(double Station, double Elevation)> steps, double length,
        double? limit = null, string rows = "level")
    {
        var line = new ScenarioLine("WL-1", 0, 5000, 2000, 90, [ScenarioElement.Line(length)]);
        return Of([line], [OneWall("Wall 1", line, 1, top, steps, limit, rows)]);
    }

    private static ScenarioWall OneWall(
        string name, ScenarioLine line, int side, IReadOnlyList<(double Station, double Elevation)> top,
        IReadOnlyList<(double Station, double Elevation)> steps, double? limit, string rows = "level") => new()
        {
            Name = name,
            Line = line.Name,
            Side = side,
            Start = line.Station,
            End = line.End,
            Top = top,
            Steps = steps,
            Grade = [],
            PanelWidth = 10,
            Sections = limit is double at
                ? [Section("A", line.Station, at, rows), Section("B", at, line.End, rows)]
                : [Section("A", line.Station, line.End, rows)],
        };

    private static WallScenario Bent(double leg, double deflection, double? limit, double faceOffset = 0, double batter = 0)
    {
        var line = new ScenarioLine("WL-1", 0, 5000, 2000, 30,
            [ScenarioElement.Line(leg), ScenarioElement.Corner(Math.Abs(deflection), Math.Sign(deflection)), ScenarioElement.Line(leg)]);
        ScenarioWall wall = OneWall("Wall 1", line, 1, [(0, 112), (2 * leg, 112)], [(0, 100)], limit);
        return Of([line], [wall with { FaceOffset = faceOffset, BatterAngle = batter, BatterElevation = 100 }]);
    }

    private static WallScenario BackToBack()
    {
        var one = new ScenarioLine("WL-1", 0, 5000, 2000, 0, [ScenarioElement.Line(30)]);
        var two = new ScenarioLine("WL-2", 1000, 5000, 2030, 0, [ScenarioElement.Line(30)]);
        return Of([one, two],
        [
            OneWall("Wall 1", one, 1, [(0, 112), (30, 112)], [(0, 100)], null),
            OneWall("Wall 2", two, -1, [(1000, 113), (1030, 113)], [(1000, 101)], null),
        ]);
    }

    private static WallScenario Of(IReadOnlyList<ScenarioLine> lines, IReadOnlyList<ScenarioWall> walls) =>
        new() { Title = "Named wall", Unit = "ft", Lines = lines, Walls = walls };
}
