using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>Free and bonded length of a nail that is tested, as the test nails' table and their detail print them.</summary>
/// <param name="Free">As the rates give it, project units; null where they do not.</param>
/// <param name="Bonded">As the rates give it or the take-off finds it; null where there is none, or several by soil.</param>
/// <param name="BondedWords">The bonded length in words, from the least to the greatest where it differs by soil; null where there is none.</param>
public sealed record TestLengths(double? Free, double? Bonded, string? BondedWords)
{
    public static TestLengths Of(DrawingContext context, Nail nail) =>
        Of(context, nail.Kind == NailKind.Proof, context.TestsOf(nail.Wall, nail.Section)!);

    public static TestLengths Of(DrawingContext context, bool isProof, TestPlan plan)
    {
        double? free = isProof ? context.Project.Rates.ProofFreeLength : context.Project.Rates.TestFreeLength;
        double[] bonded = [.. TestLoads.Found(context, isProof, plan).Select(t => Math.Round(t.Bonded, 2)).Distinct()];
        if (bonded.Length == 0 && !isProof && context.Project.Rates.TestBondedLength is double given)
            bonded = [given];
        return bonded.Length switch
        {
            0 => new(free, null, null),
            1 => new(free, bonded[0], context.Print.Short(bonded[0])),
            _ => new(free, null, $"{context.Print.Short(bonded.Min())} - {context.Print.Short(bonded.Max())}"),
        };
    }

    /// <summary>True where both are known and make up the length of the nail.</summary>
    public bool AddUpTo(double length) => Free + Bonded is double sum && Math.Abs(sum - length) < 0.01;
}
