namespace SheetGen.Writers.Workbook;

/// <summary>The sheets in the order in which an estimator reads them, and the named cells.</summary>
internal sealed record WorkbookSheets(IReadOnlyList<SheetContent> Sheets, IReadOnlyList<NamedCell> Names)
{
    public static WorkbookSheets Make(WorkbookInput input)
    {
        var rates = new RateSheet(input);
        var nails = new NailSheet(input);
        var rows = new ReconciliationSheet(input, nails);
        var gaps = new GapSheet(input);
        var facing = new FacingSheet(input, nails);
        var panels = new PanelSheet(input);
        var pad = new PadSheet(input);
        var drainage = new DrainageSheet(input);
        var lifts = new LiftSheet(input);
        var tests = new TestSheet(input, nails);
        var all = new QuantitySheet(input, new Sources(nails, facing, panels, pad, drainage, lifts, tests));
        SheetContent[] sheets =
        [
            new BidSheet(input).Sheet, all.Sheet, new SectionSheet(input, all, nails, rows, gaps).Sheet, nails.Sheet,
            new RedirectSheet(input).Sheet, new LeftOutSheet(input).Sheet, rows.Sheet, gaps.Sheet, new BarSheet(input, nails).Sheet,
            new HoleSheet(input, nails).Sheet, new GroutSheet(input, nails).Sheet, facing.Sheet, panels.Sheet, pad.Sheet, drainage.Sheet, lifts.Sheet, tests.Sheet,
            new ScheduleSheet(input, tests).Sheet, new CheckSheet(input).Sheet, rates.Sheet,
        ];
        return new WorkbookSheets(sheets, [.. rates.Names, .. all.Names]);
    }
}
