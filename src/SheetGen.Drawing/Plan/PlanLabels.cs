using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
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

    /// <summary>What an obstruction is called on the sheets: name, size, state and quality level.</summary>
    public static string NameOf(Obstruction o, DrawingContext context)
    {
        string name = o.Name.ToUpperInvariant();
        if (o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile or ObstructionKind.Pipe)
            name += " " + context.Say(Phrase.Diameter, context.Print.Small(o.Diameter));
        if (o.Facts.TryGetValue("state", out string? state))
            name += " (" + state.ToUpperInvariant() + ")";
        return o.Facts.TryGetValue("quality_level", out string? level) ? name + ", " + context.Say(Phrase.QualityLevel, level.ToUpperInvariant()) : name;
    }

    /// <summary>Tells the placer about lines of the plan, in paper coordinates.</summary>
    public void Crowd(IEnumerable<Primitive> paper)
    {
        // A word on a nail, or on a shaft that is no larger than the word, would hide what it names.
        foreach (Primitive primitive in paper)
            labels.Placer.Crowd.Add(primitive, primitive is Circle or { Layer: LayerRole.NailTrace or LayerRole.NailNoted } or Line { Layer: LayerRole.Obstruction } ? LineKind.NoText : LineKind.Soft);
    }

    public void Stations(Wall wall, PlanModel plan)
    {
        foreach ((double at, Phrase word) in new[] { (wall.Start, Phrase.Begin), (wall.End, Phrase.End) })
            Label([context.Say(word, wall.Name.ToUpperInvariant()), Station(wall.LayoutLine, at)], wall, at, null);
        // The words of the ends have their stations; the same beside them would read as one with the wall's name.
        foreach (double at in plan.StationTicks(wall).Where(a => Math.Min(a - wall.Start, wall.End - a) > Lengths.Quantum(_print.Unit)))
            Label([_print.ShortStation(wall, at)], wall, at, null);
    }

    private string Station(LayoutLine line, double along) => context.Say(Phrase.Station, _print.Station(line, along));

    /// <summary>Curve data, points of curvature and tangency, angle points.</summary>
    public void Alignment(LayoutLine line)
    {
        foreach (LayoutPiece piece in line.Pieces.Where(p => p.IsCurved))
        {
            if (piece.IsSpiral)
            {
                Put([context.Say(piece.Sharpest > 0 ? Phrase.SpiralRight : Phrase.SpiralLeft, _print.Distance(piece.Length)), context.Say(Phrase.SpiralRadii, Radius(piece.Curvature), Radius(piece.CurvatureAt(piece.End)))],
                    toPaper(line.PointAt((piece.Start + piece.End) / 2)), null, null);
                Ends(line, piece);
                continue;
            }
            double middle = (piece.Start + piece.End) / 2;
            double delta = Angles.ToDegrees(Math.Abs(piece.Curvature) * piece.Length);
            double radius = 1 / Math.Abs(piece.Curvature), tangent = radius * Math.Tan(Angles.ToRadians(delta / 2));
            bool hasPi = delta < 179;
            string[] words =
            [
                context.Say(piece.Curvature > 0 ? Phrase.CurveRight : Phrase.CurveLeft, _print.Distance(radius)),
                context.Say(Phrase.CurveDelta, _print.Sexagesimal(delta), _print.Distance(piece.Length)),
                .. hasPi ? [context.Say(Phrase.CurveTangent, _print.Distance(tangent), _print.Station(line, piece.Start + tangent))] : Array.Empty<string>(),
            ];
            Put(words, toPaper(line.PointAt(middle)), null, null);
            Ends(line, piece);
        }
        foreach (Corner corner in line.Corners)
        {
            double degrees = Angles.ToDegrees(Math.Abs(corner.Deflection));
            Put([context.Say(corner.Deflection > 0 ? Phrase.AnglePointRight : Phrase.AnglePointLeft, _print.Sexagesimal(degrees)), context.Say(Phrase.PointPi, Station(line, corner.Along))],
                toPaper(line.PointAt(corner.Along)), null, null);
        }
        LayoutPiece first = line.Pieces[0];
        Point2[] places = [.. new[] { 0.5, 0.25, 0.75, 0.12, 0.88 }.Select(k => toPaper(line.PointAt(first.Length * k))).Where(Frame.Contains)];
        IReadOnlyList<string> name = [context.Say(Phrase.LayoutLine, line.Name.ToUpperInvariant()), _print.Bearing(first.Azimuth)];
        if (places.Length > 0)
            labels.LabelOneOf([.. places.Select(p => new LabelRequest([name, [string.Join(" ", name)]], TextRole.Label, p, 0.6) { LeaderFrom = 2.6, Otherwise = string.Join(", ", name) })]);
    }

    /// <summary>The points where a curve begins and ends.</summary>
    private void Ends(LayoutLine line, LayoutPiece piece)
    {
        (string start, string end) = CurvePoints.Names(line, piece);
        if (start.Length > 0)
            Put([context.Say(Phrase.CurvePoint, start, Station(line, piece.Start))], toPaper(line.PointAt(piece.Start)), null, null);
        Put([context.Say(Phrase.CurvePoint, end, Station(line, piece.End))], toPaper(line.PointAt(piece.End)), null, null);
    }

    private string Radius(double curvature) => Math.Abs(curvature) < 1e-9 ? context.Say(Phrase.InfiniteRadius) : _print.Distance(1 / Math.Abs(curvature));

    /// <summary>Rights of way and easements, but those named already.</summary>
    public void Boundaries(IReadOnlySet<Obstruction>? named = null) => Named(ObstructionKind.Boundary, named);

    /// <summary>Structures, pipes and borings; shafts and piles with their place.</summary>
    public void Obstructions(Wall? wall)
    {
        Named(ObstructionKind.Pipe);
        foreach (Obstruction o in context.Project.Obstructions.Where(o => o.Kind is not (ObstructionKind.Pipe or ObstructionKind.Boundary)))
        {
            if (Box.Around(o.Shape.Select(p => toPaper(p.Plan))).Within(Frame) is not Box seen)
                continue;
            string name = NameOf(o, context);
            bool isPlaced = wall is not null && o.Kind is ObstructionKind.Shaft or ObstructionKind.Pile;
            IReadOnlyList<IReadOnlyList<string>> variants = !isPlaced ? [[name]] : new ShaftAxis(context, o).IsInclined ? [[name, .. PlaceOf(o, wall!)]] : [[name, .. PlaceOf(o, wall!)], [name]];
            Point2[] outline = [.. o.Shape.Select(p => toPaper(p.Plan))];
            IEnumerable<Point2> others = outline.Length < 3 ? outline.Length == 2 && (outline[1] - outline[0]).Length > 1 ? outline : [] : outline.Select((p, i) => (p + outline[(i + 1) % outline.Length]) * 0.5).Concat(outline.Select(p => (p + seen.Center) * 0.5)).Where(Frame.Contains);
            // With its place where there is room for that, as far as a leader is still short; else as near as the name alone comes.
            if (isPlaced && labels.LabelIfRoom(new LabelRequest([variants[0]], TextRole.Label, seen.Center, 0.6) { Obstruction = o.Name, LeaderFrom = 2.6, Reach = ReachOfPlace }))
                continue;
            labels.LabelOneOf([.. (outline.Length < 3 ? others.Append(seen.Center) : others.Prepend(seen.Center)).Select(p => new LabelRequest(variants, TextRole.Label, p, 0.6) { Obstruction = o.Name, LeaderFrom = 2.6, Otherwise = string.Join(", ", variants[0]) })]);
        }
        foreach (Boring b in context.Project.Borings.Where(b => Frame.Contains(toPaper(b.At))))
            Put([context.Say(Phrase.BoringName, b.Name.ToUpperInvariant())], toPaper(b.At), null, null);
    }

    private const double ReachOfPlace = 38;

    /// <summary>Where a shaft or pile stands; of an inclined one both ends, with their elevations.</summary>
    private string[] PlaceOf(Obstruction o, Wall wall)
    {
        (string Station, string Behind, string Elevation)[] ends = [.. new ShaftAxis(context, o).Ends(wall)];
        string[] places = [.. ends.Select(e => context.Say(Phrase.StationAndOffset, context.Say(Phrase.Station, e.Station), e.Behind))];
        return ends.Length == 1 ? places : [context.Say(Phrase.UpperEnd, ends[0].Elevation, places[0]), context.Say(Phrase.LowerEnd, ends[1].Elevation, places[1])];
    }

    private void Named(ObstructionKind kind, IReadOnlySet<Obstruction>? but = null)
    {
        foreach (Obstruction o in context.Project.Obstructions.Where(o => o.Kind == kind && but?.Contains(o) != true))
        {
            if (SampleInside([.. o.Shape.Select(p => toPaper(p.Plan))]) is Point2 at)
                Put([NameOf(o, context)], at, null, o.Name);
        }
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
        labels.Label(new LabelRequest(variants, TextRole.Label, at, 0.6) { Toward = toward, Obstruction = obstruction, LeaderFrom = 2.6, Otherwise = string.Join(", ", words) });
    }
}
