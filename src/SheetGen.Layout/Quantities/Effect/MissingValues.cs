using SheetGen.Model;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>What an engineer who gives some values has not given, so that a limit state is not compared: a sentence each.</summary>
internal static class MissingValues
{
    public static IEnumerable<string> Of(SectionStrength strength)
    {
        DesignValues design = strength.Design;
        bool hasTension = design.MaximumLoads.Count > 0, hasHead = hasTension || design.HeadLoads.Count > 0 || design.ServiceLoad is not null;
        string[] Tension() => hasTension ? [] : ["t_max"];
        string[] Head() => hasHead ? [] : ["head_load, t_max or service_load"];
        (string What, LimitState State, string Factor, IEnumerable<string> Lacks)[] states =
        [
            ("pullout", LimitState.Pullout, "pullout",
                [.. Tension(), .. design.Surfaces.Count == 0 ? ["slip_surface"] : Array.Empty<string>(), .. strength.PulloutByLayer.Count == 0 ? ["bond or bond_by_layer"] : Array.Empty<string>()]),
            ("tension of the bar", LimitState.Bar, "bar", Tension()),
            ("flexure of the facing", LimitState.Flexure, "flexure", [.. Head(), .. Flexure(design.Facing, "facing")]),
            ("punching of the facing", LimitState.Punching, "punching",
                [.. Head(), .. Lacking((design.Facing.Thickness, "facing: thickness"), (design.Facing.ConcreteStrength, "facing: concrete_strength"), (design.PlateWidth, "plate: width"))]),
            ("flexure of the permanent facing", LimitState.PermanentFlexure, "flexure", [.. Head(), .. Flexure(design.PermanentFacing, "permanent_facing")]),
            ("punching of the permanent facing", LimitState.PermanentPunching, "punching",
                [.. Head(), .. Lacking((design.PermanentFacing.ConcreteStrength, "permanent_facing: concrete_strength"), (design.PlateThickness, "plate: thickness"),
                    (design.Studs?.Length, "studs: length"), (design.Studs?.HeadThickness, "studs: head_thickness"), (design.Studs?.Spacing, "studs: spacing"))]),
            ("tension of the studs", LimitState.Studs, "studs", [.. Head(), .. Lacking((design.Studs?.Yield, "studs: yield"))]),
        ];
        // Of a permanent facing of which nothing is given nothing is missing.
        bool hasPermanent = design.Studs is not null || design.PermanentFacing != new FacingDesign();
        foreach ((string what, LimitState state, string factor, IEnumerable<string> lacks) in states.Where(s => hasPermanent || s.State < LimitState.PermanentFlexure))
        {
            string[] all = [.. lacks, .. Factors(strength, state, factor)];
            if (all.Length > 0)
                yield return $"{what} is not compared: {string.Join(", ", all)} not given";
        }
        if (design.Studs is { HeadDiameter: { } head, HeadThickness: { } thickness } studs && !FacingStrength.HasFullHead(studs.Diameter, head, thickness))
            yield return "the heads of the studs are smaller or thinner than A_H >= 2.5 A_SH and t_H >= (D_H - D_SH) / 2 ask (GEC No. 7, 2003, from memory)";
    }

    private static IEnumerable<string> Factors(SectionStrength strength, LimitState state, string name)
    {
        if (strength.Design.Method == DesignMethod.Nominal)
            yield break;
        if (strength.Design.Method == DesignMethod.Lrfd && strength.Design.LoadFactor is null)
            yield return "load_factor";
        if (!strength.Design.Factors.ContainsKey(state))
            yield return "factors: " + name;
    }

    private static IEnumerable<string> Flexure(FacingDesign facing, string key) =>
    [
        .. Lacking((facing.Mesh, key + ": mesh"), (facing.MeshYield, key + ": mesh_yield"), (facing.SteelDepth, key + ": steel_depth"),
            (facing.ConcreteStrength, key + ": concrete_strength"), (facing.PressureFactor, key + ": pressure_factor")),
        .. facing.BarYield is null && (facing.Walers ?? facing.BearingBars) is not null ? [key + ": bar_yield"] : Array.Empty<string>(),
    ];

    private static IEnumerable<string> Lacking(params (double? Value, string Key)[] values) => values.Where(v => v.Value is null).Select(v => v.Key);
}
