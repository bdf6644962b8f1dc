using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Workbook;

/// <summary>A kind of test of a section in one soil; without a test where no bond is given, so that one can be entered.</summary>
internal sealed record TestLoad(TestPlan Plan, bool IsProof, string Soil, SoilTest? Test)
{
    public static IEnumerable<TestLoad> All(QuantityTable quantities)
    {
        foreach (TestPlan plan in quantities.Tests)
        {
            foreach (bool isProof in new[] { false, true })
            {
                if (isProof ? plan.Section.TestNails.ProofShare <= 0 : plan.Section.TestNails.Verification == 0)
                    continue;
                SoilTest[] tests = [.. quantities.Effect.Tests.Where(t => t.Wall == plan.Wall && t.Section == plan.Section && t.IsProof == isProof)];
                if (tests.Length == 0)
                    yield return new TestLoad(plan, isProof, "", null);
                foreach (SoilTest test in tests)
                    yield return new TestLoad(plan, isProof, test.Soil, test);
            }
        }
    }
}

/// <summary>
/// Loads and stretch of the tests by live formula: bond from the engineer's values, else from the rates; bonded length, test load and the
/// stretch of the free length after FHWA GEC No. 7 (2015), eq. 9.1 to 9.8, as transcribed.
/// </summary>
internal sealed class TestLoadTable
{
    public TestLoadTable(SheetContent sheet, int headRow, WorkbookInput input, DesignValueSheet? values)
    {
        sheet.Put(headRow - 1, 0, "Loads and stretch by soil", CellStyle.Title);
        bool feet = input.IsFeet;
        string l = input.Length, force = input.Force, small = feet ? "in" : "mm", bond = RateSheet.DesignBond;
        double ten = 10 * Lengths.MetresPerFoot / Lengths.MetresPer(input.Project.Unit);
        Table = new TableBlock<TestLoad>(sheet, "TestLoads", headRow, [.. TestLoad.All(input.Quantities)]);
        TableBlock<TestLoad> t = Table;
        string Value(string key) => values!.Sections.At(key, t.This("line"));
        t.Number("no", "Section no.", 10, CellFormat.Whole, x => input.NumberOf(x.Plan.Wall, x.Plan.Section))
            .Text("wall", "Wall", 25, x => x.Plan.Wall.Name)
            .Text("section", "Section", 20, x => x.Plan.Section.Name)
            .Text("test", "Test", 12, x => x.IsProof ? "proof" : "verification")
            .Text("soil", "Soil", 12, x => SoilName(x.Soil));
        if (values is not null)
        {
            t.Formula("line", "Line of the design values", 12, CellFormat.General, values.Sections.Find("no", t.This("no")), x => LineOf(values, x));
            string of = string.Join("+", values.Bonds.Select(b => $"IF(EXACT({t.This("soil")},{Quoted(SoilName(b.Layer))}),N({Value("r_" + b.Key)}),0)"));
            t.Formula("given", $"r_PO of the design values, {force}/{l}", 12, CellFormat.Four, of, x => Given(values, x) ?? 0)
                .Formula("pullout", $"Pullout a length r_PO, {force}/{l}", 12, CellFormat.Four,
                    $"IF({t.This("given")}>0,{t.This("given")},IF(AND({t.This("soil")}={Quoted(SoilName(""))},N({bond})>0),{bond},\"\"))", x => x.Test?.Pullout);
        }
        else
        {
            t.Formula("pullout", $"Pullout a length r_PO, {force}/{l}", 12, CellFormat.Four, $"IF(N({bond})=0,\"\",{bond})", x => x.Test?.Pullout);
        }
        t.Number("area", feet ? "Bar area, in2" : "Bar area, mm2", 12, CellFormat.Three, x => Area(x, feet))
            .Number("share", "Most of its strength", 12, CellFormat.Percent, x => x.Plan.Section.Bar.Grade >= 150 ? 0.8 : 0.9);
        if (values is not null)
            t.Formula("yield", feet ? "Bar strength, ksi" : "Bar strength, MPa", 12, CellFormat.Two, Value("bar_yield"), x => Yield(x, feet));
        else
            t.Number("yield", feet ? "Bar strength, ksi" : "Bar strength, MPa", 12, CellFormat.Two, x => Yield(x, feet));
        t.Formula("limit", $"Greatest load on the bar, {force}", 12, CellFormat.Two, $"{t.This("share")}*{t.This("area")}*{t.This("yield")}{(feet ? "" : "/1000")}", x => Limit(x, feet))
            .Formula("cap", $"Bonded length the bar can test, {l}", 13, CellFormat.Three, $"IF(N({t.This("pullout")})=0,\"\",{t.This("limit")}/{t.This("pullout")})", x => x.Test?.Cap)
            .Formula("bonded", $"Bonded length, {l}", 12, CellFormat.Three,
                FormattableString.Invariant($"IF({t.This("cap")}=\"\",\"\",MIN({t.This("cap")},IF(AND({t.This("test")}=\"verification\",N({RateSheet.BondedLength})>0),{RateSheet.BondedLength},{ten:R})))"), x => x.Test?.Bonded)
            .Formula("load", $"Test load, {force}", 12, CellFormat.Two, $"IF({t.This("bonded")}=\"\",\"\",{t.This("bonded")}*{t.This("pullout")})", x => x.Test?.Load)
            .Formula("free", $"Free length, {l}", 12, CellFormat.Two, Free(t), x => x.IsProof ? input.Project.Rates.ProofFreeLength : input.Project.Rates.TestFreeLength)
            .Formula("stretch", $"Elastic stretch of the free length, {small}", 13, CellFormat.Four,
                $"IF(COUNT({t.This("load")},{t.This("free")})<2,\"\",{t.This("load")}{(feet ? "" : "*1000")}*{t.This("free")}*{(feet ? "12" : "1000")}/({(feet ? "29000" : "200000")}*{t.This("area")}))", x => x.Test?.Stretch)
            .Formula("least", $"Least movement of the head at the test load (80 %), {small}", 13, CellFormat.Four, $"IF({t.This("stretch")}=\"\",\"\",0.8*{t.This("stretch")})", x => x.Test?.LeastStretch)
            .FormulaText("note", "Note", 30, CellStyle.Text, $"IF({t.This("pullout")}=\"\",\"no bond given: no lengths and loads\",IF({t.This("free")}=\"\",\"no free length given: no stretch\",\"\"))", x => Note(x, input.Project.Rates));
        t.Fill("test-loads");
    }

    public TableBlock<TestLoad> Table { get; }

    private static string SoilName(string soil) => soil.Length == 0 ? "every soil" : soil;

    private static string Quoted(string text) => "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static double? Given(DesignValueSheet values, TestLoad load) =>
        values.Sections.Items.First(s => ReferenceEquals(s.Section, load.Plan.Section)).PulloutByLayer.TryGetValue(load.Soil, out double pullout) ? pullout : null;

    private static string Free(TableBlock<TestLoad> t)
    {
        string free = RateSheet.FreeLength, proof = RateSheet.ProofFreeLength;
        return $"IF({t.This("test")}=\"proof\",IF({proof}=\"\",\"\",{proof}),IF({free}=\"\",\"\",{free}))";
    }

    private static string Note(TestLoad load, Rates rates) =>
        load.Test is null ? "no bond given: no lengths and loads" : (load.IsProof ? rates.ProofFreeLength : rates.TestFreeLength) is null ? "no free length given: no stretch" : "";

    private static double LineOf(DesignValueSheet values, TestLoad load) =>
        1 + values.Sections.Items.ToList().FindIndex(s => ReferenceEquals(s.Section, load.Plan.Section));

    private static double Area(TestLoad load, bool feet) => feet ? load.Plan.Section.Bar.AreaSquareInches : load.Plan.Section.Bar.AreaSquareMillimetres;

    private static double Yield(TestLoad load, bool feet) => load.Plan.Section.Design?.BarYield ?? load.Plan.Section.Bar.Grade * (feet ? 1 : 6.894757293168361);

    private static double Limit(TestLoad load, bool feet) => (load.Plan.Section.Bar.Grade >= 150 ? 0.8 : 0.9) * Area(load, feet) * Yield(load, feet) / (feet ? 1 : 1000);
}
