namespace SheetGen.Writers.Workbook;

/// <summary>The published schedules of the load tests, with the loads of every section.</summary>
internal sealed class ScheduleSheet
{
    private readonly WorkbookInput _input;
    private readonly TestSheet _tests;

    public ScheduleSheet(WorkbookInput input, TestSheet tests)
    {
        (_input, _tests) = (input, tests);
        Sheet = SheetHead.Make(input, "Test schedules", "Test schedules", "Shares of the test load and times: " + TestSheet.Source + ". Loads only where a bond is given: sheet Test nails.");
        Sheet.HeadRows = 3;
        int row = Schedule(5, "Verification test (Table 9.1)", "VerificationSteps", "verification-schedule", false, Verification);
        Schedule(row + 3, "Proof test (Table 9.2)", "ProofSteps", "proof-schedule", true, Proof);
    }

    public SheetContent Sheet { get; }

    private int Schedule(int row, string title, string name, string file, bool isProof, (double? Share, string Hold)[] steps)
    {
        Sheet.Put(row, 0, title, CellStyle.Title);
        var t = new TableBlock<(int Step, double? Share, string Hold)>(Sheet, name, row + 1, [.. steps.Select((s, i) => (i, s.Share, s.Hold))]);
        t.Number("step", "Step", 8, CellFormat.General, s => s.Step)
            .Number("share", "Share of the test load", 14, CellFormat.Two, s => s.Share)
            .Text("note", "Note", 28, s => s.Share is null ? "alignment, at most 0.025" : "")
            .Text("hold", "Hold, minutes", 24, s => s.Hold);
        TableBlock<TestLoad> loads = _tests.Loads;
        for (int i = 0; i < loads.Items.Count; i++)
        {
            TestLoad test = loads.Items[i];
            if (test.IsProof != isProof)
                continue;
            string load = loads.Absolute("load", loads.FirstRow + i), share = t.This("share"), soil = test.Soil.Length == 0 ? "" : $", {test.Soil}";
            t.Formula(FormattableString.Invariant($"load{i}"), FormattableString.Invariant($"Load {i + 1}, {test.Plan.Wall.Name}, {test.Plan.Section.Name}{soil}, {_input.Force}"), 14, CellFormat.Two,
                $"IF(OR({load}=\"\",{share}=\"\"),\"\",{share}*{load})", s => test.Test?.Load * s.Share);
        }
        t.Fill(file);
        return t.LastRow;
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
