namespace SheetGen.Model.Results;

/// <summary>Test nails of a section, with lengths and loads where the design bond is given. Forces in kip (feet) or kN (metres).</summary>
/// <param name="Asked">Number of verification test nails that the project asks for.</param>
/// <param name="Verification">Number of verification test nails that found a place.</param>
/// <param name="Proof">Number of proof tests.</param>
/// <param name="BondCap">Longest bonded length that the bar can test: 0.9 A fy / bond (0.8 A fu for grade 150).</param>
/// <param name="BondedLength">Bonded length of a test nail.</param>
/// <param name="FreeLength">Free length of a test nail; null where not given.</param>
/// <param name="TestLoad">Maximum test load: bond times bonded length.</param>
/// <param name="BarLimit">Greatest load on the bar in a test.</param>
public sealed record TestPlan(
    Wall Wall, Section Section, int Asked, int Verification, IReadOnlyList<string> VerificationMarks, int Proof, IReadOnlyList<string> ProofMarks,
    double? BondCap, double? BondedLength, double? FreeLength, double? TestLoad, double BarLimit, string Note);
