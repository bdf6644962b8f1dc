using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Review.Data;

/// <summary>The nails, a row each, with the two points of the least clear distance and prints that tell whether anything changed.</summary>
internal sealed class NailData
{
    /// <summary>What a row holds, in order.</summary>
    public static readonly IReadOnlyList<string> Columns =
    [
        "mark", "wall", "leg", "section", "row", "kind", "status", "station", "stationText", "x", "elevation", "head", "tip", "splay", "inclination", "length",
        "radius", "tipRadius", "bar", "nearest", "clear", "points", "marginObstruction", "marginNail", "moved", "added", "gridText", "gridLength", "own", "around",
    ];

    private readonly WallProject _project;
    private readonly IReadOnlyList<Nail> _nails;
    private readonly ClearanceScene _scene;
    private readonly Dictionary<string, int> _byMark = [];
    private readonly ILookup<string, int> _obstacles;
    private readonly Dictionary<string, Face> _faces;
    private readonly Dictionary<(string, string, RowNumber), double> _rowLengths = [];
    private readonly List<int> _found = [];

    public NailData(WallProject project, NailLayout layout)
    {
        _project = project;
        _nails = layout.Nails;
        _scene = new ClearanceScene(project, [.. layout.Nails.Select(n => n.Hole)]);
        for (int i = 0; i < _nails.Count; i++)
            _byMark[_nails[i].Mark] = i;
        _faces = project.Walls.ToDictionary(w => w.Name, w => new Face(w));
        foreach (NailRow row in layout.Rows)
            _rowLengths[(row.Wall.Name, row.Section.Name, row.Number)] = row.Length;
        _obstacles = Enumerable.Range(0, _scene.Obstacles.Count).ToLookup(i => _scene.Obstacles[i].Name);
    }

    /// <summary>What lies within this clear distance of a nail are its surroundings: 3 ft or 1 m.</summary>
    public static double Reach(LengthUnit unit) => Lengths.IsFoot(unit) ? 3 : 1;

    public void Write(Utf8JsonWriter json, ClearanceReport report, IReadOnlyDictionary<string, WallData> walls)
    {
        json.List("columns", Columns, json.WriteStringValue);
        json.List("nails", Enumerable.Range(0, _nails.Count), i => Write(json, i, report, walls));
    }

    private void Write(Utf8JsonWriter json, int index, ClearanceReport report, IReadOnlyDictionary<string, WallData> walls)
    {
        Nail nail = _nails[index];
        NailClearance? clear = report.Nails.GetValueOrDefault(nail.Mark);
        json.WriteStartArray();
        json.WriteStringValue(nail.Mark);
        json.WriteStringValue(nail.Wall.Name);
        json.WriteNumberValue(_faces[nail.Wall.Name].LegAt(nail.Along).Index);
        json.WriteStringValue(nail.Section.Name);
        json.WriteStringValue(nail.Row.Name);
        json.WriteStringValue(nail.Kind.ToString().ToLowerInvariant());
        json.WriteStringValue(nail.Status.ToString().ToLowerInvariant());
        json.Number(nail.Station);
        json.WriteStringValue(nail.Wall.TextOf(nail.Station, _project.Unit));
        json.Number(walls[nail.Wall.Name].X(nail.Along));
        json.Number(nail.Elevation);
        json.Point(nail.Hole.Head);
        json.Point(nail.Hole.Tip);
        json.Number(nail.Splay);
        json.Number(nail.Inclination);
        json.Number(nail.Length);
        json.Number(nail.Hole.Radius);
        json.Number(nail.Hole.RadiusAt(nail.Length));
        json.WriteStringValue(nail.Bar.ToString());
        json.WriteStringValue(clear?.Nearest ?? "");
        json.NumberOrNull(clear?.LeastClear);
        WritePoints(json, index, clear);
        json.NumberOrNull(clear?.MarginObstruction);
        json.NumberOrNull(clear?.MarginNail);
        json.WriteBooleanValue(nail.IsMoved);
        json.WriteBooleanValue(nail.IsAdded);
        json.WriteStringValue(nail.Wall.TextOf(nail.GridStation, _project.Unit));
        json.Number(_rowLengths.GetValueOrDefault((nail.Wall.Name, nail.Section.Name, nail.Row), nail.Length));
        json.WriteStringValue(Print(Own(nail)));
        json.WriteStringValue(Print(Around(index)));
        json.WriteEndArray();
    }

    private void WritePoints(Utf8JsonWriter json, int index, NailClearance? clear)
    {
        if (clear is null || clear.Nearest.Length == 0)
        {
            json.WriteNullValue();
            return;
        }
        Hole hole = _scene.Holes[index];
        Nearest near = _byMark.TryGetValue(clear.Nearest, out int other) && other != index
            ? HoleDistance.Between(hole, _scene.Holes[other])
            : default;
        bool isNail = _byMark.ContainsKey(clear.Nearest);
        // A nail and an obstruction may bear one name: the one whose distance is the checker's is meant.
        if (!isNail || Math.Abs(near.Clear - clear.LeastClear) > 1e-6)
        {
            foreach (int i in _obstacles[clear.Nearest])
            {
                Nearest to = HoleDistance.ToSolid(hole, _scene.Obstacles[i].Solid);
                if (near == default || Math.Abs(to.Clear - clear.LeastClear) < Math.Abs(near.Clear - clear.LeastClear))
                    near = to;
            }
        }
        if (near == default)
        {
            json.WriteNullValue();
            return;
        }
        json.WriteStartArray();
        json.Point(near.OnFirst);
        json.Point(near.OnSecond);
        json.WriteEndArray();
    }

    private string Own(Nail nail) => FormattableString.Invariant(
        $"{nail.Station}|{nail.Elevation}|{nail.Splay}|{nail.Inclination}|{nail.Length}|{nail.HoleDiameter}|{nail.Bar}|{nail.Kind}|{nail.Status}|{Place(nail.Hole.Head)}|{Place(nail.Hole.Tip)}");

    /// <summary>Everything within reach, at true coordinates, so that another origin changes nothing.</summary>
    private string Around(int index)
    {
        Hole hole = _scene.Holes[index];
        double reach = Reach(_project.Unit);
        var parts = new List<string>();
        _scene.HolesCloserThan(hole, reach, _found);
        foreach (int i in _found)
        {
            if (i != index)
                parts.Add($"{_nails[i].Mark}|{Place(_scene.Holes[i].Head)}|{Place(_scene.Holes[i].Tip)}|{Figure(_scene.Holes[i].Radius)}");
        }
        _scene.Near(hole, reach, _found);
        foreach (int i in _found)
        {
            Obstacle obstacle = _scene.Obstacles[i];
            if (obstacle.Obstruction is not null && HoleDistance.CloserThan(hole, obstacle.Solid, reach))
                parts.Add($"{obstacle.Name}|{Shape(obstacle.Solid)}|{Figure(obstacle.Required)}");
        }
        parts.Sort(StringComparer.Ordinal);
        return string.Join('\n', parts);
    }

    private string Shape(Solid solid) => solid switch
    {
        CylinderSolid c => $"cylinder {Place(c.End1)} {Place(c.End2)} {Figure(c.Radius)}",
        CapsuleSolid c => $"capsule {Place(c.End1)} {Place(c.End2)} {Figure(c.Radius)}",
        PrismSolid p => $"prism {string.Join(' ', p.Footprint.Select(f => Place(f.At(0))))} {Figure(p.Bottom)} {Figure(p.Top)}",
        BoundarySolid b => $"plane {Place(b.End1.At(0))} {Place(b.End2.At(0))}",
        _ => throw new InvalidOperationException("no print for a " + solid.GetType().Name),
    };

    private string Place(Vector3D point) => $"{Figure(point.N + _project.Origin.N)},{Figure(point.E + _project.Origin.E)},{Figure(point.Z)}";

    private static string Figure(double value) => (Math.Round(value, 3) + 0.0).ToString("0.000", CultureInfo.InvariantCulture);

    private static string Print(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 6));
}
