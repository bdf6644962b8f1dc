using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Resistance of a facing at the design's spacing, step by step, as far as the engineer's values go.</summary>
internal static class HeadStrength
{
    private const double InchesPerFoot = 12, MillimetresPerMetre = 1000;

    /// <param name="cone">D'c and h_c in project units; null where they are not known.</param>
    public static FacingEffect Of(FacingDesign facing, Section section, (double Diameter, double Depth)? cone, bool feet)
    {
        double? punching = cone is { } c && facing.ConcreteStrength is { } strength
            ? feet
                ? FacingStrength.Punching(strength, c.Diameter * InchesPerFoot, c.Depth * InchesPerFoot)
                : FacingStrength.PunchingMetric2003(strength, c.Diameter, c.Depth)
            : null;
        return new FacingEffect(
            Moments(facing, facing.BearingBars?.Area, section.HorizontalSpacing, feet), Moments(facing, facing.Walers?.Area, section.VerticalSpacing, feet),
            cone?.Diameter, cone?.Depth, punching, punching is { } plain ? WithSoil(plain, facing, section, cone!.Value) : null);
    }

    /// <summary>m_neg (mesh and bars) + m_pos (mesh), kip-in/in or kN-m/m.</summary>
    /// <param name="bars">Area of the bars in this direction; null where there are none.</param>
    /// <param name="spacing">How far apart the bars' groups are.</param>
    private static double? Moments(FacingDesign facing, double? bars, double spacing, bool feet)
    {
        if (facing is not { Mesh: { } mesh, MeshYield: { } yield, SteelDepth: { } depth, ConcreteStrength: { } concrete } || (bars is not null && facing.BarYield is null))
            return null;
        double small = feet ? InchesPerFoot : MillimetresPerMetre;
        double perWidth = mesh / small, strength = feet ? concrete / 1000 : concrete;
        double negative = bars is { } area ? FacingStrength.EquivalentSteel(perWidth, yield, area, facing.BarYield!.Value, spacing * small) : perWidth;
        double sum = FacingStrength.UnitMoment(negative, yield, depth * small, strength) + FacingStrength.UnitMoment(perWidth, yield, depth * small, strength);
        return feet ? sum : sum / 1000;
    }

    private static double? WithSoil(double punching, FacingDesign facing, Section section, (double Diameter, double Depth) cone)
    {
        if (facing.SoilReaction is not { } factor)
            return punching;
        double wide = cone.Diameter + cone.Depth, area = section.HorizontalSpacing * section.VerticalSpacing;
        double coneArea = Math.PI / 4 * wide * wide, grout = Math.PI / 4 * section.HoleDiameter * section.HoleDiameter;
        // Where the soil would bear all of the load the formula has no meaning.
        return factor * (coneArea - grout) < area - grout ? FacingStrength.WithSoilReaction(punching, factor, coneArea, grout, area) : null;
    }
}
