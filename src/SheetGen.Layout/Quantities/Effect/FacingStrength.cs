using SheetGen.Layout.Rows;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>
/// Resistances of a facing at a nail's head. Where a formula has coefficients of its own for feet and for metres, both stand here as
/// published, and neither is converted into the other. Confidence: F2 read in a transcription of the source, M from memory.
/// </summary>
internal static class FacingStrength
{
    /// <summary>
    /// Unit moment a_s f_y (d - a_s f_y / (1.7 f'c)) (GEC No. 7, 2015, eq. 5.29 with d = h/2, and FHWA-SA-96-069R; F2), in units that go
    /// together: in2/in, ksi, in give kip-in/in; mm2/mm, MPa, mm give N.
    /// </summary>
    /// <param name="steel">Steel per width.</param>
    /// <param name="depth">From the compressed side to the steel.</param>
    public static double UnitMoment(double steel, double yield, double depth, double concrete) =>
        steel * yield * (depth - steel * yield / (1.7 * concrete));

    /// <summary>Steel of mesh and bars as mesh: a_mesh + (f_yR / f_yW) A_sR / S (GEC No. 7, 2015, eq. 5.26 to 5.28, read as one division by S; F2).</summary>
    public static double EquivalentSteel(double mesh, double meshYield, double barArea, double barYield, double spacing) =>
        mesh + barYield / meshYield * barArea / spacing;

    /// <summary>
    /// Flexure, C_F (m_neg + m_pos) 8 S_H / S_V (FHWA-SA-96-069R, by a printed calculation; F2), in the moments' unit. With the horizontal
    /// steel's moments the spacings change places.
    /// </summary>
    public static double Flexure(double pressureFactor, double moments, double along, double across) =>
        pressureFactor * moments * 8 * along / across;

    /// <summary>Flexure, 3.8 C_F (a_n + a_m) (S h / S') f_y (GEC No. 7, 2003, ch. 5; M), kip.</summary>
    /// <param name="steel">a_n + a_m, in2/ft.</param>
    /// <param name="thickness">h, ft.</param>
    /// <param name="yield">ksi.</param>
    public static double FlexureCustomary2003(double pressureFactor, double steel, double along, double across, double thickness, double yield) =>
        3.8 * pressureFactor * steel * (along * thickness / across) * yield;

    /// <summary>Flexure, (C_F / 265) (a_n + a_m) (S h / S') f_y (GEC No. 7, 2003, ch. 5; M), kN.</summary>
    /// <param name="steel">a_n + a_m, mm2/m.</param>
    /// <param name="thickness">h, m.</param>
    /// <param name="yield">MPa.</param>
    public static double FlexureMetric2003(double pressureFactor, double steel, double along, double across, double thickness, double yield) =>
        pressureFactor / 265 * steel * (along * thickness / across) * yield;

    /// <summary>Punching, 4 sqrt(f'c) pi D'c h_c (FHWA-SA-96-069R, by a printed calculation; F2), kip.</summary>
    /// <param name="concrete">psi.</param>
    /// <param name="diameter">D'c, in.</param>
    /// <param name="depth">h_c, in.</param>
    public static double Punching(double concrete, double diameter, double depth) =>
        4 * Math.Sqrt(concrete) * Math.PI * diameter * depth / 1000;

    /// <summary>Punching, 0.58 sqrt(f'c) pi D'c h_c (GEC No. 7, 2003, ch. 5; M), kip.</summary>
    /// <param name="concrete">psi.</param>
    /// <param name="diameter">D'c, ft.</param>
    /// <param name="depth">h_c, ft.</param>
    public static double PunchingCustomary2003(double concrete, double diameter, double depth) =>
        0.58 * Math.Sqrt(concrete) * Math.PI * diameter * depth;

    /// <summary>Punching, 330 sqrt(f'c) pi D'c h_c (GEC No. 7, 2003, ch. 5; M), kN.</summary>
    /// <param name="concrete">MPa.</param>
    /// <param name="diameter">D'c, m.</param>
    /// <param name="depth">h_c, m.</param>
    public static double PunchingMetric2003(double concrete, double diameter, double depth) =>
        330 * Math.Sqrt(concrete) * Math.PI * diameter * depth;

    /// <summary>
    /// Punching with the soil's reaction under the head, V / (1 - C_S (A_C - A_GC) / (S_V S_H - A_GC)) (FHWA-SA-96-069R, by a printed
    /// calculation; F2).
    /// </summary>
    /// <param name="coneArea">A_C, the cone's base, of diameter D'c + h_c.</param>
    /// <param name="groutArea">A_GC, the grout column's cross section.</param>
    /// <param name="area">S_V S_H, in the unit of the other areas.</param>
    public static double WithSoilReaction(double punching, double factor, double coneArea, double groutArea, double area) =>
        punching / (1 - factor * (coneArea - groutArea) / (area - groutArea));

    /// <summary>D'c and h_c of a bearing plate: plate width + thickness of the facing, and that thickness (GEC No. 7, 2003, ch. 5; M).</summary>
    public static (double Diameter, double Depth) PlateCone(double plateWidth, double thickness) => (plateWidth + thickness, thickness);

    /// <summary>
    /// D'c and h_c of headed studs: h_c = stud length - head thickness + plate thickness, D'c = min(spacing + h_c, 2 h_c) (GEC No. 7, 2003,
    /// ch. 5; M).
    /// </summary>
    public static (double Diameter, double Depth) StudCone(double length, double headThickness, double plateThickness, double spacing)
    {
        double depth = length - headThickness + plateThickness;
        return (Math.Min(spacing + depth, 2 * depth), depth);
    }

    /// <summary>Tension of the studs, N A f_y (GEC No. 7, 2003, ch. 5; M), in the unit of area times yield.</summary>
    public static double Studs(int count, double area, double yield) => count * area * yield;

    /// <summary>True where the stud's head is large and thick enough: A_H >= 2.5 A_SH, t_H >= (D_H - D_SH) / 2 (GEC No. 7, 2003, ch. 5; M).</summary>
    public static bool HasFullHead(double diameter, double headDiameter, double headThickness) =>
        headDiameter * headDiameter >= 2.5 * diameter * diameter - Tolerance.Rounding && headThickness >= (headDiameter - diameter) / 2 - Tolerance.Rounding;
}
