using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The engineer's values, a row a section, and what they give at a head, step by step; and the loads by row.</summary>
internal sealed class DesignValueSheet
{
    private readonly string _small, _stress, _steel, _perWidth, _barArea, _force, _length;
    private readonly bool _feet;

    public DesignValueSheet(WorkbookInput input)
    {
        _feet = input.IsFeet;
        (_small, _stress, _steel, _perWidth, _barArea, _force, _length) = _feet
            ? ("in", "psi", "ksi", "in2/ft", "in2", "kip", "ft")
            : ("mm", "MPa", "MPa", "mm2/m", "mm2", "kN", "m");
        LayoutEffect effect = input.Quantities.Effect;
        Sheet = SheetHead.Make(input, "Design values", "The engineer's values and what they give at a head", LayoutEffect.Caution);
        Sheet.Put(3, 0, LayoutEffect.Caution, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.Put(4, 0, "Formulas: docs/design-effect.md. Pullout, bar, unit moments: FHWA GEC No. 7 (2015), as transcribed (F2); flexure" + (_feet ? " and punching" : "")
            + ": FHWA-SA-96-069R by a printed calculation (F2); " + (_feet ? "" : "punching, ") + "cones and studs: GEC No. 7 (2003) FROM MEMORY (M): check against the original.", CellStyle.Note);
        Sheet.HeadColumns = 3;
        Sections = new TableBlock<SectionEffect>(Sheet, "DesignValues", 5, effect.Sections, true);
        Layers = EffectSheet.Layers(effect);
        Bonds = BondsOf(effect, Layers);
        General(input);
        Facing("", "Facing", s => s.Section.Design?.Facing ?? new FacingDesign(), s => s.Facing, false);
        Facing("p", "Permanent facing", s => s.Section.Design?.PermanentFacing ?? new FacingDesign(), s => s.PermanentFacing, true);
        Sections.Wrapped("missing", "Not compared", 60, s => string.Join("; ", s.Missing));
        Sections.Fill("design-values");
        (int No, int Row, double? Tension, double? Head)[] rows = [.. effect.Sections.SelectMany(s => Rows(input, s))];
        Loads = new TableBlock<(int No, int Row, double? Tension, double? Head)>(Sheet, "DesignRows", Sections.LastRow + 4, rows, true);
        Loads.Number("no", "Section no.", 9, CellFormat.General, r => r.No)
            .Number("row", "Row", 7, CellFormat.General, r => r.Row)
            .Input("tension", $"T_max at the grid's spacing, {_force}", 11, CellFormat.Two, r => r.Tension)
            .Input("head", $"Head load at the grid's spacing, {_force}", 11, CellFormat.Two, r => r.Head)
            .FormulaText("key", "Key", 9, CellStyle.Note, $"{Loads.This("no")}&\"|\"&{Loads.This("row")}", r => FormattableString.Invariant($"{r.No}|{r.Row}"));
        Loads.Fill("design-rows");
    }

    public SheetContent Sheet { get; }

    public TableBlock<SectionEffect> Sections { get; }

    /// <summary>Loads by section and row.</summary>
    public TableBlock<(int No, int Row, double? Tension, double? Head)> Loads { get; }

    public IReadOnlyList<(string Key, string Head, string Layer)> Layers { get; }

    /// <summary>Soils with a bond each: the layers that holes go through, then what else is tested.</summary>
    public IReadOnlyList<(string Key, string Head, string Layer)> Bonds { get; }

    private static IReadOnlyList<(string Key, string Head, string Layer)> BondsOf(LayoutEffect effect, IReadOnlyList<(string Key, string Head, string Layer)> layers)
    {
        string[] tested = [.. effect.Tests.Select(t => t.Soil).Append("").Distinct().Where(s => layers.All(l => l.Layer != s)).Order(StringComparer.Ordinal)];
        string every = layers.Count == 0 ? "Every soil" : "Any other soil";
        return
        [
            .. layers, .. tested.Select((s, i) => layers.Count + i)
                .Zip(tested, (n, s) => (FormattableString.Invariant($"layer{n}"), s.Length == 0 ? every : FormattableString.Invariant($"Layer {n + 1}, {s}"), s)),
        ];
    }

    /// <summary>Row of the loads that a nail takes: its own, at most the last that is given.</summary>
    public static int RowOf(Nail nail) => Math.Clamp(nail.Row.Whole, 1, Count(nail.Section));

    private static int Count(Section section) => Math.Max(1, Math.Max(section.Design?.MaximumLoads.Count ?? 0, section.Design?.HeadLoads.Count ?? 0));

    private static IEnumerable<(int, int, double?, double?)> Rows(WorkbookInput input, SectionEffect effect) =>
        effect.Section.Design is not { } design ? [] : Enumerable.Range(1, Count(effect.Section)).Select(r => (input.NumberOf(effect.Wall, effect.Section), r, design.MaximumLoadOf(r), design.HeadLoadOf(r)));

    private void General(WorkbookInput input)
    {
        TableBlock<SectionEffect> t = Sections;
        DesignValues? D(SectionEffect s) => s.Section.Design;
        double? Factor(SectionEffect s, LimitState state) => D(s)?.Factors.TryGetValue(state, out double f) == true ? f : null;
        t.Number("no", "Section no.", 9, CellFormat.General, s => input.NumberOf(s.Wall, s.Section))
            .Text("wall", "Wall", 14, s => s.Wall.Name)
            .Text("section", "Section", 9, s => s.Section.Name)
            .Number("h", $"H, {_length}", 8, CellFormat.Three, s => s.Section.HorizontalSpacing)
            .Number("v", $"V, {_length}", 8, CellFormat.Three, s => s.Section.VerticalSpacing)
            .Number("lean", "Batter, deg", 8, CellFormat.General, s => s.Wall.Batter?.Angle ?? 0)
            .Formula("area", $"Design area, {_length}2", 10, CellFormat.Three, $"{t.This("h")}*{t.This("v")}/COS(RADIANS({t.This("lean")}))", s => s.DesignArea)
            .Number("inclination", "Grid inclination, deg", 10, CellFormat.General, s => s.Section.Inclination)
            .Number("hole", $"Hole diameter, {_length}", 9, CellFormat.Four, s => s.Section.HoleDiameter)
            .Text("bar", "Bar", 10, s => s.Section.Bar.ToString())
            .Number("bar_area", $"Bar area, {_barArea}", 9, CellFormat.Three, s => _feet ? s.Section.Bar.AreaSquareInches : s.Section.Bar.AreaSquareMillimetres)
            .Input("bar_yield", $"Bar yield, {_steel}", 9, CellFormat.Three, s => D(s)?.BarYield ?? s.Section.Bar.Grade * (_feet ? 1 : 6.894757293168361))
            .Formula("bar_tension", $"Bar tension R_T, {_force}", 10, CellFormat.Three, $"{t.This("bar_area")}*{t.This("bar_yield")}{(_feet ? "" : "/1000")}", s => s.BarTension)
            .Text("method", "Method", 9, s => D(s)?.Method switch { null => "", DesignMethod.Lrfd => "LRFD", DesignMethod.Asd => "ASD", _ => "nominal" })
            .Input("load_factor", "Load factor", 8, CellFormat.General, s => D(s)?.LoadFactor);
        foreach ((string key, string name, LimitState state) in Factors)
        {
            t.Input("f_" + key, $"Factor, {name}", 9, CellFormat.General, s => Factor(s, state))
                .Formula("on_" + key, $"R times, {name}", 9, CellFormat.Four,
                    $"IF({t.This("method")}=\"LRFD\",IF(COUNT({t.This("load_factor")},{t.This("f_" + key)})<2,\"\",{t.This("f_" + key)}),IF({t.This("method")}=\"ASD\",IF({t.This("f_" + key)}=\"\",\"\",1/{t.This("f_" + key)}),1))",
                    s => On(D(s), state));
        }
        t.Formula("times_load", "Load times", 8, CellFormat.General, $"IF({t.This("method")}=\"LRFD\",{t.This("load_factor")}+0,1)", s => D(s)?.Method == DesignMethod.Lrfd ? D(s)!.LoadFactor ?? 0 : 1)
            .Input("asked", "Ratio asked for", 8, CellFormat.General, s => D(s)?.LeastRatio)
            .Input("share", "Area share that warns", 8, CellFormat.General, s => D(s)?.AreaShare)
            .Input("service_factor", "F_F", 7, CellFormat.General, s => D(s)?.ServiceLoad?.Factor)
            .Input("service_active", "K_A", 7, CellFormat.General, s => D(s)?.ServiceLoad?.ActivePressure)
            .Input("service_weight", _feet ? "Unit weight, pcf" : "Unit weight, kN/m3", 9, CellFormat.General, s => D(s)?.ServiceLoad?.UnitWeight)
            .Input("service_height", $"Height, {_length}", 8, CellFormat.General, s => D(s)?.ServiceLoad?.Height)
            .Formula("service", $"Service head load, {_force}", 10, CellFormat.Three,
                Given($"{t.This("service_factor")}*{t.This("service_active")}*{t.This("service_weight")}{(_feet ? "/1000" : "")}*{t.This("service_height")}*{t.This("h")}*{t.This("v")}",
                    t.This("service_factor"), t.This("service_active"), t.This("service_weight"), t.This("service_height")), s => s.ServiceHeadLoad);
        foreach ((string key, string head, string layer) in Bonds)
        {
            t.Input("q_" + key, $"q_u {head}, {(_feet ? "psi" : "kPa")}", 10, CellFormat.General, s => layer.Length == 0 ? D(s)?.Bond : D(s)?.BondIn(layer))
                .Formula("r_" + key, $"r_PO {head}, {_force}/{_length}", 10, CellFormat.Four,
                    Given($"PI()*{t.This("q_" + key)}*{t.This("hole")}{(_feet ? "*12*12/1000" : "")}", t.This("q_" + key)), s => s.PulloutByLayer.TryGetValue(layer, out double r) ? r : null);
        }
    }

    public static IReadOnlyList<(string Key, string Name, LimitState State)> Factors { get; } =
    [
        ("pullout", "pullout", LimitState.Pullout), ("bar", "bar", LimitState.Bar), ("flexure", "flexure", LimitState.Flexure), ("punching", "punching", LimitState.Punching),
        ("studs", "studs", LimitState.Studs),
    ];

    /// <summary>What a resistance is multiplied by.</summary>
    private static double? On(DesignValues? design, LimitState state)
    {
        double? given = design?.Factors.TryGetValue(state, out double f) == true ? f : null;
        return design?.Method switch
        {
            DesignMethod.Lrfd => design.LoadFactor is null ? null : given,
            DesignMethod.Asd => 1 / given,
            _ => 1,
        };
    }

    private void Facing(string p, string name, Func<SectionEffect, FacingDesign> of, Func<SectionEffect, FacingEffect> strength, bool isPermanent)
    {
        TableBlock<SectionEffect> t = Sections;
        string This(string key) => t.This(p + key);
        string small = _feet ? "12" : "1000", concrete = _feet ? "/1000" : "", down = _feet ? "" : "/1000";
        DesignValues? D(SectionEffect s) => s.Section.Design;
        if (!isPermanent)
            t.Input("thickness", $"{name}, thickness, {_length}", 9, CellFormat.Four, s => of(s).Thickness);
        t.Input(p + "concrete", $"{name}, f'c, {_stress}", 9, CellFormat.General, s => of(s).ConcreteStrength)
            .Input(p + "depth", $"{name}, depth to steel, {_length}", 9, CellFormat.Four, s => of(s).SteelDepth)
            .Input(p + "mesh", $"{name}, mesh, {_perWidth}", 9, CellFormat.Four, s => of(s).Mesh)
            .Input(p + "mesh_yield", $"{name}, mesh yield, {_steel}", 9, CellFormat.General, s => of(s).MeshYield)
            .Input(p + "waler", $"{name}, waler bars, {_barArea}", 9, CellFormat.Four, s => of(s).Walers?.Area)
            .Input(p + "bearing", $"{name}, bearing bars, {_barArea}", 9, CellFormat.Four, s => of(s).BearingBars?.Area)
            .Input(p + "bars_yield", $"{name}, yield of these bars, {_steel}", 9, CellFormat.General, s => of(s).BarYield)
            .Input(p + "factor", $"{name}, C_F", 7, CellFormat.General, s => of(s).PressureFactor)
            .Input(p + "soil", $"{name}, C_S", 7, CellFormat.General, s => of(s).SoilReaction);
        string unit = _feet ? "kip-in/in" : "kN-m/m";
        string Moment(string steel) => $"{steel}*{This("mesh_yield")}*({This("depth")}*{small}-{steel}*{This("mesh_yield")}/(1.7*{This("concrete")}{concrete})){down}";
        string mesh = $"({This("mesh")}/{small})";
        string Both(string bars, string spacing)
        {
            string with = $"({mesh}+{This("bars_yield")}/{This("mesh_yield")}*{This(bars)}/({t.This(spacing)}*{small}))";
            string all = Given($"IF({This(bars)}=\"\",{Moment(mesh)},IF({This("bars_yield")}=\"\",\"\",{Moment(with)}))+{Moment(mesh)}", This("mesh"), This("mesh_yield"), This("depth"), This("concrete"));
            return all;
        }
        t.Formula(p + "vertical", $"{name}, m_neg + m_pos of vertical steel, {unit}", 12, CellFormat.Four, Both("bearing", "h"), s => strength(s).VerticalMoments)
            .Formula(p + "horizontal", $"{name}, m_neg + m_pos of horizontal steel, {unit}", 12, CellFormat.Four, Both("waler", "v"), s => strength(s).HorizontalMoments);
        if (isPermanent)
        {
            t.Input("plate_thickness", $"Plate thickness, {_length}", 9, CellFormat.Four, s => D(s)?.PlateThickness)
                .Input("stud_count", "Studs", 7, CellFormat.General, s => D(s)?.Studs?.Count)
                .Input("stud_area", $"Stud area, {_barArea}", 9, CellFormat.Four, s => D(s)?.Studs?.Area)
                .Input("stud_length", $"Stud length, {_length}", 9, CellFormat.Four, s => D(s)?.Studs?.Length)
                .Input("stud_head", $"Stud head thickness, {_length}", 9, CellFormat.Four, s => D(s)?.Studs?.HeadThickness)
                .Input("stud_spacing", $"Stud spacing, {_length}", 9, CellFormat.Four, s => D(s)?.Studs?.Spacing)
                .Input("stud_yield", $"Stud yield, {_steel}", 9, CellFormat.General, s => D(s)?.Studs?.Yield)
                .Formula("stud_tension", $"Stud tension (M), {_force}", 10, CellFormat.Three,
                    Given($"{t.This("stud_count")}*{t.This("stud_area")}*{t.This("stud_yield")}{down}", t.This("stud_count"), t.This("stud_area"), t.This("stud_yield")), s => s.Studs)
                .Formula("pcone_depth", $"{name}, h_c (M), {_length}", 9, CellFormat.Four,
                    Given($"{t.This("stud_length")}-{t.This("stud_head")}+{t.This("plate_thickness")}", t.This("stud_length"), t.This("stud_head"), t.This("plate_thickness"), t.This("stud_spacing")), s => strength(s).ConeDepth)
                .Formula("pcone", $"{name}, D'c (M), {_length}", 9, CellFormat.Four,
                    $"IF({t.This("pcone_depth")}=\"\",\"\",MIN({t.This("stud_spacing")}+{t.This("pcone_depth")},2*{t.This("pcone_depth")}))", s => strength(s).ConeDiameter);
        }
        else
        {
            t.Input("plate", $"Plate width, {_length}", 9, CellFormat.Four, s => D(s)?.PlateWidth)
                .Formula("cone_depth", $"{name}, h_c (M), {_length}", 9, CellFormat.Four, Given(t.This("thickness") + "+0", t.This("thickness"), t.This("plate")), s => strength(s).ConeDepth)
                .Formula("cone", $"{name}, D'c (M), {_length}", 9, CellFormat.Four, Given($"{t.This("plate")}+{t.This("thickness")}", t.This("thickness"), t.This("plate")), s => strength(s).ConeDiameter);
        }
        string punching = _feet
            ? $"4*SQRT({This("concrete")})*PI()*{This("cone")}*12*{This("cone_depth")}*12/1000"
            : $"330*SQRT({This("concrete")})*PI()*{This("cone")}*{This("cone_depth")}";
        string coneArea = $"PI()/4*({This("cone")}+{This("cone_depth")})^2", grout = $"PI()/4*{t.This("hole")}^2", area = $"{t.This("h")}*{t.This("v")}";
        string reaction = $"{This("soil")}*({coneArea}-{grout})";
        t.Formula(p + "plain", $"{name}, punching{(_feet ? "" : " (M)")}, {_force}", 10, CellFormat.Three, Given(punching, This("concrete"), This("cone")), s => strength(s).Punching)
            .Formula(p + "punching", $"{name}, punching with the soil's reaction, {_force}", 10, CellFormat.Three,
                $"IF({This("plain")}=\"\",\"\",IF({This("soil")}=\"\",{This("plain")},IF({reaction}<{area}-{grout},{This("plain")}/(1-{reaction}/({area}-{grout})),\"\")))", s => strength(s).PunchingWithSoil);
    }

    /// <summary>A formula that is empty where one of its inputs is.</summary>
    private static string Given(string formula, params string[] inputs) => FormattableString.Invariant($"IF(COUNT({string.Join(",", inputs)})<{inputs.Length},\"\",{formula})");
}
