namespace SheetGen.Model.Results;

/// <summary>
/// Load test of a nail in one soil: loads from bond and bonded length, after FHWA GEC No. 7 (2015), eq. 9.1 to 9.8, as transcribed.
/// </summary>
/// <param name="IsProof">True for a proof test, false for a verification test.</param>
/// <param name="Soil">Soil layer; empty for every soil.</param>
/// <param name="Pullout">Nominal pullout per length.</param>
/// <param name="BarLimit">Greatest load on the bar: 0.9 A f_y (0.8 A f_u for grade 150).</param>
/// <param name="Cap">Longest bonded length that the bar can test.</param>
/// <param name="Bonded">Bonded length: as given, at most the cap and, for a proof test, 10 ft; without a given length 10 ft or the cap.</param>
/// <param name="Load">Test load: pullout per length times bonded length.</param>
/// <param name="Free">Free length; null where not given.</param>
/// <param name="Stretch">Elastic stretch of the free length under the test load, in or mm; null where the free length is not given.</param>
/// <param name="LeastStretch">The part of it that the head must move at least, 80 %.</param>
public sealed record SoilTest(
    Wall Wall, Section Section, bool IsProof, string Soil, double Pullout, double BarLimit, double Cap, double Bonded, double Load,
    double? Free, double? Stretch, double? LeastStretch);
