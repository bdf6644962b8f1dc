using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>Loads of test nails, as the project file gives them or the take-off finds them.</summary>
public static class TestLoads
{
    /// <summary>The load of a test of a section in words; null where it is not given.</summary>
    public static string? Of(DrawingContext context, bool isProof, TestPlan plan)
    {
        if (context.Project.Info.Facts.TryGetValue(isProof ? "proof_load" : "verification_load", out string? words) && words.Length > 0)
            return words.ToUpperInvariant();
        return !isProof && plan.TestLoad is double load
            ? context.Say(Lengths.IsFoot(context.Print.Unit) ? Phrase.ForceKip : Phrase.ForceKilonewton, Printed.Fixed(load, 1))
            : null;
    }

    /// <summary>The load of a test nail; null where it is not given.</summary>
    public static string? Of(DrawingContext context, Nail nail) =>
        context.Quantities.Tests.FirstOrDefault(t => t.Wall == nail.Wall && t.Section == nail.Section) is TestPlan plan
            ? Of(context, nail.Kind == NailKind.Proof, plan)
            : null;
}
