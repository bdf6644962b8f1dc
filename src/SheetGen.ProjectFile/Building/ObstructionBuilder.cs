using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Obstructions as convex solids.</summary>
internal sealed class ObstructionBuilder(Points points, ProblemList problems)
{
    private readonly PipeBuilder _pipes = new(points, problems);

    public IReadOnlyList<Obstruction> Build(MapItem root)
    {
        Names.CheckUnique(root.Maps("obstructions").Where(m => m.Text("name") is not null).SelectMany(m => Repeats.Of(m).Select(r => (r.Name, m.SpotOf("name")))), "obstruction", problems);
        var built = new List<Obstruction>();
        foreach (MapItem map in root.Maps("obstructions"))
        {
            foreach ((string name, double shift) in Repeats.Of(map))
            {
                points.Shift = shift;
                if (BuildOne(map) is { } one && name.Length > 0)
                    built.Add(one with { Name = name, Facts = Facts(map), KnownInFront = map.Flag("in_front") ?? false, Spot = map.Spot });
            }
            points.Shift = 0;
        }
        return built;
    }

    private Obstruction? BuildOne(MapItem map) => map.Text("kind") switch
    {
        "shaft" => Shaft(map, ObstructionKind.Shaft),
        "pile" => Shaft(map, ObstructionKind.Pile),
        "solid" => Solid(map),
        "beam" => Beam(map),
        "pipe" => _pipes.Build(map),
        "boundary" => Boundary(map),
        _ => null,
    };

    private static Dictionary<string, string> Facts(MapItem map) =>
        ObstructionKeys.Facts.Where(k => map.Text(k.Name) is not null).ToDictionary(k => k.Name, k => map.Text(k.Name)!);

    private Obstruction? Shaft(MapItem map, ObstructionKind kind)
    {
        if (map.Gives("at") == map.Gives("axis"))
        {
            problems.Add(ProblemCodes.ExactlyOne, map.Spot, "a shaft or pile takes either at, top and bottom, or axis", "axis is for an inclined one");
            return null;
        }
        Vector3D upper, lower;
        if (map.Gives("axis"))
        {
            foreach (string key in new[] { "top", "bottom" }.Where(map.Gives))
                problems.Add(ProblemCodes.NotHere, map.Keys[key], $"\"{key}\" does not go with axis: its points have elevations", "remove it");
            if (map.List("axis") is not { } axis || Axis(axis) is not { } ends)
                return null;
            (upper, lower) = ends[0].Z >= ends[1].Z ? (ends[0], ends[1]) : (ends[1], ends[0]);
        }
        else
        {
            foreach (string key in new[] { "top", "bottom" }.Where(k => !map.Gives(k)))
                problems.Add(ProblemCodes.MissingKey, map.Spot, $"\"{key}\" is missing in a {map.Text("kind")} with at", $"for example {key}: 100");
            bool heights = Heights.Check(map, $"the {map.Text("kind")}", problems);
            if (map.Map("at") is not { } at || points.Plan(at) is not { } plan || !heights)
                return null;
            (upper, lower) = (plan.At(map.Number("top")!.Value), plan.At(map.Number("bottom")!.Value));
        }
        if (map.Number("diameter") is not { } diameter)
            return null;
        double tilt = (upper - lower).Plan.Length / (upper - lower).Length;
        return New(kind, [new CylinderSolid(upper, lower, diameter / 2)], [upper, lower]) with
        {
            Diameter = diameter,
            Top = upper.Z + diameter / 2 * tilt,
            Bottom = lower.Z - diameter / 2 * tilt,
        };
    }

    private Obstruction? Solid(MapItem map)
    {
        bool heights = Heights.Check(map, "the solid", problems);
        if (!points.OneOf(map, "footprint"))
            return null;
        if (map.Gives("offset_line"))
            return heights ? Strip(map) : null;
        if (map.Gives("width"))
            problems.Add(ProblemCodes.NotHere, map.Keys["width"], "\"width\" goes with offset_line; a footprint has its own", "remove it");
        if (map.List("footprint") is not { } list || points.PlanList(list, closed: true) is not { } footprint)
            return null;
        MapItem[] corners = [.. list.Maps];
        if (Footprints.Crossing(footprint) is { } crossing)
        {
            problems.Add(ProblemCodes.FootprintCrosses, corners[crossing.Second].Spot, FormattableString.Invariant($"the footprint crosses itself: side {crossing.Second + 1} meets side {crossing.First + 1}"), "give the corners in order around it", corners[crossing.First].Spot);
            return null;
        }
        return heights ? Prisms(ObstructionKind.Solid, footprint, map) : null;
    }

    private Obstruction? Beam(MapItem map)
    {
        bool heights = Heights.Check(map, "the beam", problems);
        Vector2D? from = map.Map("from") is { } f ? points.Plan(f) : null;
        Vector2D? to = map.Map("to") is { } t ? points.Plan(t) : null;
        if (from is not { } a || to is not { } b)
            return null;
        if ((b - a).Length < Tolerance.Length)
        {
            problems.Add(ProblemCodes.NoLength, map.SpotOf("to"), "the two ends of the beam fall together", "correct one of them", map.SpotOf("from"));
            return null;
        }
        if (!heights || map.Number("width") is not { } width)
            return null;
        Vector2D half = (b - a).Right * (width / 2 / (b - a).Length);
        return Prisms(ObstructionKind.Beam, [a - half, b - half, b + half, a + half], map);
    }

    /// <summary>A cap or footing of one width all along the layout line.</summary>
    private Obstruction? Strip(MapItem map)
    {
        if (!map.Gives("width"))
            problems.Add(ProblemCodes.MissingKey, map.Spot, "\"width\" is missing in a solid with offset_line", "for example width: 4");
        if (map.Number("width") is not { } width || points.Following(map, 0) is not { } near || points.Following(map, width) is not { } far)
            return null;
        double bottom = map.Number("bottom")!.Value, top = map.Number("top")!.Value;
        // Both sides have a point at the same places of the layout line unless an arc needs more on one of them: then the strip is cut up as a whole.
        List<Vector2D> outline = [.. near, .. far.AsEnumerable().Reverse()];
        IEnumerable<IReadOnlyList<Vector2D>> pieces = near.Count == far.Count
            ? Enumerable.Range(0, near.Count - 1).Select(i => (IReadOnlyList<Vector2D>)[near[i], near[i + 1], far[i + 1], far[i]])
            : Footprints.ConvexPieces(outline);
        return New(ObstructionKind.Solid, [.. pieces.Select(p => new PrismSolid(p, bottom, top))], [.. outline.Select(p => p.At(0))]) with { Bottom = bottom, Top = top };
    }

    private Obstruction? Boundary(MapItem map)
    {
        if (points.Course(map) is not { } line)
            return null;
        Solid[] pieces = [.. line.Zip(line.Skip(1), (a, b) => new BoundarySolid(a, b))];
        return New(ObstructionKind.Boundary, pieces, [.. line.Select(p => p.At(0))]);
    }

    /// <summary>Points with elevations; null where any is faulty or two neighbours fall together, which is reported.</summary>
    private List<Vector3D>? Axis(ListItem list)
    {
        MapItem[] maps = [.. list.Maps];
        List<Vector3D?> axis = [.. maps.Select(m => points.Plan(m) is { } plan && m.Number("elevation") is { } z ? plan.At(z) : (Vector3D?)null)];
        return list.Faulty || axis.Contains(null) ? null : points.Apart([.. axis.Select(p => p!.Value)], maps);
    }

    private static Obstruction Prisms(ObstructionKind kind, List<Vector2D> footprint, MapItem map)
    {
        double bottom = map.Number("bottom")!.Value, top = map.Number("top")!.Value;
        Solid[] pieces = [.. Footprints.ConvexPieces(footprint).Select(p => new PrismSolid(p, bottom, top))];
        return New(kind, pieces, [.. footprint.Select(p => p.At(0))]) with { Bottom = bottom, Top = top };
    }

    internal static Obstruction New(ObstructionKind kind, IReadOnlyList<Solid> solids, IReadOnlyList<Vector3D> shape) =>
        new() { Name = "", Kind = kind, Solids = solids, Shape = shape };
}
