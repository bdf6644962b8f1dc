using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Drawing.Plan;

/// <summary>The plan of a stretch of a wall on a sheet, with its words, match lines, north arrow and title.</summary>
public sealed class PlanStrip
{
    private readonly DrawingContext _context;
    private readonly PlanModel _plan;
    private readonly SheetWindow _window;
    private readonly ViewLabels _labels;
    private readonly ViewLabels _inModel;
    private readonly IReadOnlyList<Viewport> _plans;

    private readonly PlannedPlan _planned;

    /// <param name="plans">All views of plans of the set.</param>
    /// <param name="notesBefore">Numbered notes that the sheet has already.</param>
    public PlanStrip(DrawingContext context, PlanModel plan, SheetWindow window, PlannedPlan planned, string sheet, IReadOnlyList<Viewport> plans, int notesBefore)
    {
        (_context, _plan, _window, _planned, _plans) = (context, plan, window, planned, plans);
        _labels = new ViewLabels(context, Viewport, Viewport.Frame.Grown(-1), sheet, window.Wall) { NotesBefore = notesBefore };
        _inModel = new ViewLabels(context, Viewport, Viewport.Frame.Grown(-1), sheet, window.Wall) { Placer = _labels.Placer };
    }

    private Viewport Viewport => _planned.Viewport;

    private Box Room => _planned.Room;

    private SheetScale Scale => _planned.Scale;

    private PlaneTransform ToPaper => Viewport.ToPaper;

    /// <summary>Draws the plan: words on the paper, dimensions in model space, where they measure.</summary>
    /// <param name="model">The plan's lines, in model space.</param>
    /// <param name="before">Name of the sheet before it; null at the wall's start.</param>
    /// <param name="after">Name of the sheet after it; null at the wall's end.</param>
    public DrawnView Draw(IReadOnlyList<Primitive> model, string? before, string? after)
    {
        PlaneTransform toPaper = ToPaper;
        var writer = new PlanLabels(_context, _labels, p => toPaper.Apply(_plan.At(p)));
        writer.Crowd(model.Select(toPaper.Apply));
        bool beside = Room.Right - Viewport.Frame.Right > 34;
        NorthArrow.Draw(_labels, new(beside ? Viewport.Frame.Right + 18 : Viewport.Frame.Right - 18, Viewport.Frame.Top - 18), Viewport.Twist, _context);
        MatchLine(_window.Start, before, 1);
        MatchLine(_window.End, after, -1);
        var dimensions = new PlanDimensions(_context, _window, _labels, _inModel, p => toPaper.Apply(_plan.At(p)), Scale.PlanDimensionStyle, IsAlone);
        dimensions.Offset();
        IReadOnlySet<Obstruction> named = dimensions.Boundaries();
        NailLimit[] limits = [.. _plan.NailLimits(_window.Wall)];
        IReadOnlyList<NailLimit> inWords = dimensions.Limits(limits);
        writer.Stations(_window.Wall, _plan);
        writer.Boundaries(named);
        writer.Alignment(_window.Wall.LayoutLine);
        writer.Obstructions(_window.Wall);
        dimensions.NameLimits(limits, inWords);
        FrontOfWall();
        string name = _window.Wall.Name.ToUpperInvariant();
        var content = new SheetContent
        {
            Viewports = [Viewport],
            Paper = [.. _labels.Paper, .. ViewTitle.Draw(_context, _context.Say(Phrase.PlanOf, name), _context.Say(Phrase.PlanTurned), Scale, new(Room.Left + 2, Room.Bottom - 9))],
            Model = [.. _inModel.InModel()],
            Findings = _labels.Findings,
        };
        return new(content, ViewNotes.Of(_labels));
    }

    /// <summary>True where no other view of the plan shows any of a box of this one's paper.</summary>
    private bool IsAlone(Box box)
    {
        PlaneTransform back = ToPaper.Inverse;
        Point2[] corners = [.. new Point2[] { new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top) }.Select(back.Apply)];
        return !_plans.Any(p => p != Viewport && Box.Around(corners.Select(p.ToPaper.Apply)).Grown(1).Overlaps(p.Frame));
    }

    /// <summary>A line across the plan where the next sheet goes on, clipped to the view.</summary>
    private void MatchLine(double along, string? sheet, int inward)
    {
        if (sheet is null)
            return;
        Wall wall = _window.Wall;
        double at = Math.Clamp(along, wall.Start, wall.End - 1e-6);
        Vector2D on = wall.LayoutLine.PointAt(at), normal = new Face(wall).NormalAt(at);
        Point2 middle = ToPaper.Apply(_plan.At(on)), way = ToPaper.Apply(_plan.At(on + normal)) - middle;
        way *= 1 / way.Length;
        Box frame = Viewport.Frame.Grown(-1.5);
        if (!frame.Contains(middle))
            return;
        double beyond = Run(frame, middle, way), before = Run(frame, middle, way * -1);
        // Across nails of another leg it would part what stands on one sheet: there it ends behind its own leg's nails.
        if (MeetsOtherLeg(at, on - normal * (before * Viewport.UnitsPerMillimetre), on + normal * (beyond * Viewport.UnitsPerMillimetre)))
            (beyond, before) = (Math.Min(beyond, ReachAt(at) / Viewport.UnitsPerMillimetre + PastNails), Math.Min(before, 2 * PastNails));
        Point2 behind = middle + way * beyond, front = middle - way * before;
        _labels.Add(new Line(LayerRole.MatchLine, front, behind));
        // Words keep off the line, which is heavy.
        foreach (double off in new[] { -0.9, 0, 0.9 })
            _labels.Placer.Crowd.Add(front + new Point2(-way.Y, way.X) * off, behind + new Point2(-way.Y, way.X) * off, LineKind.NoText);
        Point2 aside = ToPaper.Apply(_plan.At(on + wall.LayoutLine.TangentAt(at) * inward)) - middle;
        string station = _context.Say(Phrase.Station, _context.Print.Station(wall, along));
        string[] words = [_context.Say(Phrase.MatchLine, station), _context.Say(Phrase.SeeSheet, sheet)];
        _labels.Label(new LabelRequest([words, [string.Join(", ", words)], [_context.Say(Phrase.MatchLine, "").Trim(), station, words[1]], [words[1]]], TextRole.Label, behind + (front - behind) * 0.2, 1)
        {
            Layer = LayerRole.MatchLine,
            Toward = Math.Atan2(aside.Y, aside.X),
            LeaderFrom = 3,
            Otherwise = string.Join(", ", words),
        });
    }

    /// <summary>How far a match line goes on past the nails of its leg, mm.</summary>
    private const double PastNails = 8;

    private bool MeetsOtherLeg(double along, Vector2D from, Vector2D to)
    {
        var face = new Face(_window.Wall);
        Leg own = face.LegAt(along);
        return CrossedNails.Any(_context.NailsOf(_window.Wall).Where(n => face.LegAt(n.Along) != own), from, to);
    }

    /// <summary>How far the nails of the leg at a station reach behind the layout line, project units.</summary>
    private double ReachAt(double along) =>
        _plan.NailLimits(_window.Wall).Where(l => l.Start <= along && along <= l.End).Select(l => l.Offset).DefaultIfEmpty(_context.NailsOf(_window.Wall).Select(n => n.Length).DefaultIfEmpty(0).Max()).Max();

    /// <summary>How far one can go from a point inside a box before one leaves it.</summary>
    private static double Run(Box box, Point2 from, Point2 way)
    {
        double x = way.X > 1e-9 ? (box.Right - from.X) / way.X : way.X < -1e-9 ? (box.Left - from.X) / way.X : double.PositiveInfinity;
        double y = way.Y > 1e-9 ? (box.Top - from.Y) / way.Y : way.Y < -1e-9 ? (box.Bottom - from.Y) / way.Y : double.PositiveInfinity;
        return Math.Min(x, y);
    }

    private void FrontOfWall()
    {
        double middle = (_window.Start + _window.End) / 2;
        Vector2D normal = new Face(_window.Wall).NormalAt(middle), on = _window.Wall.LayoutLine.PointAt(middle);
        Point2 at = ToPaper.Apply(_plan.At(on)), front = ToPaper.Apply(_plan.At(on - normal)) - at;
        _labels.Label(new LabelRequest([[_context.Say(Phrase.FrontOfWall)]], TextRole.Label, at + front * (12 / front.Length), 0) { LeaderFrom = 400, Reach = 40, Otherwise = _context.Say(Phrase.FrontOfWall) });
    }
}
