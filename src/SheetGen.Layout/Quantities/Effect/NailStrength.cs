namespace SheetGen.Layout.Quantities.Effect;

/// <summary>
/// Loads and resistances of a nail. Where a formula has coefficients of its own for feet and for metres, both stand here as published,
/// and neither is converted into the other. Confidence: F2 read in a transcription of the source, M from memory.
/// </summary>
internal static class NailStrength
{
    /// <summary>Steel's modulus of elasticity in ksi (GEC No. 7, 2015, eq. 9.4; F2).</summary>
    public const double ModulusKsi = 29000;

    /// <summary>The same in MPa: 200 000, the usual metric value (common practice, no source).</summary>
    public const double ModulusMegapascals = 200000;

    /// <summary>Share of the theoretical stretch that a test must exceed (GEC No. 7, 2015, eq. 9.4 and 9.8; F2).</summary>
    public const double StretchShare = 0.8;

    /// <summary>Nominal pullout per length, r_PO = pi q_u D (GEC No. 7, 2015, eq. 6.1; F2), kip/ft.</summary>
    /// <param name="bond">Bond strength, psi.</param>
    /// <param name="diameter">Diameter of the hole, in.</param>
    public static double PulloutPerFoot(double bond, double diameter) => Math.PI * bond * diameter * 12 / 1000;

    /// <summary>Nominal pullout per length, r_PO = pi q_u D (GEC No. 7, 2015, eq. 6.1; F2), kN/m.</summary>
    /// <param name="bond">Bond strength, kPa.</param>
    /// <param name="diameter">Diameter of the hole, m.</param>
    public static double PulloutPerMetre(double bond, double diameter) => Math.PI * bond * diameter;

    /// <summary>Bar tension, R_T = A f_y (GEC No. 7, 2015, eq. 6.5; F2), kip.</summary>
    /// <param name="area">in2.</param>
    /// <param name="yield">ksi.</param>
    public static double BarTension(double area, double yield) => area * yield;

    /// <summary>Bar tension, R_T = A f_y (GEC No. 7, 2015, eq. 6.5; F2), kN.</summary>
    /// <param name="area">mm2.</param>
    /// <param name="yield">MPa.</param>
    public static double BarTensionMetric(double area, double yield) => area * yield / 1000;

    /// <summary>Load of the head as a share of the greatest tension, 0.6 + 0.057 (S - 3) (GEC No. 7, 2015, eq. 5.1; F2).</summary>
    /// <param name="spacing">The greater spacing, ft.</param>
    public static double HeadShareFeet(double spacing) => 0.6 + 0.057 * (spacing - 3);

    /// <summary>Load of the head as a share of the greatest tension, 0.6 + 0.2 (S - 1) (GEC No. 7, 2003, by a second source; F2).</summary>
    /// <param name="spacing">The greater spacing, m.</param>
    public static double HeadShareMetres(double spacing) => 0.6 + 0.2 * (spacing - 1);

    /// <summary>Service load of a head, F_F K_A gamma H S_H S_V (FHWA-SA-96-069R, by a printed calculation; F2), in the weight's unit of force.</summary>
    public static double ServiceHeadLoad(double factor, double activePressure, double unitWeight, double height, double horizontal, double vertical) =>
        factor * activePressure * unitWeight * height * horizontal * vertical;

    /// <summary>Capacity over demand, phi R / (gamma T) (GEC No. 7, 2015, eq. 6.3, 6.4; F2); for ASD phi is 1 / FS and gamma is 1.</summary>
    public static double Ratio(double resistanceFactor, double resistance, double loadFactor, double load) =>
        resistanceFactor * resistance / (loadFactor * load);

    /// <summary>Stretch of a bar over its free length, P L / (E A) (GEC No. 7, 2015, eq. 9.4, 9.8; F2), in the unit of the length.</summary>
    public static double Stretch(double load, double freeLength, double modulus, double area) => load * freeLength / (modulus * area);
}
