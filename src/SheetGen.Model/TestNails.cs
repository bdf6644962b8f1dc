namespace SheetGen.Model;

/// <summary>Test nails of a section.</summary>
/// <param name="Verification">Number of sacrificial verification test nails.</param>
/// <param name="ProofShare">Share of the production nails to be proof tested, 0 to 1; the number is rounded up.</param>
/// <param name="SpreadProofMarks">True where the project asks for evenly spread marks; else the engineer chooses in the field.</param>
/// <param name="VerificationPerWall">True where the number of verification nails stands for the whole wall.</param>
public sealed record TestNails(int Verification, double ProofShare, bool SpreadProofMarks, bool VerificationPerWall)
{
    public static TestNails None { get; } = new(0, 0, false, false);
}
