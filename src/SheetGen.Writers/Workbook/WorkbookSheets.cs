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
        var lengths = new LengthSheet(input, nails);
        var lifts = new LiftSheet(input);
        DesignValueSheet? values = input.Quantities.Effect.HasValues ? new DesignValueSheet(input) : null;
        var tests = new TestSheet(input, nails, values);
        var sources = new Sources(
            nails, new FacingSheet(input, nails), new PanelSheet(input), new PadSheet(input), new DrainageSheet(input), lifts, tests);
        var all = new QuantitySheet(input, sources);
        var bid = new BidSheet(input, all, nails);
        var bars = new BarSheet(input, nails);
        var check = new CheckSheet(input, all, sources, rows);
        var soils = new SoilSheet(input, rates);
        var cutting = new CuttingSheet(input, bars);
        var field = new FieldSheet(input, nails);
        IReadOnlyList<SheetContent> effect = EffectSheets(input, values);
        SheetContent[] sheets =
        [
            rates.Sheet, bid.Sheet, new CostSheet(input, bid).Sheet, new ProductionSheet(input, nails, lifts, soils).Sheet, all.Sheet,
            new SectionSheet(input, all, nails, rows, gaps, lengths).Sheet, nails.Sheet, lengths.Sheet, new RedirectSheet(input).Sheet,
            new FindingsSheet(input).Sheet, new LeftOutSheet(input).Sheet, .. effect, rows.Sheet, gaps.Sheet, bars.Sheet, cutting.Sheet, new HoleSheet(input, nails).Sheet, soils.Sheet, new GroutSheet(input, nails).Sheet,
            sources.Facing.Sheet, sources.PanelList.Sheet, sources.Pad.Sheet, sources.Drainage.Sheet, lifts.Sheet, tests.Sheet,
            new ScheduleSheet(input, tests).Sheet, field.Sheet, check.Sheet, .. input.Review.Count > 0 ? new[] { new ReviewSheet(input).Sheet } : [],
        ];
        var summary = new SummarySheet(input, new SummaryParts(all, bid, nails, lengths, bars, cutting, field, check, sources), sheets);
        return new WorkbookSheets([summary.Sheet, .. sheets], [.. rates.Names, .. all.Names, .. summary.Names, .. field.Names]);
    }

    /// <summary>What the layout does to the design; the engineer's values and the loads only where a section has any.</summary>
    private static IReadOnlyList<SheetContent> EffectSheets(WorkbookInput input, DesignValueSheet? values)
    {
        if (values is null)
            return [new EffectSheet(input, null).Sheet];
        var bonded = new BondedSheet(input, values);
        var loads = new LoadSheet(input, values, bonded);
        return [new EffectSheet(input, loads).Sheet, values.Sheet, loads.Sheet, bonded.Sheet];
    }
}
