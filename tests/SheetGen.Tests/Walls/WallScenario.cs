namespace SheetGen.Tests.Walls;

/// <summary>What a project file says, as plain data that tests can turn, shift and print. Lengths in the project's unit, angles in degrees.</summary>
public sealed record WallScenario
{
    public required string Title { get; init; }

    public required string Unit { get; init; }

    public required IReadOnlyList<ScenarioLine> Lines { get; init; }

    public required IReadOnlyList<ScenarioWall> Walls { get; init; }

    public IReadOnlyList<ScenarioObstruction> Obstructions { get; init; } = [];

    /// <summary>Lines of the rules block, without indent.</summary>
    public IReadOnlyList<string> Rules { get; init; } = [];
}

/// <summary>A tangent, an arc or a corner. Turn is +1 to the right, -1 to the left, 0 for a tangent; a corner has no length.</summary>
public sealed record ScenarioElement(double Length, double Radius, double Angle, int Turn)
{
    public static ScenarioElement Line(double length) => new(length, 0, 0, 0);

    public static ScenarioElement Arc(double radius, double length, int turn) => new(length, radius, 0, turn);

    public static ScenarioElement Corner(double angle, int turn) => new(0, 0, angle, turn);
}

public sealed record ScenarioLine(
    string Name, double Station, double Northing, double Easting, double Azimuth, IReadOnlyList<ScenarioElement> Elements)
{
    public double End => Math.Round(Station + Elements.Sum(e => e.Length), 9);

    /// <summary>Stations and signed deflections (right positive) of the corners.</summary>
    public IReadOnlyList<(double Station, double Deflection)> Corners
    {
        get
        {
            var corners = new List<(double, double)>();
            double at = Station;
            foreach (ScenarioElement e in Elements)
            {
                if (e.Angle > 0)
                    corners.Add((at, e.Angle * e.Turn));
                at += e.Length;
            }
            return corners;
        }
    }

    /// <summary>Length of the tangent that the line starts with; 0 where it starts otherwise.</summary>
    public double FirstTangent => Elements[0].Turn == 0 ? Elements[0].Length : 0;
}

public sealed record ScenarioSection
{
    public required string Name { get; init; }
    public required double Start { get; init; }
    public required double End { get; init; }
    public required double Horizontal { get; init; }
    public required double Vertical { get; init; }
    public string Rows { get; init; } = "level";
    public string Pattern { get; init; } = "square";
    public required double TopRowDepth { get; init; }
    public double Inclination { get; init; } = 10;
    public required IReadOnlyList<double> Lengths { get; init; }
    public string Bar { get; init; } = "#8";
    public required double Hole { get; init; }
    public int Verification { get; init; }
    public double ProofPercent { get; init; }
    public bool SpreadProof { get; init; }
    public bool ShiftedCornerRows { get; init; }
}

public sealed record ScenarioWall
{
    public required string Name { get; init; }
    public required string Line { get; init; }

    /// <summary>+1 where the soil is to the right looking up-station, -1 where it is to the left.</summary>
    public required int Side { get; init; }

    public required double Start { get; init; }
    public required double End { get; init; }
    public double FaceOffset { get; init; }
    public double BatterAngle { get; init; }
    public double BatterElevation { get; init; }
    public required IReadOnlyList<(double Station, double Elevation)> Top { get; init; }

    /// <summary>Level steps; empty where the bottom is made from the finished grade.</summary>
    public required IReadOnlyList<(double Station, double Elevation)> Steps { get; init; }

    /// <summary>Finished grade; with no steps also the source of the bottom.</summary>
    public required IReadOnlyList<(double Station, double Elevation)> Grade { get; init; }

    public double Embedment { get; init; }
    public double Rise { get; init; }
    public required double PanelWidth { get; init; }
    public required IReadOnlyList<ScenarioSection> Sections { get; init; }
}

/// <summary>A point by station and offset; printed as northing and easting where it stands on the line's first tangent and asks for it.</summary>
public sealed record ScenarioPoint(double Station, double Offset, double? Elevation = null, bool AsCoordinates = false);

public sealed record ScenarioObstruction
{
    public required string Name { get; init; }
    public required string Kind { get; init; }

    /// <summary>The wall whose line and side its points count from.</summary>
    public required string Wall { get; init; }

    public IReadOnlyList<ScenarioPoint> Points { get; init; } = [];
    public double Diameter { get; init; }
    public double Width { get; init; }
    public double Bottom { get; init; }
    public double Top { get; init; }
}
