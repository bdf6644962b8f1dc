using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Keys;

/// <summary>The keys of the engineer's values of a section, by which the layout as drawn is held against the design.</summary>
internal static class DesignKeys
{
    private static readonly ValueRange Load = new(0, false, 1e5);
    private static readonly ValueRange Strength = new(0, false, 1e5);
    private static readonly ValueRange Factor = new(0, false, 10);

    public static Key Block() => Map("design",
        "The engineer's values, all of which may be left out: what a changed layout does to loads and resistances is told as far as they go, and nothing is assumed. See docs/design-effect.md.",
        ByRow("t_max", "Greatest tension of a nail at the grid's spacing (LRFD: before the load factor), by row from the top, the last one repeats; or one value.", "[18, 20]"),
        ByRow("head_load", "Load at the head at the grid's spacing, by row from the top; without it it is made from t_max, or from service_load.", "14 kip"),
        Map("service_load", "What the service load of a head is made from: factor * active_pressure * unit_weight * height * H * V.",
            Number("factor", "F_F, by experience.", Factor, "0.5") with { Required = true },
            Number("active_pressure", "Coefficient of active earth pressure.", Factor, "0.26") with { Required = true },
            Measured("unit_weight", "Unit weight of the soil.", Measure.UnitWeight, new ValueRange(0, false, 1000), "120 pcf") with { Required = true },
            Length("height", "Height of the wall.", ValueRange.Over0, "40") with { Required = true }),
        Choice("method", "LRFD or ASD; without it ratios are nominal resistance over load.", "LRFD", "LRFD", "ASD"),
        Number("load_factor", "Load factor of LRFD.", Factor, "1.35"),
        Map("factors", "Resistance factors (LRFD) or safety factors (ASD); what has none is not compared.",
            Number("pullout", "Pullout.", Factor, "0.65"),
            Number("bar", "Tension of the bar.", Factor, "0.75"),
            Number("flexure", "Flexure of the facing.", Factor, "0.90"),
            Number("punching", "Punching of the facing.", Factor, "0.90"),
            Number("studs", "Tension of the studs.", Factor, "0.70")),
        Measured("bond", "Ultimate bond strength between grout and soil, in every soil.", Measure.Bond, new ValueRange(0, true, 1e5), "15 psi"),
        new Key("bond_by_layer", ValueKind.Names, "Ultimate bond strength by the name of the soil layer in the borings; it goes before bond.")
        {
            Item = Measured("bond", "Bond strength.", Measure.Bond, new ValueRange(0, true, 1e5), "15 psi"),
            Example = "{stiff clay: 8 psi}",
        },
        List("slip_surface", "Slip surfaces, one or several, each by points or by an angle.", 1, Map("slip surface", "A slip surface.",
            Text("name", "Name.", "circle 1"),
            List("points", "From the lowest up: [distance behind the face at the bottom of wall, elevation]; straight between, upright above the last.", 2,
                Map("surface point", "A point of a slip surface, [behind, elevation] for short.",
                    Length("behind", "Horizontal distance behind the face at the bottom of wall.", new ValueRange(-1000, true, 1000), "6") with { Required = true },
                    Elevation("elevation", "Elevation.", "112") with { Required = true }) with
                { Short = ["behind", "elevation"] }) with
            { MaxCount = 200, Example = "[[0, 102], [6, 112], [9, 118]]" },
            Angle("angle", "Degrees above horizontal, from the bottom of wall at the face (the toe).", new ValueRange(0, false, 90), "55"))) with
        { OneAllowed = true, MaxCount = 20, Example = "[{angle: 55}]" },
        Measured("bar_yield", "Yield strength of the bars; left out: the grade of the section's bar.", Measure.Steel, Strength, "75 ksi"),
        Facing("facing", "The temporary facing as the engineer reckons with it."),
        Facing("permanent_facing", "The permanent facing as the engineer reckons with it."),
        Map("plate", "Bearing plate.",
            Length("width", "Width of the square plate.", ValueRange.Over0, "8 in").Usually(0.4, 2, 0.1, 0.6) with { Required = true },
            Length("thickness", "Thickness; needed for studs.", ValueRange.Over0, "0.75 in")),
        Map("studs", "Headed studs on the plate, in the permanent facing.",
            Integer("count", "Number of studs.", new ValueRange(1, true, 100), "4") with { Required = true },
            Length("diameter", "Diameter of a stud.", ValueRange.Over0, "0.5 in") with { Required = true },
            Measured("area", "Cross section of a stud; left out: that of the diameter.", Measure.SteelArea, Strength, "0.196 in2"),
            Length("length", "Length of a stud, head included.", ValueRange.Over0, "4.125 in"),
            Length("head_diameter", "Diameter of the head.", ValueRange.Over0, "1 in"),
            Length("head_thickness", "Thickness of the head.", ValueRange.Over0, "0.3125 in"),
            Length("spacing", "Distance between the studs.", ValueRange.Over0, "6 in"),
            Measured("yield", "Yield strength of the studs.", Measure.Steel, Strength, "60 ksi")),
        Number("least_ratio", "Least ratio of resistance to load, factors included; nails changed by the layout that fall under it are a warning, without it none is.", new ValueRange(0, false, 100), "1.0"),
        Share("area_share", "Share by which a changed nail's area may exceed the design's before it is a warning; without it none is.", new ValueRange(0, true, 10), "15 %"));

    private static Key ByRow(string name, string meaning, string example) =>
        List(name, meaning, 1, Measured("load", "Load.", Measure.Force, Load, "20 kip")) with { OneAllowed = true, MaxCount = 100, Example = example };

    private static Key Facing(string name, string meaning) => Map(name, meaning,
        Length("thickness", "Thickness.", ValueRange.Over0, "4 in").Usually(0.16, 3, 0.05, 0.9),
        Measured("concrete_strength", "Strength of the concrete, f'c.", Measure.Concrete, Strength, "4000 psi"),
        Length("steel_depth", "Depth from the compressed side to the steel.", ValueRange.Over0, "2 in"),
        Measured("mesh", "Mesh each way, steel per width.", Measure.SteelPerWidth, Strength, "0.087 in2/ft"),
        Measured("mesh_yield", "Yield strength of the mesh.", Measure.Steel, Strength, "60 ksi"),
        Bars("waler_bars", "Horizontal waler bars at a row."),
        Bars("bearing_bars", "Vertical bearing bars at a head."),
        Measured("bar_yield", "Yield strength of waler and bearing bars.", Measure.Steel, Strength, "60 ksi"),
        Number("pressure_factor", "C_F; GEC No. 7 (2003), from memory: temporary facing 2.0, 1.5, 1.0 at 4, 6, 8 in (100, 150, 200 mm), permanent 1.0.", Factor, "2.0"),
        Number("soil_reaction", "C_S, the soil's reaction under the head in punching; left out: not counted.", Factor, "2.5"));

    private static Key Bars(string name, string meaning) => Map(name, meaning,
        Text("size", "Size by number, in quotes.", "\"#4\"") with { Required = true },
        Integer("count", "Number of bars.", new ValueRange(1, true, 20), "2") with { Required = true });
}
