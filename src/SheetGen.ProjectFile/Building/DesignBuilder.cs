using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>The engineer's values of a section.</summary>
internal sealed class DesignBuilder(LengthUnit unit, ProblemList problems)
{
    private static readonly (string Key, LimitState[] States)[] FactorKeys =
    [
        ("pullout", [LimitState.Pullout]),
        ("bar", [LimitState.Bar]),
        ("flexure", [LimitState.Flexure, LimitState.PermanentFlexure]),
        ("punching", [LimitState.Punching, LimitState.PermanentPunching]),
        ("studs", [LimitState.Studs]),
    ];

    public DesignValues? Build(MapItem section)
    {
        if (section.Map("design") is not { } map)
            return null;
        DesignMethod method = map.Text("method") switch
        {
            "LRFD" => DesignMethod.Lrfd,
            "ASD" => DesignMethod.Asd,
            _ => DesignMethod.Nominal,
        };
        CheckMethod(map, method);
        return new DesignValues
        {
            MaximumLoads = Numbers(map, "t_max"),
            HeadLoads = Numbers(map, "head_load"),
            ServiceLoad = Service(map.Map("service_load")),
            Method = method,
            LoadFactor = map.Number("load_factor"),
            Factors = Factors(map.Map("factors")),
            Bond = map.Number("bond"),
            BondByLayer = ByName(map.Map("bond_by_layer")),
            Surfaces = [.. map.Maps("slip_surface").Select(Surface).OfType<SlipSurface>()],
            BarYield = map.Number("bar_yield"),
            Facing = Facing(map.Map("facing")),
            PermanentFacing = Facing(map.Map("permanent_facing")),
            PlateWidth = map.Map("plate")?.Number("width"),
            PlateThickness = map.Map("plate")?.Number("thickness"),
            Studs = Studs(map.Map("studs")),
            LeastRatio = map.Number("least_ratio"),
            AreaShare = map.Number("area_share"),
        };
    }

    /// <summary>Warns of bond strengths for layers that no boring has.</summary>
    public static void CheckLayers(MapItem root, IReadOnlyList<Boring> borings, ProblemList problems)
    {
        string[] layers = [.. borings.SelectMany(b => b.Layers).Select(l => l.Name).Distinct()];
        var told = new HashSet<SourceSpot>();
        foreach (MapItem byLayer in root.Maps("walls").SelectMany(w => w.Maps("sections")).Select(s => s.Map("design")?.Map("bond_by_layer")).OfType<MapItem>())
        {
            foreach ((string layer, SourceSpot spot) in byLayer.Keys.Where(k => !layers.Contains(k.Key) && told.Add(k.Value)))
                problems.Add(ProblemCodes.BondLayer, spot, $"no boring has a layer \"{Shown.Short(layer)}\"", Suggestion.Nearest(layer, layers) is { } near ? $"did you mean \"{near}\"?" : layers.Length == 0 ? "there are no layers in borings: give bond for every soil" : "the borings have " + string.Join(", ", layers.Select(Shown.Short)));
        }
    }

    private void CheckMethod(MapItem map, DesignMethod method)
    {
        if (method != DesignMethod.Lrfd && map.Gives("load_factor") && !map.IsFaulty("method"))
            problems.Add(ProblemCodes.DesignMethod, map.SpotOf("load_factor"), "\"load_factor\" belongs to LRFD", method == DesignMethod.Asd ? "leave it out: ASD divides resistances by safety factors only" : "add method: LRFD");
        if (method == DesignMethod.Nominal && map.Map("factors") is { } unused && !map.IsFaulty("method"))
            problems.Add(ProblemCodes.DesignMethod, unused.Spot, "\"factors\" say nothing without \"method\"", "add method: LRFD, or method: ASD");
        if (map.Map("factors") is not { } factors)
            return;
        foreach ((string key, _) in FactorKeys)
        {
            if (factors.Number(key) is not { } value)
                continue;
            if (method == DesignMethod.Lrfd && value > 1)
                problems.Add(ProblemCodes.DesignMethod, factors.SpotOf(key), FormattableString.Invariant($"a resistance factor of {value} is over 1"), "LRFD takes resistance factors up to 1, ASD safety factors from 1");
            if (method == DesignMethod.Asd && value < 1)
                problems.Add(ProblemCodes.DesignMethod, factors.SpotOf(key), FormattableString.Invariant($"a safety factor of {value} is under 1"), "ASD takes safety factors from 1, LRFD resistance factors up to 1");
        }
    }

    private SlipSurface? Surface(MapItem map, int index)
    {
        string name = map.Text("name") ?? FormattableString.Invariant($"{index + 1}");
        if (map.Gives("points") == map.Gives("angle"))
        {
            problems.Add(ProblemCodes.ExactlyOne, map.Spot, "a slip surface takes exactly one of points, angle", map.Gives("points") ? "keep one of them" : "give one of them");
            return null;
        }
        if (map.Number("angle") is { } angle)
            return new SlipSurface(name, [], angle);
        if (map.List("points") is not { Faulty: false } list)
            return null;
        var points = new List<SurfacePoint>();
        foreach (MapItem point in list.Maps)
        {
            if (point.Number("behind") is not { } behind || point.Number("elevation") is not { } elevation)
                return null;
            if (points.Count > 0 && (elevation < points[^1].Elevation || (elevation == points[^1].Elevation && behind == points[^1].Behind)))
            {
                problems.Add(ProblemCodes.SurfaceOrder, point.Spot, FormattableString.Invariant($"the slip surface goes from elevation {points[^1].Elevation} to {elevation}"), "give its points from the lowest up, each once");
                return null;
            }
            points.Add(new SurfacePoint(behind, elevation));
        }
        return new SlipSurface(name, points, null);
    }

    private FacingDesign Facing(MapItem? map) => map is null ? new FacingDesign() : new FacingDesign
    {
        Thickness = map.Number("thickness"),
        ConcreteStrength = map.Number("concrete_strength"),
        SteelDepth = map.Number("steel_depth"),
        Mesh = map.Number("mesh"),
        MeshYield = map.Number("mesh_yield"),
        Walers = Bars(map.Map("waler_bars")),
        BearingBars = Bars(map.Map("bearing_bars")),
        BarYield = map.Number("bar_yield"),
        PressureFactor = map.Number("pressure_factor"),
        SoilReaction = map.Number("soil_reaction"),
    };

    private FacingBars? Bars(MapItem? map)
    {
        if (map?.Text("size") is not { } size || map.Number("count") is not { } count)
            return null;
        if (BarTable.Find(size, 0) is { } bar)
            return new((int)count, bar, count * (Lengths.IsFoot(unit) ? bar.AreaSquareInches : bar.AreaSquareMillimetres));
        problems.Add(ProblemCodes.UnknownBar, map.SpotOf("size"), $"there is no bar \"{Shown.Short(size)}\"", "one of " + string.Join(", ", BarTable.All.Select(b => b.Size)));
        return null;
    }

    private HeadStuds? Studs(MapItem? map)
    {
        if (map?.Number("count") is not { } count || map.Number("diameter") is not { } diameter)
            return null;
        double small = diameter * (Lengths.IsFoot(unit) ? 12 : 1000);
        return new HeadStuds(
            (int)count, diameter, map.Number("area") ?? Math.PI / 4 * small * small, map.Number("length"), map.Number("head_diameter"),
            map.Number("head_thickness"), map.Number("spacing"), map.Number("yield"));
    }

    private static ServiceLoad? Service(MapItem? map) =>
        map?.Number("factor") is { } factor && map.Number("active_pressure") is { } active && map.Number("unit_weight") is { } weight && map.Number("height") is { } height
            ? new ServiceLoad(factor, active, weight, height)
            : null;

    private static Dictionary<LimitState, double> Factors(MapItem? map)
    {
        var factors = new Dictionary<LimitState, double>();
        foreach ((string key, LimitState[] states) in FactorKeys)
        {
            if (map?.Number(key) is not { } value)
                continue;
            foreach (LimitState state in states)
                factors[state] = value;
        }
        return factors;
    }

    private static double[] Numbers(MapItem map, string key) => [.. map.List(key)?.Numbers.Select(n => n.Value) ?? []];

    private static Dictionary<string, double> ByName(MapItem? map) =>
        (map?.Keys.Keys ?? []).Where(k => map!.Number(k) is not null).ToDictionary(k => k, k => map!.Number(k)!.Value);
}
