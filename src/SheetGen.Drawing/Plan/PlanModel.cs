using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Plan;

/// <summary>The plan: x easting, y northing, moved by an origin; without its labels.</summary>
public sealed class PlanModel(DrawingContext context, Point2 origin)
{
    /// <summary>Pieces in which a boundary is looked at, from point to point.</summary>
    private const int BoundarySteps = 24;

    private readonly Dictionary<Wall, PointBeside[]> _beside = new(ReferenceEqualityComparer.Instance);

    /// <summary>A point of an obstruction and where it lies beside a wall's layout line.</summary>
    /// <param name="IsOfBoundary">True for one on the way along a right of way or an easement.</param>
    internal readonly record struct PointBeside(Point2 Point, LinePlace Place, bool IsOfBoundary);

    /// <summary>The points of all obstructions beside a wall; found once, since every view of the plan asks for them.</summary>
    internal PointBeside[] PointsBeside(Wall wall)
    {
        if (_beside.TryGetValue(wall, out PointBeside[]? known))
            return known;
        var points = new List<PointBeside>();
        foreach (Obstruction o in context.Project.Obstructions)
        {
            if (o.Kind == ObstructionKind.Boundary)
            {
                for (int i = 0; i + 1 < o.Shape.Count; i++)
                {
                    for (int k = 0; k <= BoundarySteps; k++)
                        Add(o.Shape[i].Plan + (o.Shape[i + 1].Plan - o.Shape[i].Plan) * ((double)k / BoundarySteps), true);
                }
            }
            foreach (Vector3D point in o.Shape)
                Add(point.Plan, false);
        }
        return _beside[wall] = [.. points];

        void Add(Vector2D point, bool isOfBoundary) => points.Add(new(At(point), LayoutProjection.Locate(wall.LayoutLine, point), isOfBoundary));
    }

    public Point2 At(Vector2D point) => new(point.E + origin.X, point.N + origin.Y);

    public IEnumerable<Primitive> Draw()
    {
        foreach (LayoutLine line in context.Project.LayoutLines)
        {
            yield return LinePath(LayerRole.LayoutLine, line, 0, line.Length);
            foreach (double at in line.Pieces.Where(p => p.IsCurved).SelectMany(p => new[] { p.Start, p.End }).Concat(line.Corners.Select(c => c.Along)).Distinct())
                yield return Tick(line, at, 2);
        }
        foreach (Wall wall in context.Project.Walls)
        {
            var face = new Face(wall);
            foreach (Leg leg in face.Legs)
                yield return Polyline.Of(LayerRole.Face, FacePoints(face, leg).Select(At));
            foreach (double at in StationTicks(wall))
                yield return Tick(wall.LayoutLine, at, 1);
            foreach (NailLimit limit in NailLimits(wall))
                yield return Polyline.Of(LayerRole.NailLimit, limit.Line.Select(At));
        }
        foreach (Obstruction o in context.Project.Obstructions)
        {
            foreach (Primitive p in Outline(o))
                yield return p with { Obstruction = o.Name };
        }
        foreach (Boring b in context.Project.Borings)
        {
            double r = context.Project.Unit == LengthUnit.Metre ? 0.3 : 1;
            yield return new Circle(LayerRole.Boring, At(b.At), r);
            yield return new Line(LayerRole.Boring, At(b.At) - new Point2(r, 0), At(b.At) + new Point2(r, 0));
            yield return new Line(LayerRole.Boring, At(b.At) - new Point2(0, r), At(b.At) + new Point2(0, r));
        }
        foreach (var nail in context.Layout.Nails)
        {
            yield return new Line(
                nail.Status == Model.Results.NailStatus.Noted ? LayerRole.NailNoted : LayerRole.NailTrace,
                At(nail.Hole.Head.Plan), At(nail.Hole.Tip.Plan))
            { Nail = nail.Mark };
        }
    }

    /// <summary>Stations marked in plan: full steps inside the wall.</summary>
    public IEnumerable<double> StationTicks(Wall wall)
    {
        double step = context.Project.Unit == LengthUnit.Metre ? 10 : 25;
        return wall.LayoutLine.Stationing.RoundPlaces(wall.Start, wall.End, step);
    }

    /// <summary>How far nails reach behind the face: a line for each design section on each leg, parallel to the layout line.</summary>
    public IEnumerable<NailLimit> NailLimits(Wall wall)
    {
        var face = new Face(wall);
        foreach (Leg leg in face.Legs)
        {
            foreach (Section section in wall.Sections)
            {
                double from = Math.Max(leg.Start, section.Start), to = Math.Min(leg.End, section.End);
                Nail[] nails = [.. context.NailsOf(wall).Where(n => n.Section == section && leg.Has(n.Along))];
                if (to - from < 1e-6 || nails.Length == 0)
                    continue;
                double Behind(Nail n) => (n.Hole.Tip - n.Hole.Head).Plan.Dot(face.NormalAt(n.Along));
                double offset = nails.Max(n => face.OffsetAt(n.Elevation) + Behind(n));
                int steps = Math.Clamp((int)Math.Ceiling((to - from) / (context.Project.Unit == LengthUnit.Metre ? 1.5 : 5)), 1, 200);
                double[] places = [.. Enumerable.Range(0, steps + 1).Select(i => Math.Min(from + (to - from) * i / steps, Math.Max(from, to - 1e-7)))];
                // The plan draws the face at its bottom, and the dimension starts there.
                double fromFace = offset - places.Min(a => face.OffsetAt(wall.Bottom.At(a)));
                yield return new(section, from, to, offset, fromFace, [.. places.Select(a => wall.LayoutLine.PointAt(a) + face.NormalAt(a) * offset)]);
            }
        }
    }

    /// <param name="size">1 for a station, 2 for a point of the alignment.</param>
    private Line Tick(LayoutLine line, double along, double size)
    {
        double half = (context.Project.Unit == LengthUnit.Metre ? 0.5 : 1.5) * size;
        return new(LayerRole.LayoutLine, At(line.PointAt(along, half)), At(line.PointAt(along, -half)));
    }

    private Polyline LinePath(LayerRole layer, LayoutLine line, double start, double end)
    {
        var vertices = new List<Vertex>();
        foreach (LayoutPiece piece in line.Pieces)
        {
            double from = Math.Max(start, piece.Start), to = Math.Min(end, piece.End);
            if (to <= from)
                continue;
            // Plan turns to the right are clockwise on the drawing.
            double[] stops = [from, .. piece.Stops().Where(s => s > from && s < to), to];
            for (int i = 0; i + 1 < stops.Length; i++)
                vertices.Add(new(At(piece.PointAt(stops[i])), -Math.Tan((piece.AzimuthAt(stops[i + 1]) - piece.AzimuthAt(stops[i])) / 4)));
            if (piece == line.Pieces[^1] || to >= end)
                vertices.Add(new(At(piece.PointAt(to))));
        }
        return new(layer, vertices);
    }

    /// <summary>The face at the bottom, a point a length, ends cut at the mitre.</summary>
    private static IEnumerable<Vector2D> FacePoints(Face face, Leg leg)
    {
        Wall wall = face.Wall;
        double z = wall.Bottom.At(leg.Start);
        double from = leg.Start + (leg.StartCorner is null ? 0 : face.MitreCut(leg.StartCorner, z));
        double to = leg.End - (leg.EndCorner is null ? 0 : face.MitreCut(leg.EndCorner, z));
        bool curved = wall.LayoutLine.Pieces.Any(p => p.IsCurved && p.End > from && p.Start < to);
        int count = curved ? Math.Max(2, (int)Math.Ceiling((to - from) / Math.Max(1, (to - from) / 60))) : 1;
        for (int i = 0; i <= count; i++)
        {
            double at = from + (to - from) * i / count;
            double inside = Math.Clamp(at, leg.Start, Math.Max(leg.Start, leg.End - 1e-7));
            Vector2D tangent = wall.LayoutLine.TangentAt(inside);
            yield return wall.LayoutLine.PointAt(inside) + tangent * (at - inside) + face.NormalAt(inside) * face.OffsetAt(z);
        }
    }

    private IEnumerable<Primitive> Outline(Obstruction o)
    {
        Vector3D[] shape = [.. o.Shape];
        switch (o.Kind)
        {
            case ObstructionKind.Shaft or ObstructionKind.Pile:
                yield return new Circle(LayerRole.Obstruction, At(shape[0].Plan), o.Diameter / 2);
                if (new ShaftAxis(context, o).IsInclined)
                {
                    Point2 upper = At(shape[0].Plan), lower = At(shape[^1].Plan), way = lower - upper, beside = new Point2(-way.Y, way.X) * (o.Diameter / 2 / way.Length);
                    yield return new Circle(LayerRole.Obstruction, lower, o.Diameter / 2);
                    yield return new Line(LayerRole.Obstruction, upper + beside, lower + beside);
                    yield return new Line(LayerRole.Obstruction, upper - beside, lower - beside);
                }
                break;
            case ObstructionKind.Pipe:
                foreach (int side in new[] { -1, 1 })
                    yield return Polyline.Of(LayerRole.Utility, Beside([.. shape.Select(p => At(p.Plan))], side * o.Diameter / 2));
                break;
            case ObstructionKind.Boundary:
                yield return Polyline.Of(LayerRole.Boundary, shape.Select(p => At(p.Plan)));
                break;
            default:
                yield return Polyline.Of(LayerRole.Obstruction, shape.Select(p => At(p.Plan)), true);
                break;
        }
    }

    private static IEnumerable<Point2> Beside(Point2[] path, double distance)
    {
        for (int i = 0; i < path.Length; i++)
        {
            Point2 way = path[Math.Min(i + 1, path.Length - 1)] - path[Math.Max(i - 1, 0)];
            double length = Math.Max(way.Length, 1e-9);
            yield return path[i] + new Point2(-way.Y, way.X) * (distance / length);
        }
    }
}

/// <summary>The limit of the longest nail of a design section on one leg.</summary>
/// <param name="Start">First place along the layout line.</param>
/// <param name="End">Last place along the layout line.</param>
/// <param name="Offset">Distance of the limit from the layout line, into the soil.</param>
/// <param name="FromFace">Greatest distance of the limit from the face as the plan draws it, at the bottom of the wall, project units.</param>
/// <param name="Line">Plan points of the limit.</param>
public sealed record NailLimit(Section Section, double Start, double End, double Offset, double FromFace, IReadOnlyList<Vector2D> Line);
