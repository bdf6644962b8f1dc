using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Building;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Figures of a layer, or of the inserts of a block, as obstructions of the project file.</summary>
internal sealed class ObstructionFigures(
    MapItem source, ForeignFile file, Drawing drawing, DrawingPlace place, LayoutLines lines, LengthUnit unit, double error, Dictionary<string, string> names, ProblemList problems)
{
    private readonly string _kind = source.Text("kind")!;
    private readonly string? _layer = source.Text("layer");
    private readonly string? _block = source.Text("block");
    private readonly FileUnit _own = FileUnit.Of(unit);
    private int _far;

    /// <summary>The obstructions in order of station; null where there are none, which is reported.</summary>
    public IReadOnlyList<Node>? Nodes()
    {
        Figure[] wanted = [.. drawing.Figures.Where(f => f.Kind != FigureKind.Text && Wanted(f.Source, f.Insert)).Select(Placed)];
        if (wanted.Length == 0 && !drawing.Ignored.Any(i => Wanted(i.Source, i.Insert)))
            return Nothing();
        foreach (Ignored ignored in drawing.Ignored.Where(i => Wanted(i.Source, i.Insert)))
            LeftOut(ignored.Source, ignored.Why);
        double gap = source.Number("gap") ?? (Lengths.IsFoot(unit) ? 0.01 : 0.003);
        IEnumerable<Figure> joined = wanted.Where(f => f.Kind == FigureKind.Open).GroupBy(f => f.Insert?.Number ?? -1).SelectMany(g => Joining.Of([.. g], gap));
        var things = new List<Thing>();
        foreach (Figure figure in Bodies.Joined(wanted.Where(f => f.Kind != FigureKind.Open).Concat(joined)))
        {
            string? why = null;
            Thing? thing = _kind switch
            {
                "shaft" or "pile" => Round(figure, ref why),
                "solid" => Solid(figure, ref why),
                "pipe" => Pipe(figure, ref why),
                _ => Boundary(figure, ref why),
            };
            if (thing is null)
                LeftOut(figure.Source, why!);
            else if (Near(thing))
                things.Add(thing);
            else
                _far++;
        }
        Others();
        return Named([.. things.Where(t => !Inside(t, things)).OrderBy(t => t.Place?.Along ?? 0).ThenBy(t => t.Place?.Right ?? 0)]);
    }

    /// <summary>What is taken: its keys beside the name.</summary>
    private sealed record Thing(Figure Figure, Point3 Center, IReadOnlyList<Point3> Ring, string Shape, List<(string Key, Node Value)> Keys)
    {
        public LinePlace? Place { get; set; }

        /// <summary>Radius of what is round; else 0.</summary>
        public double Radius { get; init; }
    }

    private bool Wanted(Source at, InsertPart? insert) => _block is not null
        ? insert is not null && insert.Blocks.Contains(_block, StringComparer.OrdinalIgnoreCase)
        : string.Equals(at.Layer, _layer, StringComparison.OrdinalIgnoreCase) || (_layer != "0" && insert is not null && insert.Layers.Contains(_layer, StringComparer.OrdinalIgnoreCase));

    private Figure Placed(Figure figure) => figure with
    {
        Strokes = [.. figure.Strokes.Select(s => s.Through(place.Map))],
        Center = place.Map.Point(figure.Center),
        Radius = figure.Radius * place.Factor,
        Corners = [.. figure.Corners.Select(place.Map.Point)],
        Thickness = figure.Thickness * place.Map.Z.Z,
    };

    private SourceSpot Spot(Figure figure) => file.At(figure.Source.Line);

    private IReadOnlyList<Node>? Nothing()
    {
        string what = _block is null ? $"nothing on layer \"{Shown.Short(_layer!)}\"" : $"no insert of block \"{Shown.Short(_block)}\"";
        string[] has = [.. (_block is null ? drawing.Figures.Select(f => f.Source.Layer) : drawing.Content.Blocks.Keys.Where(b => !b.StartsWith('*'))).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase).Select(Shown.Short)];
        problems.Add(ProblemCodes.NotInFile, source.SpotOf(_block is null ? "layer" : "block"), $"the drawing has {what}", (_block is null ? "layers with figures: " : "blocks: ") + (has.Length == 0 ? "none" : string.Join(", ", has.Take(15)) + (has.Length > 15 ? ", ..." : "")));
        return null;
    }

    private void LeftOut(Source at, string why) => problems.Add(ProblemCodes.LeftOut, file.At(at.Line), $"{at.Text} is left out: {why}", "", file.Spot);

    /// <summary>Tells what the drawing holds beside what was asked for.</summary>
    private void Others()
    {
        var other = drawing.Figures.Where(f => f.Kind != FigureKind.Text && !Wanted(f.Source, f.Insert)).Select(f => f.Source.Layer)
            .Concat(drawing.Ignored.Where(i => !Wanted(i.Source, i.Insert)).Select(i => i.Source.Layer)).GroupBy(l => l, StringComparer.OrdinalIgnoreCase).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.OrdinalIgnoreCase).ToArray();
        var parts = new List<string>();
        if (other.Length > 0)
            parts.Add($"{other.Sum(g => g.Count())} things on other layers ({string.Join(", ", other.Take(10).Select(g => $"{Shown.Short(g.Key)} {g.Count()}"))}{(other.Length > 10 ? ", ..." : "")})");
        if (_far > 0)
            parts.Add(FormattableString.Invariant($"{_far} that lie farther than {Within:0.#} {_own.Symbol} from every layout line"));
        if (drawing.InPaperSpace > 0)
            parts.Add($"{drawing.InPaperSpace} in paper space");
        if (parts.Count > 0)
            problems.Add(ProblemCodes.Imported, file.At(1), $"passed over, not asked for by {(_block is null ? $"layer {Shown.Short(_layer!)}" : $"block {Shown.Short(_block)}")}: {string.Join("; ", parts)}");
    }

    private double Within => source.Number("within") ?? (Lengths.IsFoot(unit) ? 500 : 150);

    private bool Near(Thing thing)
    {
        var origin = lines.Origin;
        IEnumerable<Point3> points = thing.Ring.Count > 0 ? thing.Ring : [thing.Center];
        bool near = lines.Built.Count == 0;
        double least = double.PositiveInfinity;
        foreach (LayoutLine line in lines.Built)
        {
            foreach (Point3 p in points.Append(thing.Center))
            {
                var plan = new Vector2D(p.Y - origin.N, p.X - origin.E);
                LinePlace at = LayoutProjection.Locate(line, plan);
                double away = (plan - line.PointAt(Math.Clamp(at.Along, 0, line.Length))).Length;
                near |= away <= Within;
                if (away < least)
                    (least, thing.Place) = (away, at);
            }
        }
        return near;
    }

    /// <summary>True for what is drawn within another of the same insert: the outline counts.</summary>
    private static bool Inside(Thing thing, List<Thing> all) => thing.Ring.Count > 2 && all.Exists(o =>
        !ReferenceEquals(o, thing) && o.Ring.Count > 2 && o.Figure.Insert is not null && o.Figure.Insert == thing.Figure.Insert
        && Math.Abs(SafeOutline.Area(o.Ring)) > Math.Abs(SafeOutline.Area(thing.Ring)) && thing.Ring.All(p => SafeOutline.Contains(o.Ring, p)));

    /// <summary>Shafts and piles: circles, points with a diameter, and for any other outline the least circle around it.</summary>
    private Thing? Round(Figure figure, ref string? why)
    {
        Point3 center;
        double radius;
        string shape;
        if (figure.Kind == FigureKind.Circle)
        {
            (center, radius, shape) = (figure.Center, figure.Radius, "circle");
        }
        else if (figure.Kind == FigureKind.Point || (figure.Kind == FigureKind.Open && IsUpright(figure)))
        {
            if (source.Number("diameter") is not { } given)
                return No(ref why, "a point has no size: give diameter");
            (center, radius, shape) = (figure.Kind == FigureKind.Point ? figure.Center : figure.Strokes[0].Start, given / 2, "the given diameter");
        }
        else if (figure.Kind is FigureKind.Closed or FigureKind.Body)
        {
            IReadOnlyList<Point3> ring = figure.Kind == FigureKind.Body ? figure.Corners : SafeOutline.Of(figure.Strokes);
            (center, radius) = SafeOutline.Circle([.. ring]);
            Point3[] on = [.. figure.Strokes.SelectMany(s => s.Knots).Select(k => k.At)];
            if (on.Length > 8 && figure.Strokes.All(s => s.IsCurved) && SafeOutline.Circle(on) is var drawn && on.All(p => Math.Abs((p - drawn.Center).PlanLength - drawn.Radius) < 1e-6 * drawn.Radius + 1e-9))
                (center, radius, shape) = (drawn.Center, drawn.Radius, "circle");
            else
                shape = "the least circle around it";
        }
        else
        {
            return No(ref why, Open(figure));
        }
        if (Heights(figure, ref why) is not { } heights)
            return null;
        SourceSpot spot = Spot(figure);
        var keys = new List<(string, Node)>
        {
            ("at", Plan(center, spot)), ("diameter", Inputs.Nodes.Length(2 * radius, _own, spot)), ("top", heights.Top), ("bottom", heights.Bottom),
        };
        return new Thing(figure, center, [], FormattableString.Invariant($"{shape}, {2 * radius:0.###} {_own.Symbol} across"), keys) { Radius = radius };
    }

    /// <summary>Solids: closed outlines; for bodies of faces their outline where it is not convex and surely holds them, else the convex outline around all their corners.</summary>
    private Thing? Solid(Figure figure, ref string? why)
    {
        if (figure.Kind is FigureKind.Point or FigureKind.Open)
            return No(ref why, figure.Kind == FigureKind.Point ? "a point has no outline" : Open(figure));
        List<Point3>? bent = figure.Kind == FigureKind.Body ? MeshOutline.Of(figure) : null;
        List<Point3> ring = figure.Kind == FigureKind.Body ? bent ?? SafeOutline.Hull(figure.Corners) : SafeOutline.Of(figure.Strokes);
        if (ring.Count < 3 || Math.Abs(SafeOutline.Area(ring)) < 1e-9)
            return No(ref why, "it has no area in plan");
        if (ring.Count > MostCorners)
            return No(ref why, FormattableString.Invariant($"its outline takes {ring.Count} corners to hold the error, over {MostCorners}: raise error"));
        if (Heights(figure, ref why) is not { } heights)
            return null;
        SourceSpot spot = Spot(figure);
        bool curved = figure.Strokes.Any(s => s.IsCurved);
        string shape = bent is not null ? $"upright prism over the outline of its faces, {ring.Count} corners, which is not convex: split into convex parts"
            : figure.Kind == FigureKind.Body ? $"upright prism over the convex outline of its {figure.Corners.Count} corners"
            : curved ? FormattableString.Invariant($"outline of {ring.Count} corners, outside of its curves by at most {2 * error:0.###} {_own.Symbol}") : $"outline of {ring.Count} corners";
        var keys = new List<(string, Node)> { ("footprint", Inputs.Nodes.List(spot, ring.Select(p => Plan(p, spot)))), ("bottom", heights.Bottom), ("top", heights.Top) };
        return new Thing(figure, Middle(ring), ring, shape, keys);
    }

    private const int MostCorners = 500;

    private Thing? Pipe(Figure figure, ref string? why)
    {
        if (figure.Kind is not (FigureKind.Open or FigureKind.Closed))
            return No(ref why, $"a pipe is a line, not a {figure.Source.Kind}");
        if (source.Number("diameter") is not { } diameter)
            return No(ref why, "the drawing has no diameter of pipes: give diameter");
        List<Point3> points = [figure.Strokes[0].Start, .. figure.Strokes.SelectMany(s => s.Knots.Skip(1)).Select(k => k.At)];
        bool flat = points.All(p => p.Z == 0);
        double? level = source.Number("elevation");
        if (flat && level is null)
            return No(ref why, "it is drawn at elevation 0: give elevation");
        points = [.. points.Select(p => flat ? p with { Z = level!.Value } : p).Where((p, i) => i == 0 || (p - points[i - 1]).Length > 1e-6)];
        if (points.Count < 2)
            return No(ref why, "it has no length");
        double wider = 2 * figure.Strokes.Max(s => s.Error);
        SourceSpot spot = Spot(figure);
        var keys = new List<(string, Node)>
        {
            ("points", Inputs.Nodes.List(spot, points.Select(p => Plan(p, spot, p.Z)))), ("diameter", Inputs.Nodes.Length(diameter + wider, _own, spot)),
        };
        string shape = FormattableString.Invariant($"{points.Count} points") + (wider > 0 ? FormattableString.Invariant($", {wider:0.####} {_own.Symbol} wider than given, since chords stand for its curves") : "");
        return new Thing(figure, points[points.Count / 2], points, shape, keys);
    }

    private Thing? Boundary(Figure figure, ref string? why)
    {
        if (figure.Kind is not (FigureKind.Open or FigureKind.Closed))
            return No(ref why, $"a boundary is a line, not a {figure.Source.Kind}");
        List<Point3> points = [figure.Strokes[0].Start, .. figure.Strokes.SelectMany(s => s.Knots.Skip(1)).Select(k => k.At)];
        points = [.. points.Where((p, i) => i == 0 || (p - points[i - 1]).PlanLength > 1e-6)];
        if (points.Count < 2)
            return No(ref why, "it has no length in plan");
        SourceSpot spot = Spot(figure);
        double off = figure.Strokes.Max(s => s.Error);
        string shape = FormattableString.Invariant($"{points.Count} points") + (off > 0 ? FormattableString.Invariant($", chords within {off:0.####} {_own.Symbol} of its curves") : "");
        return new Thing(figure, points[points.Count / 2], points, shape, [("points", Inputs.Nodes.List(spot, points.Select(p => Plan(p, spot))))]);
    }

    private static Thing? No(ref string? why, string reason)
    {
        why = reason;
        return null;
    }

    private string Open(Figure figure)
    {
        double apart = (figure.Strokes[0].Start - figure.Strokes[^1].End).Length;
        return FormattableString.Invariant($"its outline is open by {apart:0.####} {_own.Symbol}; close it, or raise gap");
    }

    private static bool IsUpright(Figure figure) => figure.Strokes.All(s => !s.IsCurved && (s.End - s.Start).PlanLength < 1e-9);

    /// <summary>Top and bottom: those given, else what the drawing has.</summary>
    private (Node Bottom, Node Top)? Heights(Figure figure, ref string? why)
    {
        SourceSpot spot = Spot(figure);
        IEnumerable<double> levels = figure.Kind switch
        {
            FigureKind.Body => figure.Corners.Select(c => c.Z),
            FigureKind.Circle or FigureKind.Point => [figure.Center.Z],
            _ => figure.Strokes.SelectMany(s => s.Knots).Select(k => k.At.Z),
        };
        double[] z = [.. levels.SelectMany(l => new[] { l, l + figure.Thickness })];
        bool has = z.Max() - z.Min() > 1e-6;
        (double low, double high) = (z.Min(), z.Max());
        if (!has && (!source.Gives("bottom") || !source.Gives("top")))
            return Bad(ref why);
        Node Level(string key, double drawn) => source.NumberItem(key) is { } given ? Inputs.Nodes.Length(given.Value, _own, given.Spot) : Inputs.Nodes.Length(drawn, _own, spot);
        return (Level("bottom", low), Level("top", high));

        static (Node, Node)? Bad(ref string? why)
        {
            why = "the drawing gives it no height: give bottom and top";
            return null;
        }
    }

    private MapNode Plan(Point3 p, SourceSpot spot, double? elevation = null)
    {
        var keys = new List<(string, Node)> { ("northing", Inputs.Nodes.Length(p.Y, _own, spot)), ("easting", Inputs.Nodes.Length(p.X, _own, spot)) };
        if (elevation is { } z)
            keys.Add(("elevation", Inputs.Nodes.Length(z, _own, spot)));
        return Inputs.Nodes.Map(spot, [.. keys]);
    }

    private static Point3 Middle(IReadOnlyList<Point3> ring) => new(ring.Average(p => p.X), ring.Average(p => p.Y), 0);

    private List<Node>? Named(IReadOnlyList<Thing> things)
    {
        if (things.Count == 0)
        {
            problems.Add(ProblemCodes.NotInFile, source.Spot, "nothing of the drawing became an obstruction", "the warnings say why; or take the block out");
            return null;
        }
        var figureNames = new FigureNames(source, drawing, place, names);
        var nodes = new List<Node>();
        for (int i = 0; i < things.Count; i++)
        {
            Thing thing = things[i];
            SourceSpot spot = Spot(thing.Figure);
            string name = figureNames.Of(thing.Figure, thing.Center, thing.Radius, thing.Ring, i + 1);
            var keys = new List<(string, Node)> { ("name", Inputs.Nodes.Text(name, spot)), ("kind", Inputs.Nodes.Text(_kind, spot)) };
            keys.AddRange(thing.Keys);
            foreach (Key fact in ObstructionKeys.Facts.Where(f => source.Text(f.Name) is not null))
                keys.Add((fact.Name, Inputs.Nodes.Text(source.Text(fact.Name)!, source.SpotOf(fact.Name))));
            if (source.Text("source") is null)
                keys.Add(("source", Inputs.Nodes.Text($"{Shown.Short(Path.GetFileName(file.Name))}, {thing.Figure.Source.Text}", spot)));
            string at = thing.Place is { } p && lines.Built.Count > 0 ? FormattableString.Invariant($" at {lines.Built[0].StationText(p.Along, unit)}, {Math.Abs(p.Right):0.00} {(p.Right < 0 ? "left" : "right")}") : "";
            problems.Add(ProblemCodes.Imported, spot, $"{_kind} \"{Shown.Short(name)}\" is the {thing.Figure.Source.Text}{at}: {thing.Shape}");
            nodes.Add(Inputs.Nodes.Map(spot, [.. keys]));
        }
        return nodes;
    }
}
