namespace SheetGen.Writers.Workbook;

/// <summary>The sheets in the order in which an estimator reads them, and the named cells.</summary>
internal sealed record WorkbookSheets(IReadOnlyList<SheetContent> Sheets, IReadOnlyList<NamedCell> Names)
{
    public static WorkbookSheets Make(WorkbookInput input)
    {
        var rates = new RateSheet(input);
        var nails = new NailSheet(input);
        var facing = new FacingSheet(input, nails);
        var drainage = new DrainageSheet(input);
        var lifts = new LiftSheet(input);
        var tests = new TestSheet(input, nails);
        var all = new QuantitySheet(input, new Sources(nails, facing, drainage, lifts, tests));
        SheetContent[] sheets =
        [
            new BidSheet(input).Sheet, all.Sheet, new SectionSheet(input, all).Sheet, nails.Sheet, new RedirectSheet(input, nails).Sheet,
            new BarSheet(input, nails).Sheet, new GroutSheet(input, nails).Sheet, facing.Sheet, drainage.Sheet, lifts.Sheet, tests.Sheet,
            new CheckSheet(input).Sheet, rates.Sheet,
        ];
        return new WorkbookSheets(sheets, [.. rates.Names, .. all.Names]);
    }
}
