using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Tests.Clearance;

/// <summary>Small walls and layouts, made by hand.</summary>
internal static class SmallProjects
{
    /// <summary>A wall of two straight legs of 60 with a corner between them (or one of 120), soil on the given side, top 120, bottom 100.</summary>
    public static Wall Wall(
        Turn side = Turn.Right, double deflection = 0, Turn turn = Turn.Right, double offset = 0, double batter = 0, string name = "Wall 1",
        Vector2D start = default, double azimuth = Math.PI / 2)
    {
        List<LayoutElement> elements = [new LayoutElement.Tangent(60)];
        if (deflection > 0)
            elements.Add(new LayoutElement.Bend(turn, deflection));
        elements.Add(new LayoutElement.Tangent(60));
        return On(LayoutLine.Build("L-" + name, 10_000, start, azimuth, elements), side, offset, batter, name);
    }

    public static Wall On(LayoutLine line, Turn side, double offset = 0, double batter = 0, string name = "Wall 1") => new()
    {
        Name = name,
        LayoutLine = line,
        RetainedSide = side,
        Start = 0,
        End = line.Length,
        FaceOffset = offset,
        Batter = batter > 0 ? new Batter(batter, 104) : null,
        Top = new Profile([new(0, 120)]),
        Bottom = new Profile([new(0, 100)]),
        BottomSteps = [new(0, 100)],
        Sections =
        [
            new Section
            {
                Name = "A",
                Start = 0,
                End = line.Length,
                HorizontalSpacing = 5,
                VerticalSpacing = 5,
                TopRowDepth = 2.5,
                Inclination = 15,
                Lengths = [24],
                Bar = BarTable.Find("#8", 75)!,
                HoleDiameter = 0.5,
                TestNails = new TestNails(0, 0.05, false, false),
            },
        ],
    };

    public static WallProject Project(IReadOnlyList<Wall> walls, params Obstruction[] obstructions) => new()
    {
        Info = new ProjectInfo("Test", "1", new Dictionary<string, string>()),
        Unit = LengthUnit.Foot,
        Origin = default,
        LayoutLines = walls.Select(w => w.LayoutLine).ToList(),
        Walls = walls,
        Obstructions = obstructions,
        Rules = Rules.Default(LengthUnit.Foot),
    };

    public static Obstruction Obstruction(string name, ObstructionKind kind, params Solid[] solids) =>
        new() { Name = name, Kind = kind, Solids = solids, Shape = [] };

    public static Nail Nail(
        WallProject project, string mark, double along, double elevation, double splay = 0, double inclination = 15, double length = 24,
        Wall? wall = null, int row = 1, NailKind kind = NailKind.Production, NailStatus status = NailStatus.Grid)
    {
        Wall on = wall ?? project.Walls[0];
        Section section = on.Sections.First(s => along <= s.End);
        return new Nail
        {
            Mark = mark,
            Wall = on,
            Section = section,
            Row = RowNumber.Grid(row),
            Column = 1,
            Kind = kind,
            Along = along,
            Station = on.StationOf(along),
            Elevation = elevation,
            Splay = splay,
            Inclination = inclination,
            Length = length,
            Status = status,
            GridStation = on.StationOf(along),
            Hole = new Face(on).HoleAt(along, elevation, splay, inclination, length, section.HoleDiameter, project.Rules.Drift),
        };
    }

    public static NailLayout Layout(params Nail[] nails) => new()
    {
        Nails = nails,
        Rows = [],
        LeftOut = [],
        Score = new LayoutScore(new(0, null), new(0, null), new(0, null)),
    };
}
