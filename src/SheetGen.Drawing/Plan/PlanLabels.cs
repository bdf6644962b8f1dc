using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Plan;

/// <summary>Writes the labels of a plan view, on paper or at the scale of a drawing of its own.</summary>
/// <param name="toPaper">From plan points to the paper of the labels.</param>
public sealed class PlanLabels(DrawingContext context, ViewLabels labels, Func<Vector2D, Point2> toPaper)
{
    private readonly Printed _print = context.Print;

    private Box Frame => labels.Placer.Frame;

    public static string NameOf(Obstruction o, Printed print)
    {
        string size = o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile or ObstructionKind.Pipe ? " " + print.Small(o.Diameter) + " DIA" : "";
        string state = o.Facts.TryGetValue("state", out string? s) ? " (" + s.ToUpperInvariant() + ")" : "";
        return o.Name.ToUpperInvariant() + size + state;
    }

    /// <summary>Tells the placer about lines of the plan, in paper coordinates.</summary>
    public void Crowd(IEnumerable<Primitive> paper)
    {
        foreach (Primitive primitive in paper)
        {
            bool isNail = primitive.Layer is LayerRole.NailTrace or LayerRole.NailNoted;
            foreach ((Point2 a, Point2 b) in Segments(primitive))
            {
                if (Math.Max(a.X, b.X) >= Frame.Left && Math.Min(a.X, b.X) <= Frame.Right)
                    labels.Placer.Crowd.Add(a, b, isNail ? LineKind.NoText : LineKind.Soft);
            }
        }
    }

    private static IEnumerable<(Point2, Point2)> Segments(Primitive primitive)
    {
        switch (primitive)
        {
            case Line l:
                yield return (l.From, l.To);
                break;
            case Polyline p:
                for (int i = 0; i + 1 < p.Vertices.Count + (p.Closed ? 1 : 0); i++)
                    yield return (p.Vertices[i].Point, p.Vertices[(i + 1) % p.Vertices.Count].Point);
                break;
            case Circle c:
                for (int i = 0; i < 8; i++)
                    yield return (c.Center + new Point2(c.Radius, 0).Turned(i * Math.PI / 4), c.Center + new Point2(c.Radius, 0).Turned((i + 1) * Math.PI / 4));
                break;
            default:
                break;
        }
    }

    public void Stations(Wall wall, PlanModel plan)
    {
        foreach (double at in plan.StationTicks(wall))
            Label([context.Print.ShortStation(wall.StationOf(at))], wall, at, null);
        foreach ((double at, string word) in new[] { (wall.Start, "BEGIN"), (wall.End, "END") })
            Label([$"{word} {wall.Name.ToUpperInvariant()}", "STA " + _print.Station(wall.StationOf(at))], wall, at, null);
    }

    /// <summary>Curve data and angle points.</summary>
    public void Alignment(LayoutLine line)
    {
        foreach (LayoutPiece piece in line.Pieces.Where(p => p.Curvature != 0))
        {
            double middle = (piece.Start + piece.End) / 2;
            double delta = Angles.ToDegrees(Math.Abs(piece.Curvature) * piece.Length);
            double radius = 1 / Math.Abs(piece.Curvature);
            string[] words =
            [
                $"CURVE {(piece.Curvature > 0 ? "RIGHT" : "LEFT")}, R {_print.Distance(radius)}",
                $"DELTA {_print.Sexagesimal(delta)}, L {_print.Distance(piece.Length)}",
                $"T {_print.Distance(radius * Math.Tan(Angles.ToRadians(delta / 2)))}",
                $"PC {_print.Station(line.StationOf(piece.Start))}, PT {_print.Station(line.StationOf(piece.End))}",
            ];
            Put(words, toPaper(line.PointAt(middle)), null, null);
        }
        foreach (Corner corner in line.Corners)
        {
            double degrees = Angles.ToDegrees(Math.Abs(corner.Deflection));
            Put([$"ANGLE POINT {_print.Sexagesimal(degrees)} {(corner.Deflection > 0 ? "RIGHT" : "LEFT")}", "STA " + _print.Station(line.StationOf(corner.Along))],
                toPaper(line.PointAt(corner.Along)), null, null);
        }
        LayoutPiece first = line.Pieces[0];
        Put([$"LAYOUT LINE {line.Name.ToUpperInvariant()}", _print.Bearing(first.Azimuth)], toPaper(line.PointAt(Math.Min(first.Length / 2, line.Length))), null, null);
    }

    public void Obstructions()
    {
        foreach (Obstruction o in context.Project.Obstructions)
        {
            Point2[] path = [.. o.Shape.Select(p => toPaper(p.Plan))];
            if (o.Kind is ObstructionKind.Pipe or ObstructionKind.Boundary)
            {
                Point2? inside = SampleInside(path);
                if (inside is Point2 at)
                    Put([NameOf(o, _print)], at, null, o.Name);
            }
            else if (Box.Around(path).Within(Frame) is Box seen)
            {
                Put([NameOf(o, _print)], seen.Center, null, o.Name);
            }
        }
        foreach (Boring b in context.Project.Borings.Where(b => Frame.Contains(toPaper(b.At))))
            Put(["BORING " + b.Name.ToUpperInvariant()], toPaper(b.At), null, null);
    }

    /// <summary>A point of a path within the frame, toward its middle.</summary>
    private Point2? SampleInside(Point2[] path)
    {
        var inside = new List<Point2>();
        for (int i = 0; i + 1 < path.Length; i++)
        {
            for (int k = 0; k <= 20; k++)
            {
                Point2 p = path[i] + (path[i + 1] - path[i]) * (k / 20.0);
                if (Frame.Contains(p))
                    inside.Add(p);
            }
        }
        return inside.Count == 0 ? null : inside[inside.Count * 2 / 3];
    }

    private void Label(string[] words, Wall wall, double along, double? toward)
    {
        Vector2D away = new Face(wall).NormalAt(along);
        Point2 at = toPaper(wall.LayoutLine.PointAt(along));
        Point2 front = toPaper(wall.LayoutLine.PointAt(along) - away) - at;
        Put(words, at, toward ?? Math.Atan2(front.Y, front.X), null);
    }

    private void Put(string[] words, Point2 at, double? toward, string? obstruction)
    {
        if (!Frame.Contains(at))
            return;
        IReadOnlyList<IReadOnlyList<string>> variants = words.Length > 1 ? [words, [string.Join(" ", words)]] : [words];
        labels.Label(new LabelRequest(variants, TextRole.Label, at, 0.6) { Toward = toward, Obstruction = obstruction, LeaderFrom = 2.6 });
    }
}
