using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>
/// A cross section: x the distance behind the layout line into the soil, y the elevation, moved by an origin in model space.
/// Of every row the nail nearest to the cut is drawn as it lies when seen along the wall, where it is within <see cref="Near"/>.
/// </summary>
public sealed class SectionView
{
    private const double Front = 7;
    private readonly DrawingContext _context;
    private readonly Point2 _origin;

    public SectionView(DrawingContext context, SectionCut cut, Point2 origin)
    {
        (_context, Cut, _origin) = (context, cut, origin);
        Face = new Face(Wall);
        Near = cut.Section.HorizontalSpacing / 2;
        Nails = [.. context.NailsOf(Wall)
            .Where(n => n.Kind != NailKind.Verification && n.Section == cut.Section && Math.Abs(n.Along - cut.Along) <= Near + 2 * Quantum)
            .GroupBy(n => n.Row).Select(g => g.MinBy(n => Math.Abs(n.Along - cut.Along))!).OrderByDescending(n => n.Elevation)];
        Behind = Nails.Select(n => Face.OffsetAt(n.Elevation) + (n.Hole.Tip - n.Hole.Head).Plan.Length).DefaultIfEmpty(15 * Unit).Max() + BeyondTips(context.Print.Unit);
        Obstructions = [.. context.Project.Obstructions.Where(IsCut)];
        Openings = [.. Wall.Openings.Where(o => o.Start <= cut.Along && cut.Along < o.End).OrderBy(o => o.Bottom)];
        Build = new SectionFacing(this, context);
        double high = Math.Max(Top, Wall.ExistingGround?.At(cut.Along) ?? Top) + 4 * Unit;
        foreach (Obstruction o in Obstructions.Where(o => double.IsFinite(o.Top) && o.Top < Top + 8 * Unit))
            high = Math.Max(high, o.Top + Unit);
        double low = Nails.Select(n => n.Hole.Tip.Z).Append(Bottom).Min() - 4 * Unit;
        Extent = new(Math.Min(0, Build.Front) - Front * Unit, low, Behind, high);
    }

    /// <summary>How far a view goes on in front of the face, project units, as an offset.</summary>
    public static double FrontOf(LengthUnit unit) => unit == LengthUnit.Metre ? -0.3 * Front : -Front;

    /// <summary>How far a view goes on behind the longest nail, project units.</summary>
    public static double BeyondTips(LengthUnit unit) => unit == LengthUnit.Metre ? 1.2 : 4;

    public SectionCut Cut { get; }

    public Wall Wall => Cut.Wall;

    public Face Face { get; }

    /// <summary>Distance from the cut within which nails are shown.</summary>
    public double Near { get; }

    /// <summary>From the top down.</summary>
    public IReadOnlyList<Nail> Nails { get; }

    /// <summary>What the cut passes through.</summary>
    public IReadOnlyList<Obstruction> Obstructions { get; }

    /// <summary>What the cut passes through in the face, from the bottom up.</summary>
    public IReadOnlyList<Opening> Openings { get; }

    /// <summary>What is built on the face.</summary>
    public SectionFacing Build { get; }

    /// <summary>What the view shows, in its own coordinates: offset and elevation.</summary>
    public Box Extent { get; }

    public double Behind { get; }

    /// <summary>A foot, or 0.3 m.</summary>
    public double Unit => _context.Print.Unit == LengthUnit.Metre ? 0.3 : 1;

    public double Top => Wall.Top.At(Cut.Along);

    public double Bottom => Wall.Bottom.At(Cut.Along);

    private double Quantum => _context.Print.Unit == LengthUnit.Metre ? 0.001 : 0.01;

    public Point2 At(double offset, double elevation) => _origin + new Point2(offset, elevation);

    /// <summary>True for a nail that the sheets forbid to drill.</summary>
    public bool IsStopped(Nail n) => _context.IsStopped(n);

    public Point2 HeadOf(Nail n) => At(Face.OffsetAt(n.Elevation), n.Elevation);

    /// <summary>A point of space as it is seen in the section of a nail: its distance behind the nail's head along the face's normal there.</summary>
    public Point2 Seen(Nail n, Vector3D point) =>
        At(Face.OffsetAt(n.Elevation) + (point - n.Hole.Head).Plan.Dot(Face.NormalAt(n.Along)), point.Z);

    /// <summary>Ends of a hole's clear distance, on the hole and on what it passes, where it lies in the plane of the section and is seen true; else null.</summary>
    public (Point2 OnHole, Point2 OnOther)? TrueClear(Nail n, Nearest near)
    {
        Point2 axis = Seen(n, near.OnFirst), other = Seen(n, near.OnSecond), way = other - axis;
        double radius = n.Hole.RadiusAt(near.DepthFirst);
        if (way.Length <= radius || near.Clear <= 0)
            return null;
        Point2 hole = axis + way * (radius / way.Length);
        return Math.Abs((other - hole).Length - near.Clear) > Quantum / 2 ? null : (hole, other);
    }

    public Point2 TipOf(Nail n) => Seen(n, n.Hole.Tip);

    /// <summary>Distance along the wall from the cut to a nail that is projected; 0 for one on the cut.</summary>
    public double ProjectedBy(Nail n) => Math.Abs(n.Along - Cut.Along) is var d && d > 5 * Quantum ? d : 0;

    /// <summary>Bottoms of the take-off's excavation lifts at the cut, above the bottom of the wall.</summary>
    public IEnumerable<(int Number, double Level)> Lifts()
    {
        int leg = Face.LegAt(Cut.Along).Index;
        foreach (ExcavationLift lift in _context.Quantities.Lifts
            .Where(l => l.Wall == Wall && l.Section == Cut.Section && l.Leg == leg && l.Start <= Cut.Along + 1e-9 && Cut.Along < l.End))
        {
            if (LevelOf(lift.LowerEdge) is double level && level > Bottom + Quantum && level < Top && !Openings.Any(o => o.Bottom < level && level < o.Top))
                yield return (lift.Number, level);
        }
    }

    /// <summary>Elevation of a lift's lower edge at the cut, of its nearer end where a mitre cuts it short; null where it has none.</summary>
    private double? LevelOf(IReadOnlyList<ProfilePoint> edge)
    {
        if (edge.Count == 0)
            return null;
        double at = Math.Clamp(Cut.Along, edge[0].Along, edge[^1].Along);
        for (int i = 0; i + 1 < edge.Count; i++)
        {
            (double from, double to) = (edge[i].Along, edge[i + 1].Along);
            if (to > from && at <= to)
                return edge[i].Elevation + (edge[i + 1].Elevation - edge[i].Elevation) * (Math.Max(at, from) - from) / (to - from);
        }
        return edge[^1].Elevation;
    }

    /// <summary>Outer end of a lift's mark, in front of the permanent facing.</summary>
    public double LiftEnd => Build.Front - 1.2 * Unit;

    public IEnumerable<Primitive> Draw() => Build.Draw().Concat(DrawAround());

    /// <summary>The ground, the lifts, the nails and the structures behind the face.</summary>
    public IEnumerable<Primitive> DrawAround()
    {
        if (Wall.ExistingGround?.At(Cut.Along) is double ground)
            yield return Polyline.Of(LayerRole.ExistingGround, [At(Build.Back(Top), Top), At(Build.Back(Top), ground), At(Behind, ground)]);
        if (Wall.FinishedGrade is Profile grade)
            yield return new Line(LayerRole.FinishedGrade, At(Extent.Left, grade.At(Cut.Along)), At(Build.Front, grade.At(Cut.Along)));
        foreach ((_, double level) in Lifts())
            yield return new Line(LayerRole.DetailHidden, At(LiftEnd, level), At(Face.OffsetAt(level), level));
        foreach (Nail n in Nails)
        {
            foreach (Line edge in HoleOf(n))
                yield return edge;
            LayerRole layer = IsStopped(n) ? LayerRole.NailUnresolved : n.Status == NailStatus.Noted ? LayerRole.NailNoted : LayerRole.Nail;
            yield return new Line(layer, HeadOf(n), TipOf(n)) { Nail = n.Mark };
        }
        foreach (Obstruction o in Obstructions)
        {
            foreach (Primitive p in Outline(o))
                yield return p with { Obstruction = o.Name };
        }
    }

    /// <summary>Both edges of a hole with its end, from the back of the shotcrete on.</summary>
    private IEnumerable<Line> HoleOf(Nail n)
    {
        Point2 head = HeadOf(n), tip = TipOf(n), way = (tip - head) * (1 / (tip - head).Length), side = new(-way.Y, way.X);
        Point2 first = head + way * (Build.Back(n.Elevation) - Face.OffsetAt(n.Elevation));
        double radius = n.Hole.Radius;
        foreach (int s in new[] { -1, 1 })
            yield return new Line(LayerRole.Detail, first + side * (s * radius), tip + side * (s * radius)) { Nail = n.Mark };
        yield return new Line(LayerRole.Detail, tip - side * radius, tip + side * radius) { Nail = n.Mark };
    }

    private bool IsCut(Obstruction o)
    {
        IReadOnlyList<LinePlace> places = Places(o);
        double from = places.Min(p => p.Along) - o.Diameter / 2, to = places.Max(p => p.Along) + o.Diameter / 2;
        bool across = Cut.Along >= from - 1e-6 && Cut.Along <= to + 1e-6;
        double near = places.Min(p => p.Right * Wall.Side), far = places.Max(p => p.Right * Wall.Side);
        return across && far > -Front * Unit && near < Behind && o.Bottom < Top + 8 * Unit;
    }

    private IReadOnlyList<LinePlace> Places(Obstruction o) => _context.PlacesOf(Wall.LayoutLine, o);

    /// <summary>Nearest and farthest offset, at an elevation, of a shaft, pile, solid or beam as the section shows it; null for others. An inclined shaft is seen inclined.</summary>
    public (double Near, double Far)? SpanAt(Obstruction o, double elevation)
    {
        IReadOnlyList<LinePlace> places = Places(o);
        if (o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile)
        {
            var axis = new ShaftAxis(_context, o);
            double upper = places[0].Right * Wall.Side, lean = places[^1].Right * Wall.Side - upper;
            double middle = upper + lean * axis.ShareAt(elevation), half = o.Diameter / 2 * axis.LevelFactor(lean);
            return (middle - half, middle + half);
        }
        return o.Kind switch
        {
            ObstructionKind.Solid or ObstructionKind.Beam => (places.Min(p => p.Right * Wall.Side), places.Max(p => p.Right * Wall.Side)),
            _ => null,
        };
    }

    public IEnumerable<Primitive> Outline(Obstruction o)
    {
        Box extent = Extent;
        IReadOnlyList<LinePlace> places = Places(o);
        switch (o.Kind)
        {
            case ObstructionKind.Boundary when Crossing(o, places) is (double offset, _):
                yield return new Line(LayerRole.Boundary, At(offset, extent.Bottom), At(offset, extent.Top));
                break;
            case ObstructionKind.Pipe when Crossing(o, places) is (double offset, double z):
                yield return new Circle(LayerRole.Detail, At(offset, z), o.Diameter / 2);
                break;
            case ObstructionKind.Pipe:
                foreach (Line edge in AlongCut(o, places))
                    yield return edge;
                break;
            case ObstructionKind.Shaft or ObstructionKind.Pile:
                double top = Math.Min(o.Top, extent.Top), bottom = Math.Max(o.Bottom, extent.Bottom);
                if (SpanAt(o, top) is not (double topNear, double topFar) || SpanAt(o, bottom) is not (double lowNear, double lowFar))
                    break;
                foreach ((Point2 from, Point2 to) in new[] { (new Point2(topNear, top), new Point2(lowNear, bottom)), (new(topFar, top), new(lowFar, bottom)), (new(topNear, top), new(topFar, top)) })
                {
                    if (extent.Grown(1e-9).Part(from, to) is (Point2 a, Point2 b))
                        yield return new Line(LayerRole.Obstruction, At(a.X, a.Y), At(b.X, b.Y));
                }
                break;
            case ObstructionKind.Solid or ObstructionKind.Beam when SpanAt(o, 0) is (double first, double last):
                double near = Math.Max(first, extent.Left), far = Math.Min(last, extent.Right);
                yield return Polyline.Of(LayerRole.Obstruction, [
                    At(near, Math.Max(o.Bottom, extent.Bottom)), At(far, Math.Max(o.Bottom, extent.Bottom)),
                    At(far, Math.Min(o.Top, extent.Top)), At(near, Math.Min(o.Top, extent.Top))], true);
                break;
            default:
                break;
        }
    }

    /// <summary>Both edges of the stretches of a pipe that run along the cut, within the view.</summary>
    private IEnumerable<Line> AlongCut(Obstruction pipe, IReadOnlyList<LinePlace> places)
    {
        double radius = pipe.Diameter / 2;
        for (int i = 0; i + 1 < places.Count; i++)
        {
            if (Math.Abs(places[i].Along - Cut.Along) > radius + 1e-6 || Math.Abs(places[i + 1].Along - Cut.Along) > radius + 1e-6)
                continue;
            Point2 a = new(places[i].Right * Wall.Side, pipe.Shape[i].Z), b = new(places[i + 1].Right * Wall.Side, pipe.Shape[i + 1].Z), way = b - a;
            if (way.Length < 1e-9)
                continue;
            Point2 aside = new Point2(-way.Y, way.X) * (radius / way.Length);
            foreach (Point2 off in new[] { aside, aside * -1 })
            {
                if (Extent.Part(a + off, b + off) is (Point2 from, Point2 to))
                    yield return new Line(LayerRole.Utility, At(from.X, from.Y), At(to.X, to.Y));
            }
        }
    }

    /// <summary>Offset and elevation where a path passes the cut; null where it runs along it only.</summary>
    private (double, double)? Crossing(Obstruction o, IReadOnlyList<LinePlace> places)
    {
        for (int i = 0; i + 1 < places.Count; i++)
        {
            double a = places[i].Along, b = places[i + 1].Along;
            if (Math.Abs(a - b) < 1e-9 || Cut.Along < Math.Min(a, b) - 1e-9 || Cut.Along > Math.Max(a, b) + 1e-9)
                continue;
            double t = (Cut.Along - a) / (b - a);
            double offset = (places[i].Right + (places[i + 1].Right - places[i].Right) * t) * Wall.Side;
            if (offset > -Front * Unit && offset < Behind)
                return (offset, o.Shape[i].Z + (o.Shape[i + 1].Z - o.Shape[i].Z) * t);
        }
        return null;
    }
}
