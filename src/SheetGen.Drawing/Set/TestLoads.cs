using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>Loads of test nails, as the project file gives them or the take-off finds them.</summary>
public static class TestLoads
{
    /// <summary>The load of a test of a section in words; null where it is not given.</summary>
    public static string? Of(DrawingContext context, bool isProof, TestPlan plan) =>
        context.Stated(isProof ? "proof_load" : "verification_load") ?? Computed(context, isProof, plan);

    /// <summary>The load that the take-off finds from bond and bonded length, in words, from the least to the greatest where it differs by soil; null where the project gives no bond.</summary>
    public static string? Computed(DrawingContext context, bool isProof, TestPlan plan)
    {
        double[] loads = [.. Found(context, isProof, plan).Select(t => t.Load).Order()];
        if (loads.Length == 0)
            return null;
        string least = Printed.Fixed(loads[0], 1), most = Printed.Fixed(loads[^1], 1);
        return context.Say(Lengths.IsFoot(context.Print.Unit) ? Phrase.ForceKip : Phrase.ForceKilonewton, least == most ? least : $"{least} - {most}");
    }

    /// <summary>What the take-off finds of the tests of a section.</summary>
    internal static IEnumerable<SoilTest> Found(DrawingContext context, bool isProof, TestPlan plan) =>
        context.Quantities.Effect.Tests.Where(t => t.IsProof == isProof && t.Wall == plan.Wall && t.Section == plan.Section);

    /// <summary>The load of a test nail; null where it is not given.</summary>
    public static string? Of(DrawingContext context, Nail nail) =>
        context.TestsOf(nail.Wall, nail.Section) is TestPlan plan
            ? Of(context, nail.Kind == NailKind.Proof, plan)
            : null;
}
