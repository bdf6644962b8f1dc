using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Tests.Quantities;

/// <summary>Walls made in code, with nails on a plain grid, so that the take-off is tested without reader and placer.</summary>
internal sealed record TestWall
{
    public LengthUnit Unit { get; init; } = LengthUnit.Foot;
    public Turn Side { get; init; } = Turn.Right;
    public IReadOnlyList<LayoutElement> Elements { get; init; } = [new LayoutElement.Tangent(100)];
    public double Start { get; init; }
    public double End { get; init; } = 100;
    public IReadOnlyList<ProfilePoint> Top { get; init; } = [new(0, 120)];
    public IReadOnlyList<ProfilePoint> Steps { get; init; } = [new(0, 100)];
    public IReadOnlyList<ProfilePoint>? Grade { get; init; }
    public double FaceOffset { get; init; }
    public Batter? Batter { get; init; }
    public Facing? Facing { get; init; } = new() { Shotcrete = 1.0 / 3, Coping = "cast in place", Kind = FacingKind.PrecastPanels, Thickness = 5.5 / 12, Gap = 0.5 };
    public Panels? Panels { get; init; }
    public IReadOnlyList<double> Breaks { get; init; } = [];
    public Drainage? Drainage { get; init; } = new(1, 10);
    public Lifts? Lifts { get; init; } = new(1.5, 4, 24);
    public IReadOnlyList<Opening> Openings { get; init; } = [];
    public IReadOnlyList<CrossSection> CrossSections { get; init; } = [];
    public double Spacing { get; init; } = 5;
    public double Depth { get; init; } = 2;
    public double Length { get; init; } = 24;
    public double Hole { get; init; } = 0.5;
    public double Inclination { get; init; } = 10;
    public IReadOnlyList<double> Limits { get; init; } = [];
    public IReadOnlyList<string> Stages { get; init; } = [];
    public Bar Bar { get; init; } = BarTable.Find("#8", 75)!;
    public Rates Rates { get; init; } = new();
    public PayLengthFrom From { get; init; }
    public DesignValues? Design { get; init; }
    public IReadOnlyList<Boring> Borings { get; init; } = [];
    public TestNails Tests { get; init; } = new(1, 0.05, false, false);

    public Wall MakeWall()
    {
        double first = Unit == LengthUnit.Metre ? 1000 : 10000;
        LayoutLine line = LayoutLine.Build("WL-1", first, new Vector2D(0, 0), Math.PI / 2, Elements);
        double[] ends = [Start, .. Limits, End];
        return new Wall
        {
            Name = "Wall 1",
            LayoutLine = line,
            RetainedSide = Side,
            Start = Start,
            End = End,
            FaceOffset = FaceOffset,
            Batter = Batter,
            Top = new Profile(Top),
            Bottom = new Profile([.. Steps.SelectMany((s, i) => i == 0 ? new[] { s } : [new ProfilePoint(s.Along, Steps[i - 1].Elevation), s])]),
            BottomSteps = Steps,
            FinishedGrade = Grade is null ? null : new Profile(Grade),
            Facing = Facing,
            Panels = Panels,
            PanelBreaks = Breaks,
            Drainage = Drainage,
            Lifts = Lifts,
            Openings = Openings,
            CrossSections = CrossSections,
            Sections =
            [
                .. Enumerable.Range(0, ends.Length - 1).Select(i => new Section
                {
                    Name = ((char)('A' + i)).ToString(),
                    Start = ends[i],
                    End = ends[i + 1],
                    HorizontalSpacing = Spacing,
                    VerticalSpacing = Spacing,
                    TopRowDepth = Depth,
                    Inclination = Inclination,
                    Lengths = [Length],
                    Bar = Bar,
                    HoleDiameter = Hole,
                    TestNails = Tests,
                    Design = Design,
                    Stage = i < Stages.Count ? Stages[i] : "",
                }),
            ],
        };
    }

    public (WallProject Project, NailLayout Layout) Make()
    {
        Wall wall = MakeWall();
        var project = new WallProject
        {
            Info = new ProjectInfo("Alder Street underpass", "D-104", new Dictionary<string, string>()),
            Unit = Unit,
            Origin = new Vector2D(5000, 2000),
            LayoutLines = [wall.LayoutLine],
            Walls = [wall],
            Rules = Rules.Default(Unit),
            Rates = Rates,
            Borings = Borings,
            PayLengthFrom = From,
            InputHash = new string('a', 64),
        };
        return (project, Grid(project, wall));
    }

    /// <summary>Level rows from the highest top of each leg of a section; columns centred; nails where the face is.</summary>
    private static NailLayout Grid(WallProject project, Wall wall)
    {
        var face = new Face(wall);
        var nails = new List<Nail>();
        var rows = new List<NailRow>();
        foreach (Section section in wall.Sections)
        {
            var inSection = new List<Nail>();
            foreach (Leg leg in face.Legs)
            {
                double from = Math.Max(section.Start, leg.Start), to = Math.Min(section.End, leg.End);
                if (to <= from)
                    continue;
                int count = Math.Max(1, (int)Math.Ceiling((to - from) / section.HorizontalSpacing - 1e-9));
                double first = (from + to) / 2 - (count - 1) * section.HorizontalSpacing / 2;
                double[] columns = [.. Enumerable.Range(0, count).Select(i => Lengths.RoundToQuantum(first + i * section.HorizontalSpacing, project.Unit))];
                double high = columns.Max(wall.Top.At), low = columns.Min(wall.Bottom.At);
                for (int row = 1; high - section.TopRowDepth - (row - 1) * section.VerticalSpacing > low + project.Rules.EdgeMin; row++)
                {
                    double level = high - section.TopRowDepth - (row - 1) * section.VerticalSpacing;
                    double[] places = [.. columns.Where(c => level <= wall.Top.At(c) - project.Rules.EdgeMin && level >= wall.Bottom.At(c) + project.Rules.EdgeMin)];
                    if (places.Length == 0)
                        continue;
                    rows.Add(new NailRow(wall, section, leg.Index, RowNumber.Grid(row), true, level, section.LengthOfRow(row), places));
                    inSection.AddRange(places.Select(p =>
                        MakeNail(project, face, section, RowNumber.Grid(row), Array.IndexOf(columns, p) + 1, p, level, NailKind.Production, leg.Index)));
                }
            }
            nails.AddRange(inSection.OrderBy(n => n.Row).ThenBy(n => n.Station));
            for (int i = 0; i < section.TestNails.Verification && inSection.Count > 1; i++)
                nails.Add(MakeNail(project, face, section, RowNumber.Grid(0), i + 1, inSection[0].Along + section.HorizontalSpacing * (i + 0.5), inSection[0].Elevation, NailKind.Verification, 0));
        }
        return new NailLayout
        {
            Nails = nails,
            Rows = rows,
            LeftOut = [],
            Score = new LayoutScore(new FoundAndBound(0, 0), new FoundAndBound(0, 0), new FoundAndBound(0, 0)),
        };
    }

    public static Nail MakeNail(
        WallProject project, Face face, Section section, RowNumber row, int column, double along, double elevation, NailKind kind, int leg) =>
        new()
        {
            Mark = FormattableString.Invariant($"{section.Name}{(leg == 0 ? "" : "L" + leg)}-{row}-{column:00}"),
            Wall = face.Wall,
            Section = section,
            Row = row,
            Column = column,
            Kind = kind,
            Along = along,
            Station = face.Wall.StationOf(along),
            Elevation = elevation,
            Splay = 0,
            Inclination = section.Inclination,
            Length = section.LengthOfRow(row.Whole),
            Status = NailStatus.Grid,
            GridStation = face.Wall.StationOf(along),
            Hole = face.HoleAt(along, elevation, 0, section.Inclination, section.LengthOfRow(row.Whole), section.HoleDiameter, 0),
        };

    /// <summary>A report without findings, a clear distance for every nail.</summary>
    public static ClearanceReport Report(NailLayout layout) => new(
        [], layout.Nails.ToDictionary(n => n.Mark, _ => new NailClearance("", double.PositiveInfinity, 90, 90)));

    public static SourceSpot Spot => new("wall.yaml", 1, 1);
}
