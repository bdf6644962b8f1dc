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
        return Figure(context, isProof, plan, t => t.Load, v => Printed.Fixed(v, 1)) is string figure
            ? context.Say(Lengths.IsFoot(context.Print.Unit) ? Phrase.ForceKip : Phrase.ForceKilonewton, figure)
            : null;
    }

    /// <summary>A figure of a section's tests, from the least to the greatest where it differs by soil; null where none is given.</summary>
    public static string? Figure(DrawingContext context, bool isProof, TestPlan plan, Func<SoilTest, double?> of, Func<double, string> print)
    {
        double[] values =
        [
            .. context.Quantities.Effect.Tests.Where(t => t.IsProof == isProof && t.Wall == plan.Wall && t.Section == plan.Section).Select(of).OfType<double>().Order(),
        ];
        if (values.Length == 0)
            return null;
        string least = print(values[0]), most = print(values[^1]);
        return least == most ? least : $"{least} - {most}";
    }

    /// <summary>The load of a test nail; null where it is not given.</summary>
    public static string? Of(DrawingContext context, Nail nail) =>
        context.Quantities.Tests.FirstOrDefault(t => t.Wall == nail.Wall && t.Section == nail.Section) is TestPlan plan
            ? Of(context, nail.Kind == NailKind.Proof, plan)
            : null;
}
