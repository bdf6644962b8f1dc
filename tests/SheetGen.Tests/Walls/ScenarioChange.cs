using System.Globalization;

namespace SheetGen.Tests.Walls;

/// <summary>Turns a scenario into one that must give the same layout: reflected, shifted and rotated, reversed, or in another unit.</summary>
public static class ScenarioChange
{
    /// <summary>The plan seen in a mirror: every turn and the retained side swapped.</summary>
    public static WallScenario Reflected(this WallScenario scenario) => scenario with
    {
        Lines = [.. scenario.Lines.Select(l => l with
        {
            Easting = -l.Easting,
            Azimuth = Circle(-l.Azimuth),
            Elements = [.. l.Elements.Select(e => e with { Turn = -e.Turn })],
        })],
        Walls = [.. scenario.Walls.Select(w => w with { Side = -w.Side })],
    };

    /// <summary>The plan turned clockwise about the origin of the coordinates, then shifted.</summary>
    public static WallScenario Moved(this WallScenario scenario, double northing, double easting, double degrees)
    {
        double turn = degrees * Math.PI / 180;
        return scenario with
        {
            Lines = [.. scenario.Lines.Select(l => l with
            {
                Northing = l.Northing * Math.Cos(turn) - l.Easting * Math.Sin(turn) + northing,
                Easting = l.Northing * Math.Sin(turn) + l.Easting * Math.Cos(turn) + easting,
                Azimuth = Circle(l.Azimuth + degrees),
            })],
        };
    }

    /// <summary>The same ground with stations that grow the other way. Only for bottoms given as steps and corner rows that go on.</summary>
    public static WallScenario Reversed(this WallScenario scenario)
    {
        Dictionary<string, ScenarioLine> lines = scenario.Lines.ToDictionary(l => l.Name);
        double Turned(string line, double station) => Math.Round(lines[line].Station + lines[line].End - station, 6);
        ScenarioWall Wall(ScenarioWall w)
        {
            double At(double station) => Turned(w.Line, station);
            return w with
            {
                Side = -w.Side,
                Start = At(w.End),
                End = At(w.Start),
                Top = [.. w.Top.Reverse().Select(p => (At(p.Station), p.Elevation))],
                Grade = [.. w.Grade.Reverse().Select(p => (At(p.Station), p.Elevation))],
                Steps = [.. w.Steps.Select((p, i) => (At(i + 1 < w.Steps.Count ? w.Steps[i + 1].Station : w.End), p.Elevation)).Reverse()],
                Sections = [.. w.Sections.Reverse().Select(s => s with { Start = At(s.End), End = At(s.Start) })],
            };
        }
        string LineOf(string wall) => scenario.Walls.First(w => w.Name == wall).Line;
        return scenario with
        {
            Lines = [.. scenario.Lines.Select(Backward)],
            Walls = [.. scenario.Walls.Select(Wall)],
            Obstructions = [.. scenario.Obstructions.Select(o => o with
            {
                Points = [.. o.Points.Select(p => p with { Station = Turned(LineOf(o.Wall), p.Station), AsCoordinates = false })],
            })],
        };
    }

    /// <summary>The same wall in metres; both scenarios must give all rules with their units.</summary>
    public static WallScenario InMetres(this WallScenario scenario)
    {
        const double Foot = 0.3048;
        return scenario with
        {
            Unit = "m",
            Lines = [.. scenario.Lines.Select(l => l with
            {
                Station = l.Station * Foot,
                Northing = l.Northing * Foot,
                Easting = l.Easting * Foot,
                Elements = [.. l.Elements.Select(e => e with { Length = e.Length * Foot, Radius = e.Radius * Foot })],
            })],
            Walls = [.. scenario.Walls.Select(w => w with
            {
                Start = w.Start * Foot,
                End = w.End * Foot,
                FaceOffset = w.FaceOffset * Foot,
                BatterElevation = w.BatterElevation * Foot,
                Top = [.. w.Top.Select(p => (p.Station * Foot, p.Elevation * Foot))],
                Steps = [.. w.Steps.Select(p => (p.Station * Foot, p.Elevation * Foot))],
                Grade = [.. w.Grade.Select(p => (p.Station * Foot, p.Elevation * Foot))],
                Embedment = w.Embedment * Foot,
                Rise = w.Rise * Foot,
                PanelWidth = w.PanelWidth * Foot,
                Sections = [.. w.Sections.Select(s => s with
                {
                    Start = s.Start * Foot,
                    End = s.End * Foot,
                    Horizontal = s.Horizontal * Foot,
                    Vertical = s.Vertical * Foot,
                    TopRowDepth = s.TopRowDepth * Foot,
                    Lengths = [.. s.Lengths.Select(v => v * Foot)],
                    Hole = s.Hole * Foot,
                })],
            })],
            Obstructions = [.. scenario.Obstructions.Select(o => o with
            {
                Points = [.. o.Points.Select(p => p with { Station = p.Station * Foot, Offset = p.Offset * Foot, Elevation = p.Elevation * Foot })],
                Diameter = o.Diameter * Foot,
                Width = o.Width * Foot,
                Bottom = o.Bottom * Foot,
                Top = o.Top * Foot,
            })],
        };
    }

    /// <summary>Every rule given, in feet whatever the project's unit.</summary>
    public static IReadOnlyList<string> AllRulesInFeet(double driftPercent) =>
    [
        "clearance: {obstruction: 0.5 ft, nail: 0.5 ft, boundary: 1 ft}",
        string.Create(CultureInfo.InvariantCulture, $"drift: {driftPercent} %"),
        "redirect: {field_tolerance: 10, step: 1, maximum: 30, inclination: [5, 25], lengthen: true}",
        "shift_step: 0.25 ft",
        "top_max: 2.5 ft",
        "bottom_max: 3 ft",
        "min_gap: 2 ft",
        "corner_clear: 1 ft",
        "edge_min: 1 ft",
        "bar_projection: 0.5 ft",
        "length_increment: 1 ft",
    ];

    private static ScenarioLine Backward(ScenarioLine line)
    {
        double n = line.Northing, e = line.Easting, azimuth = line.Azimuth * Math.PI / 180;
        foreach (ScenarioElement element in line.Elements)
        {
            if (element.Angle > 0)
            {
                azimuth += element.Turn * element.Angle * Math.PI / 180;
                continue;
            }
            double bend = element.Radius > 0 ? element.Turn * element.Length / element.Radius : 0;
            double chord = bend == 0 ? element.Length : 2 * element.Radius * Math.Sin(Math.Abs(bend) / 2);
            n += chord * Math.Cos(azimuth + bend / 2);
            e += chord * Math.Sin(azimuth + bend / 2);
            azimuth += bend;
        }
        return line with
        {
            Northing = n,
            Easting = e,
            Azimuth = Circle(azimuth * 180 / Math.PI + 180),
            Elements = [.. line.Elements.Reverse().Select(x => x with { Turn = -x.Turn })],
        };
    }

    private static double Circle(double degrees) => degrees - 360 * Math.Floor(degrees / 360);
}
