using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Numbers of test nails, and the limits of a test after FHWA GEC No. 7 (FHWA-NHI-14-007, 2015), eq. 9.1 to 9.7, as transcribed: load on
/// the bar at most 0.9 A fy (0.8 A fu for grade 150), bonded length of a proof test at most 10 ft.
/// </summary>
internal static class TestTakeOff
{
    public static TestPlan Measure(Wall wall, Section section, IReadOnlyList<Nail> nails)
    {
        List<string> sacrificial = [.. nails.Where(n => n.Kind == NailKind.Verification).Select(n => n.Mark)];
        List<string> marked = [.. nails.Where(n => n.Kind == NailKind.Proof).Select(n => n.Mark)];
        int production = nails.Count - sacrificial.Count;
        int proof = Math.Max(ProofCount(section.TestNails.ProofShare, production), marked.Count);
        int asked = VerificationPlan.Of(wall).Count(p => p.Section == section), without = asked - sacrificial.Count;
        string note = without > 0 ? $"{without} of {asked} verification test {(asked == 1 ? "nail" : "nails")} found no place: the engineer has to choose where" : "";
        return new TestPlan(wall, section, asked, sacrificial.Count, sacrificial, proof, marked, note);
    }

    /// <summary>Share of the production nails, rounded up; 0 where there is no share or no nail.</summary>
    public static int ProofCount(double share, int production) =>
        share <= 0 || production == 0 ? 0 : NailTakeOff.CeilingOf(share * production);

    /// <summary>Greatest load on a bar in a test, kip or kN.</summary>
    public static double BarLimit(Bar bar, LengthUnit unit)
    {
        const double megapascalsPerKsi = 6.894757293168361;
        return BarLimit(bar, bar.Grade * (Lengths.IsFoot(unit) ? 1 : megapascalsPerKsi), Lengths.IsFoot(unit));
    }

    /// <summary>Greatest load on a bar of a given yield strength (ksi or MPa) in a test, kip or kN.</summary>
    public static double BarLimit(Bar bar, double yield, bool feet)
    {
        double share = ShareOfYield(bar);
        return feet ? share * bar.AreaSquareInches * yield : share * bar.AreaSquareMillimetres * yield / 1000;
    }

    /// <summary>Share of the yield strength (for grade 150 of the ultimate strength) that a test may put on a bar.</summary>
    public static double ShareOfYield(Bar bar) => bar.Grade >= 150 ? 0.8 : 0.9;

    /// <summary>Usual bonded length of a test nail: 10 ft.</summary>
    public static double DefaultBonded(LengthUnit unit) => 10 * Lengths.MetresPerFoot / Lengths.MetresPer(unit);
}
