using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Workbook;

/// <summary>Test nails: numbers, lengths and loads, and the published schedules.</summary>
internal sealed class TestSheet
{
    private const string Source = "FHWA GEC No. 7, FHWA-NHI-14-007 (2015), as transcribed; check against the original";

    public TestSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Test nails", "Test nails",
            "Proof tests: share of a section's production nails, rounded up. Loads only where the design bond is given. " + Source + ", eq. 9.1 to 9.7.");
        string l = input.Length, bond = RateSheet.DesignBond, given = RateSheet.BondedLength;
        double ten = 10 * Lengths.MetresPerFoot / Lengths.MetresPer(input.Project.Unit);
        Table = new TableBlock<TestPlan>(Sheet, 5, input.Quantities.Tests);
        TableBlock<TestPlan> t = Table;
        t.Number("no", "Section no.", 10, CellFormat.Whole, p => input.NumberOf(p.Wall, p.Section))
            .Text("wall", "Wall", 25, p => p.Wall.Name)
            .Text("section", "Section", 20, p => p.Section.Name)
            .Formula("verification", "Verification nails", 12, CellFormat.Whole, (_, r) => nails.Count(t.At("no", r), true), p => p.Verification)
            .Formula("production", "Production nails", 12, CellFormat.Whole, (_, r) => nails.Count(t.At("no", r)), p => Production(input, p))
            .Number("share", "Proof share", 12, CellFormat.Percent, p => p.Section.TestNails.ProofShare)
            .Number("marked", "Marked by the layout", 12, CellFormat.Whole, p => p.ProofMarks.Count)
            .Formula("proof", "Proof tests", 12, CellFormat.Whole,
                (_, r) => $"MAX({t.At("marked", r)},ROUNDUP(ROUND({t.At("share", r)}*{t.At("production", r)},9),0))", p => p.Proof)
            .Number("limit", $"Greatest load on the bar, {input.Force}", 12, CellFormat.Two, p => p.BarLimit)
            .Formula("cap", $"Bonded length the bar can test, {l}", 13, CellFormat.Three,
                (_, r) => $"IF(N({bond})=0,\"\",{t.At("limit", r)}/{bond})", p => p.BondCap)
            .Formula("bonded", $"Bonded length, {l}", 12, CellFormat.Three,
                (_, r) => FormattableString.Invariant($"IF({t.At("cap", r)}=\"\",\"\",MIN({t.At("cap", r)},IF({given}=\"\",{ten:R},{given})))"), p => p.BondedLength)
            .Formula("free", $"Free length, {l}", 12, CellFormat.Two, (_, _) => $"IF({RateSheet.FreeLength}=\"\",\"\",{RateSheet.FreeLength})", p => p.FreeLength)
            .Formula("load", $"Test load, {input.Force}", 12, CellFormat.Two,
                (_, r) => $"IF({t.At("bonded", r)}=\"\",\"\",{t.At("bonded", r)}*{bond})", p => p.TestLoad)
            .Wrapped("marks", "Verification nails", 24, p => string.Join(", ", p.VerificationMarks))
            .Wrapped("proofs", "Proof marks", 24, p => p.ProofMarks.Count == 0 ? "the engineer chooses in the field" : string.Join(", ", p.ProofMarks))
            .Wrapped("note", "Note", 30, p => p.Note);
        t.Fill("test-nails");
        int row = Schedule(input, t.LastRow + 4, "Verification test, shares of the test load (" + Source + ", Table 9.1)", Verification);
        Schedule(input, row + 3, "Proof test, shares of the test load (" + Source + ", Table 9.2)", Proof);
    }

    public SheetContent Sheet { get; }

    public TableBlock<TestPlan> Table { get; }

    private static double Production(WorkbookInput input, TestPlan plan) =>
        input.Quantities.Sections[input.NumberOf(plan.Wall, plan.Section) - 1].Amounts[QuantityName.NailCount].Amount ?? 0;

    private int Schedule(WorkbookInput input, int row, string title, (double? Share, string Hold)[] steps)
    {
        Sheet.Put(row, 0, title, new CellStyle(CellLook.Title, CellFormat.General));
        int head = row + 1;
        Sheet.Put(head, 0, "Step", CellStyle.Head);
        Sheet.Put(head, 1, "Share of the test load", CellStyle.Head);
        Sheet.Put(head, 2, "Hold, minutes", CellStyle.Head);
        for (int i = 0; i < steps.Length; i++)
        {
            Sheet.Put(head + 1 + i, 0, SheetCell.Of(i, CellFormat.Whole));
            Sheet.Put(head + 1 + i, 1, steps[i].Share is { } share ? SheetCell.Of(share, CellFormat.Two) : SheetCell.Of("alignment, at most 0.025"));
            Sheet.Put(head + 1 + i, 2, SheetCell.Of(steps[i].Hold));
        }
        for (int s = 0; s < Table.Items.Count; s++)
        {
            TestPlan plan = Table.Items[s];
            int column = 3 + s;
            Sheet.Put(head, column, $"Load, {plan.Wall.Name}, {plan.Section.Name}, {input.Force}", CellStyle.Head);
            string load = Table.Absolute("load", Table.FirstRow + s);
            for (int i = 0; i < steps.Length; i++)
            {
                if (steps[i].Share is not { } share)
                    continue;
                string cell = CellAddress.Of(1, head + 1 + i);
                Sheet.Put(head + 1 + i, column, SheetCell.Calculated($"IF({load}=\"\",\"\",{cell}*{load})", plan.TestLoad * share, CellFormat.Two));
            }
        }
        return head + steps.Length;
    }

    private static readonly (double? Share, string Hold)[] Verification =
    [
        (null, "1"), (0.13, "10"), (0.25, "10"), (0.38, "10"), (0.50, "10"), (0.63, "10"), (0.75, "60, creep test"), (0.88, "10"), (1.00, "10"),
    ];

    private static readonly (double? Share, string Hold)[] Proof =
    [
        (null, "until stable"), (0.17, "until stable"), (0.33, "until stable"), (0.50, "until stable"), (0.67, "until stable"),
        (0.83, "until stable"), (1.00, "10 or 60, creep test"),
    ];
}
