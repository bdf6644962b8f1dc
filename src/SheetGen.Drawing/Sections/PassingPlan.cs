using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Sections;

/// <summary>
/// A level cut where a nail of a section comes nearest to a shaft or pile: their clear distance lies across the plane of the
/// section and in that of this plan, so that it is seen and dimensioned true. The soil is above; the origin is the nail's head.
/// </summary>
public sealed class PassingPlan
{
    private readonly DrawingContext _context;
    private readonly Nearest _near;
    private readonly Vector2D _right, _up;

    private PassingPlan(DrawingContext context, Nail nail, Obstruction obstruction, Nearest near)
    {
        (_context, Nail, Obstruction, _near) = (context, nail, obstruction, near);
        Vector2D tangent = nail.Wall.LayoutLine.TangentAt(nail.Along);
        (_right, _up) = (tangent * -nail.Wall.Side, tangent.Right * nail.Wall.Side);
        double around = near.Clear + obstruction.Diameter / 4;
        Extent = Box.Around([default, At(near.OnFirst), .. Outline]).Grown(around / 2);
    }

    public Nail Nail { get; }

    public Obstruction Obstruction { get; }

    /// <summary>What the plan shows, project units about the nail's head.</summary>
    public Box Extent { get; }

    public double Elevation => _near.OnFirst.Z;

    private double Radius => Obstruction.Diameter / 2;

    private ShaftAxis Axis => new(_context, Obstruction);

    /// <summary>Where the axis of the shaft passes the level of the cut.</summary>
    private Point2 Middle => At(Axis.At(Elevation));

    /// <summary>Points of the shaft's outline in the cut: a circle, of an inclined shaft an ellipse that is longer the way it leans.</summary>
    private IEnumerable<Point2> Outline
    {
        get
        {
            Point2 leaning = Axis.IsInclined ? At(Obstruction.Shape[^1]) - At(Obstruction.Shape[0]) : new(1, 0), way = leaning * (1 / leaning.Length), side = new(-way.Y, way.X);
            double half = Axis.HalfAlongLean;
            const int Points = 48;
            return Enumerable.Range(0, Points).Select(i => 2 * Math.PI * i / Points).Select(a => Middle + way * (half * Math.Cos(a)) + side * (Radius * Math.Sin(a)));
        }
    }

    private Point2 At(Vector3D point)
    {
        Vector2D off = point.Plan - Nail.Hole.Head.Plan;
        return new(off.Dot(_right), off.Dot(_up));
    }

    /// <summary>Distance of a hole from a structure beyond which it does not count as passing it, in feet or 0.3 m.</summary>
    internal const double Farthest = 3;

    /// <summary>
    /// For each shaft or pile of a section the nearest approach of its nails, where a level cut shows that true and the section does not.
    /// </summary>
    public static IReadOnlyList<PassingPlan> All(DrawingContext context, SectionView view) =>
    [
        .. from o in view.Obstructions
           where o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile
           let plan = (from n in view.Nails
                       let near = o.Solids.Select(s => HoleDistance.ToSolid(n.Hole, s)).MinBy(d => d.Clear)
                       where near.Clear > 0 && near.Clear <= Farthest * view.Unit && near.DepthFirst > 0
                       let plan = new PassingPlan(context, n, o, near)
                       where plan.IsTrue && view.TrueClear(n, near) is null
                       select plan).MinBy(p => p._near.Clear)
           where plan is not null
           select plan,
    ];

    /// <summary>True where the plan measures the clear distance as it is in space.</summary>
    private bool IsTrue
    {
        get
        {
            (Point2 hole, Point2 shaft) = Ends();
            return Math.Abs((shaft - hole).Length - _near.Clear) < Lengths.Quantum(_context.Print.Unit) / 2;
        }
    }

    /// <summary>Ends of the clear distance: on the hole and on the shaft.</summary>
    private (Point2 Hole, Point2 Shaft) Ends()
    {
        Point2 axis = At(_near.OnFirst), shaft = At(_near.OnSecond), way = shaft - axis;
        return (axis + way * (Nail.Hole.RadiusAt(_near.DepthFirst) / Math.Max(way.Length, 1e-12)), shaft);
    }

    /// <summary>Its lines at a place of model space.</summary>
    public IEnumerable<Primitive> Draw(Point2 place)
    {
        yield return Axis.IsInclined
            ? Polyline.Of(LayerRole.Obstruction, [.. Outline.Select(p => place + p)], true) with { Obstruction = Obstruction.Name }
            : new Circle(LayerRole.Obstruction, place + Middle, Radius) { Obstruction = Obstruction.Name };
        Hole hole = Nail.Hole;
        double end = Math.Min(hole.Length, _near.DepthFirst + Obstruction.Diameter);
        Point2 way = At(hole.At(1)), side = new Point2(-way.Y, way.X) * (1 / way.Length);
        yield return new Line(LayerRole.Nail, place, place + At(hole.At(end))) { Nail = Nail.Mark };
        foreach (int s in new[] { -1, 1 })
            yield return new Line(LayerRole.Detail, place + side * (s * hole.Radius), place + At(hole.At(end)) + side * (s * hole.RadiusAt(end))) { Nail = Nail.Mark };
        yield return new Line(LayerRole.Wall, place + new Point2(Extent.Left, 0), place + new Point2(Extent.Right, 0));
    }

    /// <summary>The clear distance and the names.</summary>
    public void Write(ViewLabels labels, Point2 place, string dimensionStyle)
    {
        PlaneTransform toPaper = labels.Viewport.ToPaper;
        foreach (Primitive p in Draw(place).Select(toPaper.Apply))
            labels.Placer.Crowd.Add(p, LineKind.NoText);
        (Point2 hole, Point2 shaft) = Ends();
        Point2 from = toPaper.Apply(place + hole), to = toPaper.Apply(place + shaft);
        var placer = new DimensionPlacer(_context, labels, dimensionStyle);
        string words = _context.Say(Phrase.ClearShort, DimensionPlacer.Measured);
        if (!placer.TryAligned(from, to, _near.Clear, words, Nail.Mark) && !placer.TryAside(from, to, _near.Clear, words, Nail.Mark))
        {
            Dimension leaning = Leaning(from, to, dimensionStyle, words);
            string written = words.Replace(DimensionPlacer.Measured, placer.Written(_near.Clear), StringComparison.Ordinal);
            labels.Add(leaning);
            labels.Placer.Crowd.Add(DimensionPicture.TextBox(leaning.TextPoint, leaning.Angle, written, _context.StyleOf(TextRole.Dimension)));
        }
        Put(labels, _context.Say(_context.IsStopped(Nail) ? Phrase.DoNotDrillMark : Phrase.NailOfRow, Nail.Mark), toPaper.Apply(place), -Math.PI / 2);
        Put(labels, Plan.PlanLabels.NameOf(Obstruction, _context), toPaper.Apply(place + Middle), null);
    }

    /// <summary>The dimension with its words in the middle of its line, where they have no room beside it.</summary>
    private Dimension Leaning(Point2 from, Point2 to, string style, string words)
    {
        return new(LayerRole.Dimension, style, from, to, to, (from + to) * 0.5, DimensionPicture.Reading(from, to))
        {
            Nail = Nail.Mark,
            Words = words,
        };
    }

    /// <summary>Names a thing where there is room: the title names both.</summary>
    private static void Put(ViewLabels labels, string words, Point2 at, double? toward) =>
        labels.LabelIfRoom(new LabelRequest([[words]], TextRole.Label, at, 0.3) { Toward = toward, LeaderFrom = 1.6 });

    public string Title => _context.Say(Phrase.PassingPlan, _context.Print.Elevation(Elevation), Nail.Mark, Obstruction.Name.ToUpperInvariant());
}
