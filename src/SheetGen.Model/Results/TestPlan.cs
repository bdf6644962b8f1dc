namespace SheetGen.Model.Results;

/// <summary>Number of a section's test nails and which they are; their loads are <see cref="SoilTest"/>.</summary>
/// <param name="Asked">Number of verification test nails that the project asks for.</param>
/// <param name="Verification">Number of verification test nails that found a place.</param>
/// <param name="Proof">Number of proof tests.</param>
public sealed record TestPlan(
    Wall Wall, Section Section, int Asked, int Verification, IReadOnlyList<string> VerificationMarks, int Proof, IReadOnlyList<string> ProofMarks, string Note);
