using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Test nails: numbers, and where the design bond is given lengths and loads after FHWA GEC No. 7 (FHWA-NHI-14-007, 2015), eq. 9.1 to
/// 9.7, as transcribed: test load = bond x bonded length; bond length at most 0.9 A fy / bond (0.8 A fu for grade 150) and, for a proof
/// test, 10 ft.
/// </summary>
internal static class TestTakeOff
{
    public static TestPlan Measure(WallProject project, Wall wall, Section section, IReadOnlyList<Nail> nails)
    {
        List<string> sacrificial = [.. nails.Where(n => n.Kind == NailKind.Verification).Select(n => n.Mark)];
        List<string> marked = [.. nails.Where(n => n.Kind == NailKind.Proof).Select(n => n.Mark)];
        int production = nails.Count - sacrificial.Count;
        int proof = Math.Max(ProofCount(section.TestNails.ProofShare, production), marked.Count);
        double limit = BarLimit(section.Bar, project.Unit);
        Rates rates = project.Rates;
        double? cap = rates.DesignBond is { } bond and > 0 ? limit / bond : null;
        double? bonded = cap is { } c ? Math.Min(c, rates.TestBondedLength ?? DefaultBonded(project.Unit)) : null;
        int asked = VerificationPlan.Of(wall).Count(p => p.Section == section), without = asked - sacrificial.Count;
        string note = rates.DesignBond is null ? "no design bond given: no lengths and loads"
            : rates.TestBondedLength is null ? "bonded length at its default: 10 ft or what the bar allows" : "";
        if (without > 0)
            note = $"{without} of {asked} verification test nails found no place: the engineer has to choose where" + (note.Length > 0 ? "; " + note : "");
        return new TestPlan(
            wall, section, asked, sacrificial.Count, sacrificial, proof, marked, cap, bonded, rates.TestFreeLength, rates.DesignBond * bonded, limit, note);
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
        double share = bar.Grade >= 150 ? 0.8 : 0.9;
        return feet ? share * bar.AreaSquareInches * yield : share * bar.AreaSquareMillimetres * yield / 1000;
    }

    /// <summary>Usual bonded length of a test nail: 10 ft.</summary>
    public static double DefaultBonded(LengthUnit unit) => 10 * Lengths.MetresPerFoot / Lengths.MetresPer(unit);
}
