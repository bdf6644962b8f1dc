using System.Text.Json;
using SheetGen.Drawing.Elevation;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Review.Data;

/// <summary>
/// A wall as the page draws it: its developed elevation (x = sign * distance along the face, as on the sheets; z = elevation), its lines in plan and
/// space, and its face as flat pieces.
/// </summary>
internal sealed class WallData
{
    private readonly Wall _wall;
    private readonly LengthUnit _unit;
    private readonly Face _face;
    private readonly DevelopedFace _developed;

    public WallData(Wall wall, WallProject project)
    {
        _wall = wall;
        _unit = project.Unit;
        _face = new Face(wall);
        _developed = new DevelopedFace(wall);
        Sign = (wall.RetainedSide == Turn.Right ? -1 : 1) * (project.Sheets.FromBehind ? -1 : 1);
    }

    /// <summary>+1 where stations grow to the right in the elevation.</summary>
    public int Sign { get; }

    /// <summary>Where a place of the layout line lies in the elevation.</summary>
    public double X(double along) => Sign * _developed.At(along);

    public void Write(Utf8JsonWriter json, IReadOnlyList<Obstruction> obstructions, IReadOnlyList<Boring> borings)
    {
        json.WriteString("name", _wall.Name);
        json.WriteString("line", _wall.LayoutLine.Name);
        json.WriteString("side", _wall.RetainedSide == Turn.Right ? "right" : "left");
        json.WriteNumber("sign", Sign);
        WriteStationing(json);
        json.Array("ends", X(_wall.Start), Sign * _developed.Before(_wall.End));
        WriteProfile(json, "top", _wall.Top);
        WriteProfile(json, "bottom", _wall.Bottom);
        if (_wall.ExistingGround is { } ground)
            WriteProfile(json, "ground", ground);
        if (_wall.FinishedGrade is { } grade)
            WriteProfile(json, "grade", grade);
        json.List("breaks", _wall.PanelBreaks.Where(b => b > _wall.Start && b < _wall.End), b => json.Array(X(b), _wall.Bottom.At(b), _wall.Top.At(b)));
        json.List("corners", _wall.LayoutLine.Corners.Where(c => c.Along > _wall.Start && c.Along < _wall.End), c => json.Array(X(c.Along), _wall.Bottom.At(c.Along), _wall.Top.At(c.Along)));
        json.Objects("sections", _wall.Sections, s =>
        {
            json.WriteString("name", s.Name);
            json.Array("x", X(s.Start), Sign * _developed.Before(s.End));
            json.WriteString("stations", Station(s.Start) + " to " + Station(s.End));
            json.Number("h", s.HorizontalSpacing);
            json.Number("v", s.VerticalSpacing);
            json.Number("inclination", s.Inclination);
            json.WriteString("bar", s.Bar.ToString());
        });
        json.Objects("openings", _wall.Openings, o =>
        {
            json.WriteString("name", o.Name);
            json.Array("box", X(o.Start), o.Bottom, X(o.End), o.Top);
        });
        json.Objects("stations", Ticks(), along =>
        {
            json.WriteString("text", _wall.LayoutLine.Stationing.Text(along, _unit, 0));
            json.Number("x", X(along));
            json.Point("at", _face.PointAt(along, _wall.Top.At(along)));
            Vector2D tangent = _wall.LayoutLine.TangentAt(along);
            json.Array("t", tangent.N, tangent.E);
        });
        json.Objects("seen", obstructions, o => WriteSeen(json, o));
        json.Objects("borings", borings.Select(b => (b.Name, LayoutProjection.Locate(_wall.LayoutLine, b.At).Along))
            .Where(b => b.Along >= _wall.Start && b.Along <= _wall.End), b =>
        {
            json.WriteString("name", b.Name);
            json.Number("x", X(b.Along));
        });
        json.List("face", FacePanels.Of(_face), leg =>
        {
            json.WriteStartArray();
            foreach (FaceSolid panel in leg)
            {
                json.WriteStartArray();
                foreach (Vector3D corner in panel.Corners)
                    json.Point(corner);
                json.WriteEndArray();
            }
            json.WriteEndArray();
        });
        WriteSpine(json);
        WriteInSpace(json, "top3", _wall.Top);
        WriteInSpace(json, "bottom3", _wall.Bottom);
        if (_wall.ExistingGround is not null)
            WriteInSpace(json, "ground3", _wall.ExistingGround);
        if (_wall.FinishedGrade is not null)
            WriteInSpace(json, "grade3", _wall.FinishedGrade);
    }

    private string Station(double along) => _wall.StationText(along, _unit);

    /// <summary>Where printed stations jump: internal station from which on so much is added to print it. Results count in internal stations.</summary>
    private void WriteStationing(Utf8JsonWriter json)
    {
        Stationing stationing = _wall.LayoutLine.Stationing;
        json.List("jumps", stationing.Equations, e => json.Array(e.Along + stationing.StartStation, e.Ahead.Number - e.Along - stationing.StartStation));
    }

    /// <summary>Full steps of station inside the wall.</summary>
    private IEnumerable<double> Ticks()
    {
        double length = _wall.End - _wall.Start;
        double step = new[] { 5.0, 10, 20, 25, 50, 100, 200, 500, 1000 }.FirstOrDefault(s => length / s <= 16, 2000);
        return _wall.LayoutLine.Stationing.RoundPlaces(_wall.Start, _wall.End, step).Prepend(_wall.Start).Distinct();
    }

    private void WriteProfile(Utf8JsonWriter json, string name, Profile profile)
    {
        double[] bends = [_wall.Start, .. _developed.Bends(_wall.Start, _wall.End).Order(), _wall.End];
        json.WriteStartArray(name);
        for (int i = 0; i + 1 < bends.Length; i++)
        {
            foreach (ProfilePoint p in profile.Between(bends[i], bends[i + 1]))
                json.Array(Sign * (p.Along < bends[i + 1] ? _developed.At(p.Along) : _developed.Before(p.Along)), p.Elevation);
        }
        json.WriteEndArray();
    }

    /// <summary>Places along the layout line with their station, plan point and unit tangent, straight in between: what a clip plane travels along.</summary>
    private void WriteSpine(Utf8JsonWriter json)
    {
        LayoutLine line = _wall.LayoutLine;
        double[] places = Bends(_wall.Start, _wall.End);
        json.List("spine", Enumerable.Range(0, 2 * (places.Length - 1)), k =>
        {
            double from = places[k / 2], to = places[k / 2 + 1], at = k % 2 == 0 ? from : to;
            Vector2D point = line.PointAt(at), tangent = Vector2D.FromAzimuth(k % 2 == 0 ? line.AzimuthAt(at) : line.AzimuthBefore(at));
            json.WriteStartArray();
            json.WriteStringValue(Station(at));
            foreach (double value in new[] { at - _wall.Start, point.N, point.E, tangent.N, tangent.E })
                json.Number(value);
            json.WriteEndArray();
        });
    }

    /// <summary>Ends of straight pieces between two places, arcs cut into short ones, corners among them.</summary>
    private double[] Bends(double start, double end)
    {
        const int most = 48;
        return [.. new[] { start, end }.Concat(_wall.LayoutLine.Pieces.Select(p => p.Start))
            .Concat(_wall.LayoutLine.Pieces.Where(p => p.Curvature != 0).SelectMany(p => Enumerable.Range(1, most - 1).Select(i => p.Start + (p.End - p.Start) * i / most)))
            .Where(a => a >= start && a <= end).Distinct().Order()];
    }

    /// <summary>A profile on the face, in short straight pieces on arcs; at a corner both legs end at their mitre.</summary>
    private void WriteInSpace(Utf8JsonWriter json, string name, Profile profile)
    {
        json.WriteStartArray(name);
        foreach (Leg leg in _face.Legs)
        {
            json.WriteStartArray();
            double[] bends = Bends(leg.Start, leg.End);
            for (int i = 0; i + 1 < bends.Length; i++)
            {
                foreach (ProfilePoint p in profile.Between(bends[i], bends[i + 1]))
                {
                    double held = Math.Clamp(p.Along, Math.Min(_face.StartOf(leg, p.Elevation), leg.End - 1e-6), Math.Max(leg.Start, Math.Min(_face.EndOf(leg, p.Elevation), leg.End - 1e-6)));
                    json.Point(_face.PointAt(held, p.Elevation));
                }
            }
            json.WriteEndArray();
        }
        json.WriteEndArray();
    }

    /// <summary>An obstruction seen through the wall: the hull of each convex piece with every point at its own station; boundaries do not show.</summary>
    private void WriteSeen(Utf8JsonWriter json, Obstruction obstruction)
    {
        json.WriteString("name", obstruction.Name);
        json.List("hulls", obstruction.Solids.Where(s => !s.IsSurface), solid =>
        {
            json.WriteStartArray();
            foreach ((double x, double z) in Hull([.. Points(solid).Select(Seen).OfType<(double, double)>()]))
                json.Array(x, z);
            json.WriteEndArray();
        });
    }

    private (double X, double Z)? Seen(Vector3D point)
    {
        LinePlace place = LayoutProjection.Locate(_wall.LayoutLine, point.Plan);
        return place.Right * _wall.Side < -1 ? null : (X(place.Along), point.Z);
    }

    private static IEnumerable<Vector3D> Points(Solid solid)
    {
        switch (solid)
        {
            case PrismSolid prism:
                return prism.Footprint.SelectMany(p => new[] { p.At(prism.Bottom), p.At(prism.Top) });
            case CylinderSolid c:
                return Around(c.End1, c.End2, c.Radius);
            case CapsuleSolid c:
                return Around(c.End1, c.End2, c.Radius);
            default:
                return [];
        }
    }

    private static IEnumerable<Vector3D> Around(Vector3D a, Vector3D b, double radius)
    {
        const int sides = 16;
        Vector3D axis = (b - a).Length > 0 ? (b - a) * (1 / (b - a).Length) : new Vector3D(0, 0, 1);
        Vector3D u = axis.Cross(Math.Abs(axis.Z) < 0.9 ? new Vector3D(0, 0, 1) : new Vector3D(1, 0, 0));
        u *= 1 / u.Length;
        Vector3D v = axis.Cross(u);
        for (int i = 0; i < sides; i++)
        {
            double angle = 2 * Math.PI * i / sides;
            Vector3D out1 = (u * Math.Cos(angle) + v * Math.Sin(angle)) * radius;
            yield return a + out1;
            yield return b + out1;
        }
    }

    /// <summary>Convex hull by Andrew's monotone chain (from memory).</summary>
    private static List<(double X, double Z)> Hull(List<(double X, double Z)> points)
    {
        points = [.. points.Distinct().Order()];
        if (points.Count < 3)
            return points;
        var hull = new List<(double X, double Z)>();
        foreach (IEnumerable<(double X, double Z)> way in new[] { points, Enumerable.Reverse(points) })
        {
            int start = hull.Count;
            foreach ((double X, double Z) p in way)
            {
                while (hull.Count >= start + 2 && Turn(hull[^2], hull[^1], p) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }
            hull.RemoveAt(hull.Count - 1);
        }
        return hull;

        static double Turn((double X, double Z) a, (double X, double Z) b, (double X, double Z) c) => (b.X - a.X) * (c.Z - a.Z) - (b.Z - a.Z) * (c.X - a.X);
    }
}
