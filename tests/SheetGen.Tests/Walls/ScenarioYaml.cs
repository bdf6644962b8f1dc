using System.Globalization;
using System.Text;

namespace SheetGen.Tests.Walls;

/// <summary>Prints a scenario as the text of a project file.</summary>
public static class ScenarioYaml
{
    public static string Print(WallScenario scenario)
    {
        var text = new StringBuilder();
        void Add(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        double full = scenario.Unit == "m" ? 1000 : 100;
        string At(double station) => Station(station, full);

        Add($"format: 1");
        Add($"project: {{title: {scenario.Title}, number: R-1, units: {scenario.Unit}}}");
        Add($"layout_lines:");
        foreach (ScenarioLine line in scenario.Lines)
        {
            Add($"  - name: {line.Name}");
            Add($"    start: {{station: {At(line.Station)}, northing: {N(line.Northing)}, easting: {N(line.Easting)}, azimuth: {N(line.Azimuth)}}}");
            Add($"    elements:");
            foreach (ScenarioElement e in line.Elements)
            {
                string turn = e.Turn > 0 ? "right" : "left";
                if (e.Angle > 0)
                    Add($"      - corner: {{turn: {turn}, angle: {N(e.Angle)}}}");
                else if (e.Radius > 0)
                    Add($"      - arc: {{radius: {N(e.Radius)}, length: {N(e.Length)}, turn: {turn}}}");
                else
                    Add($"      - line: {N(e.Length)}");
            }
        }
        Add($"walls:");
        foreach (ScenarioWall wall in scenario.Walls)
            PrintWall(wall, Add, At);
        if (scenario.Obstructions.Count > 0)
        {
            Add($"obstructions:");
            foreach (ScenarioObstruction o in scenario.Obstructions)
                Add($"  - {{name: {o.Name}, kind: {o.Kind}, {Shape(scenario, o, At)}}}");
        }
        if (scenario.Rules.Count > 0)
        {
            Add($"rules:");
            foreach (string rule in scenario.Rules)
                Add($"  {rule}");
        }
        return text.ToString();
    }

    private static void PrintWall(ScenarioWall wall, Action<FormattableString> add, Func<double, string> at)
    {
        string List(IReadOnlyList<(double Station, double Elevation)> points) =>
            "[" + string.Join(", ", points.Select(p => $"[{at(p.Station)}, {N(p.Elevation)}]")) + "]";
        add($"  - name: {wall.Name}");
        add($"    layout_line: {wall.Line}");
        add($"    retained_side: {(wall.Side > 0 ? "right" : "left")}");
        add($"    stations: [{at(wall.Start)}, {at(wall.End)}]");
        if (wall.FaceOffset != 0)
            add($"    face_offset: {N(wall.FaceOffset)}");
        if (wall.BatterAngle != 0)
            add($"    batter: {{angle: {N(wall.BatterAngle)} deg, elevation: {N(wall.BatterElevation)}}}");
        add($"    top: {List(wall.Top)}");
        if (wall.Grade.Count > 0)
            add($"    finished_grade: {List(wall.Grade)}");
        add($"    bottom:");
        if (wall.Steps.Count > 0)
            add($"      steps: {List(wall.Steps)}");
        else
            add($"      from_grade: {{embedment: {N(wall.Embedment)}, rise: {N(wall.Rise)}}}");
        add($"    panels: {{width: {N(wall.PanelWidth)}, height: {N(wall.PanelWidth / 2)}, first_break: {at(wall.Start)}}}");
        add($"    sections:");
        foreach (ScenarioSection s in wall.Sections)
        {
            add($"      - name: {s.Name}");
            add($"        stations: [{at(s.Start)}, {at(s.End)}]");
            add($"        horizontal_spacing: {N(s.Horizontal)}");
            add($"        vertical_spacing: {N(s.Vertical)}");
            add($"        rows: {s.Rows}");
            add($"        pattern: {s.Pattern}");
            add($"        top_row_depth: {N(s.TopRowDepth)}");
            add($"        inclination: {N(s.Inclination)}");
            add($"        lengths: [{string.Join(", ", s.Lengths.Select(N))}]");
            add($"        bar: {{size: \"{s.Bar}\", grade: 75}}");
            add($"        hole: {N(s.Hole)}");
            if (s.ShiftedCornerRows)
                add($"        corner_rows: shifted");
            if (s.Verification > 0 || s.ProofPercent > 0)
            {
                string marks = s.SpreadProof ? ", proof_marks: spread" : "";
                add($"        test_nails: {{verification: {s.Verification}, proof: {N(s.ProofPercent)} %{marks}}}");
            }
        }
    }


    private static string Shape(WallScenario scenario, ScenarioObstruction o, Func<double, string> at)
    {
        string Point(ScenarioPoint p) => PointText(scenario, o, p, at);
        string Points() => "[" + string.Join(", ", o.Points.Select(Point)) + "]";
        string levels = $"bottom: {N(o.Bottom)}, top: {N(o.Top)}";
        return o.Kind switch
        {
            "shaft" or "pile" when o.Points.Count == 2 => $"axis: {Points()}, diameter: {N(o.Diameter)}",
            "shaft" or "pile" => $"at: {Point(o.Points[0])}, diameter: {N(o.Diameter)}, {levels}",
            "solid" => $"footprint: {Points()}, {levels}",
            "beam" => $"from: {Point(o.Points[0])}, to: {Point(o.Points[1])}, width: {N(o.Width)}, {levels}",
            "pipe" => $"points: {Points()}, diameter: {N(o.Diameter)}",
            "boundary" => $"points: {Points()}",
            _ => throw new ArgumentException($"unknown kind {o.Kind}", nameof(o)),
        };
    }

    private static string PointText(WallScenario scenario, ScenarioObstruction o, ScenarioPoint p, Func<double, string> at)
    {
        ScenarioWall wall = scenario.Walls.First(w => w.Name == o.Wall);
        ScenarioLine line = scenario.Lines.First(l => l.Name == wall.Line);
        string place = $"station: {at(p.Station)}, offset: {N(p.Offset)}";
        if (p.AsCoordinates && p.Station <= line.Station + line.FirstTangent)
        {
            double azimuth = line.Azimuth * Math.PI / 180, along = p.Station - line.Station, right = p.Offset * wall.Side;
            double northing = line.Northing + along * Math.Cos(azimuth) - right * Math.Sin(azimuth);
            double easting = line.Easting + along * Math.Sin(azimuth) + right * Math.Cos(azimuth);
            place = $"northing: {N(northing)}, easting: {N(easting)}";
        }
        else
        {
            if (scenario.Lines.Count > 1)
                place += $", layout_line: {line.Name}";
            if (scenario.Walls.Any(w => w.Line == line.Name && w.Side != wall.Side))
                place += $", wall: {wall.Name}";
        }
        return p.Elevation is double z ? $"{{{place}, elevation: {N(z)}}}" : $"{{{place}}}";
    }

    private static string N(double value) => Math.Round(value, 9).ToString("0.#########", CultureInfo.InvariantCulture);

    private static string Station(double station, double full)
    {
        double head = Math.Floor(station / full + 1e-12);
        double rest = Math.Round(station - head * full, 6);
        string format = full == 100 ? "00.######" : "000.######";
        return head.ToString("0", CultureInfo.InvariantCulture) + "+" + rest.ToString(format, CultureInfo.InvariantCulture);
    }
}
