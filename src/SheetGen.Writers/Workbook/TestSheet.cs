using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Test nails: their numbers by section; lengths, loads and stretch by soil.</summary>
internal sealed class TestSheet
{
    public const string Source = "FHWA GEC No. 7, FHWA-NHI-14-007 (2015), as transcribed; check against the original";

    /// <param name="values">The engineer's values; null where the project gives none.</param>
    public TestSheet(WorkbookInput input, NailSheet nails, DesignValueSheet? values)
    {
        Sheet = SheetHead.Make(input, "Test nails", "Test nails",
            "Proof tests: share of a section's production nails, rounded up. Loads only where a bond is given, by the section's design or as design bond. " + Source + ", eq. 9.1 to 9.8.");
        Table = new TableBlock<TestPlan>(Sheet, "TestNails", 5, input.Quantities.Tests);
        TableBlock<TestPlan> t = Table;
        t.Number("no", "Section no.", 10, CellFormat.Whole, p => input.NumberOf(p.Wall, p.Section))
            .Text("wall", "Wall", 25, p => p.Wall.Name)
            .Text("section", "Section", 20, p => p.Section.Name)
            .Number("asked", "Verification nails asked for", 12, CellFormat.Whole, p => p.Asked)
            .Formula("verification", "Verification nails placed", 12, CellFormat.Whole, nails.Count(t.This("no"), true), p => p.Verification)
            .Formula("production", "Production nails", 12, CellFormat.Whole, nails.Count(t.This("no")), p => Production(input, p))
            .Number("share", "Proof share", 12, CellFormat.Percent, p => p.Section.TestNails.ProofShare)
            .Number("marked", "Marked by the layout", 12, CellFormat.Whole, p => p.ProofMarks.Count)
            .Formula("proof", "Proof tests", 12, CellFormat.Whole,
                $"MAX({t.This("marked")},ROUNDUP(ROUND({t.This("share")}*{t.This("production")},9),0))", p => p.Proof)
            .Wrapped("marks", "Verification marks", 24, p => string.Join(", ", p.VerificationMarks))
            .Wrapped("proofs", "Proof marks", 24, p => p.ProofMarks.Count == 0 ? "the engineer chooses in the field" : string.Join(", ", p.ProofMarks))
            .Wrapped("note", "Note", 30, p => p.Note);
        t.Fill("test-nails");
        Loads = new TestLoadTable(Sheet, t.LastRow + 4, input, values).Table;
    }

    public SheetContent Sheet { get; }

    public TableBlock<TestPlan> Table { get; }

    /// <summary>Loads by section, kind of test and soil.</summary>
    public TableBlock<TestLoad> Loads { get; }

    /// <summary>Number of verification nails that are asked for and not in the list of nails.</summary>
    public string WithoutPlace
    {
        get
        {
            string asked = Table.Range("asked"), placed = Table.Range("verification");
            return $"SUMPRODUCT(({asked}>{placed})*({asked}-{placed}))";
        }
    }

    private static double Production(WorkbookInput input, TestPlan plan) =>
        input.Quantities.Sections[input.NumberOf(plan.Wall, plan.Section) - 1].Amounts[QuantityName.NailCount].Amount ?? 0;
}
