using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>Loads of verification and proof tests by soil, after FHWA GEC No. 7 (2015), eq. 9.1 to 9.8, as transcribed.</summary>
internal static class SoilTests
{
    public static IEnumerable<SoilTest> Of(SectionStrength strength, WallProject project)
    {
        Section section = strength.Section;
        bool feet = Lengths.IsFoot(project.Unit);
        double limit = TestTakeOff.BarLimit(section.Bar, SectionStrength.BarYield(section, feet), feet);
        double area = feet ? section.Bar.AreaSquareInches : section.Bar.AreaSquareMillimetres;
        double ten = TestTakeOff.DefaultBonded(project.Unit);
        Rates rates = project.Rates;
        IReadOnlyList<(string Soil, double Pullout)> bonds = [.. Bonds(strength, project)];
        foreach (bool isProof in new[] { false, true })
        {
            if (isProof ? section.TestNails.ProofShare <= 0 : section.TestNails.Verification == 0)
                continue;
            foreach ((string soil, double pullout) in bonds)
            {
                double cap = limit / pullout;
                double bonded = Math.Min(cap, isProof ? ten : rates.TestBondedLength ?? ten), load = pullout * bonded;
                double? free = isProof ? rates.ProofFreeLength : rates.TestFreeLength;
                double? stretch = free is { } length
                    ? NailStrength.Stretch(feet ? load : load * 1000, length * (feet ? 12 : 1000), feet ? NailStrength.ModulusKsi : NailStrength.ModulusMegapascals, area)
                    : null;
                yield return new SoilTest(strength.Wall, section, isProof, soil, pullout, limit, cap, bonded, load, free, stretch, NailStrength.StretchShare * stretch);
            }
        }
    }

    /// <summary>Pullout per length by soil as the section's design has it, else the project's design bond for every soil.</summary>
    private static IEnumerable<(string Soil, double Pullout)> Bonds(SectionStrength strength, WallProject project)
    {
        string[] layers = [.. project.Borings.SelectMany(b => b.Layers).Select(l => l.Name).Distinct()];
        bool byLayer = layers.Any(l => strength.Design.BondByLayer.ContainsKey(l));
        (string, double)[] given = [.. strength.PulloutByLayer.Where(p => p.Value > 0 && (byLayer ? layers.Contains(p.Key) : p.Key.Length == 0)).Select(p => (p.Key, p.Value))];
        return given.Length == 0 && project.Rates.DesignBond is { } bond and > 0 ? [("", bond)] : given;
    }
}
