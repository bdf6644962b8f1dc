using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The published schedules of the load tests, with the loads of every section.</summary>
internal sealed class ScheduleSheet
{
    private readonly WorkbookInput _input;
    private readonly TestSheet _tests;

    public ScheduleSheet(WorkbookInput input, TestSheet tests)
    {
        (_input, _tests) = (input, tests);
        Sheet = SheetHead.Make(input, "Test schedules", "Test schedules", "Shares of the test load and times: " + TestSheet.Source + ". Loads only where the design bond is given.");
        Sheet.HeadRows = 3;
        Sheet.Widen(0, 8);
        Sheet.Widen(1, 26);
        Sheet.Widen(2, 24);
        int row = Schedule(5, "Verification test (Table 9.1)", Verification);
        Schedule(row + 3, "Proof test (Table 9.2)", Proof);
    }

    public SheetContent Sheet { get; }

    private int Schedule(int row, string title, (double? Share, string Hold)[] steps)
    {
        Sheet.Put(row, 0, title, CellStyle.Title);
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
        TableBlock<TestPlan> plans = _tests.Table;
        for (int s = 0; s < plans.Items.Count; s++)
        {
            TestPlan plan = plans.Items[s];
            int column = 3 + s;
            Sheet.Put(head, column, $"Load, {plan.Wall.Name}, {plan.Section.Name}, {_input.Force}", CellStyle.Head);
            Sheet.Widen(column, 14);
            string load = plans.Absolute("load", plans.FirstRow + s);
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
