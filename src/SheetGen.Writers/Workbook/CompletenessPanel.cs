using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>What the workbook lacks, and where: from the take-off, and, by live formulas, from what the user has entered since.</summary>
internal sealed class CompletenessPanel
{
    public const string NailFaults = "Nails with a figure missing or wrong";

    public CompletenessPanel(WorkbookInput input, SummaryParts parts)
    {
        string quantities = $"'{parts.Quantities.Sheet.Name}'!A1", nails = $"'{parts.Nails.Sheet.Name}'!A1", bid = $"'{BidSheet.Name}'!A1";
        BidTable table = input.Bid;
        bool isPriced = table.Lines.Any(b => b.Price is not null);
        List<Quantity> incomplete = input.Quantities.Incomplete.ToList();
        var lines = new List<Line>();
        lines.Add(new Line("Quantities from which parts are missing", quantities,
            $"COUNTIF({parts.Quantities.States},\"{QuantitySheet.Incomplete}*\")", incomplete.Count,
            $"IFERROR(INDEX({parts.Quantities.Texts},MATCH(\"{QuantitySheet.Incomplete}*\",{parts.Quantities.States},0))&\": see the sheet\",\"\")",
            incomplete.Count == 0 ? "" : incomplete[0].Definition.Text + ": see the sheet"));
        foreach (IGrouping<(string What, string Key), MissingPart> group in Missing(table, incomplete).GroupBy(m => (m.What, m.Key)))
        {
            string where = string.Join(", ", group.Select(p => p.Place).Where(p => p.Length > 0).Distinct());
            lines.Add(new Line($"No {group.Key.What} ({group.Key.Key})", quantities, null, 1, null, where.Length > 0 ? where : "the whole project"));
        }
        List<BidLine> Lacking(string words) => [.. table.Lines.Where(b => parts.Bid.StoredState(b).Contains(words, StringComparison.Ordinal))];
        List<BidLine> noQuantity = Lacking(BidSheet.Quantity), noPrice = Lacking(BidSheet.NoPrice);
        lines.Add(new Line("Pay items whose quantity is missing or incomplete", bid, parts.Bid.WithoutQuantity, noQuantity.Count, parts.Bid.FirstWithoutQuantity, First(noQuantity)));
        lines.Add(new Line("Pay items without a price, while others have one", bid, parts.Bid.WithoutPrice, noPrice.Count, parts.Bid.FirstWithoutPrice, First(noPrice)));
        lines.Add(new Line("Pay items whose price is an error or no number", bid, parts.Bid.WithWrongPrice, 0, parts.Bid.FirstWithWrongPrice, ""));
        lines.Add(new Line("Prices of the project file that match no pay item", bid, null, table.UnmatchedPrices.Count, null, string.Join(", ", table.UnmatchedPrices)));
        lines.Add(new Line(NailFaults, nails, parts.Nails.FaultCount, 0, parts.Nails.FirstFault, ""));
        lines.Add(new Line("Rows below the nail table, which no formula counts", nails, parts.Nails.Table.StrayCount, 0, null, ""));
        string counted = string.Join("+", new[] { QuantityName.NailCount, QuantityName.VerificationCount }.Select(n => $"N({QuantitySheet.NameOf(n)})"));
        lines.Add(new Line("Nails in no section of this project", nails, $"COUNT({parts.Nails.Table.Range("no")})-({counted})", 0, null, ""));
        lines.Add(new Line("Bars of nails on no line of the bar list", $"'{parts.Bars.Sheet.Name}'!A1",
            $"COUNT({parts.Nails.Table.Range("no")})-SUM({parts.Bars.Table.Range("count")})", 0, null, ""));
        Errors(lines, parts.Sources);
        Blocking = lines.Count;
        lines.Add(new Line("Lines of the independent check that ask for a look", $"'{parts.Check.Sheet.Name}'!A1", parts.Check.LookCount, CheckSheet.StoredLooks(input), parts.Check.FirstLook, CheckSheet.StoredFirstLook(input)));
        lines.Add(new Line("Main quantities that were changed here since the layout", $"'{parts.Check.Sheet.Name}'!A1", parts.Check.ChangedCount, 0, null, ""));
        if (parts.Cutting.Uncut is { } uncut)
            lines.Add(new Line($"Length of bars that the cutting plan lacks or has too much, {input.Length}", $"'{parts.Cutting.Sheet.Name}'!A1", uncut, 0, null, ""));
        lines.Add(new Line("Nails of the list without a row on the sheet Field", $"'{parts.Field.Sheet.Name}'!A1",
            $"COUNTA({parts.Nails.Table.Range("no")})-COUNTA({parts.Field.Table.Range("nail")})", 0, null, ""));
        lines.Add(new Line("Nails whose bar has no weight", nails, parts.Nails.NoWeightCount, input.Quantities.Nails.Count(n => n.UnitWeight is null), null, ""));
        lines.Add(new Line("Unresolved nails, not to be drilled before the engineer decides", nails, $"N({QuantitySheet.NameOf(QuantityName.UnresolvedCount)})",
            (int)(input.Quantities.Totals[QuantityName.UnresolvedCount].Amount ?? 0), null, ""));
        Lines = lines;
    }

    public IReadOnlyList<Line> Lines { get; }

    /// <summary>How many lines, from the first, keep the book from being complete; the others are for a look.</summary>
    public int Blocking { get; }

    /// <summary>What the pay items lack, and what sums lack parts of.</summary>
    private static IEnumerable<MissingPart> Missing(BidTable bid, IEnumerable<Quantity> incomplete) =>
        bid.Lines.SelectMany(b => b.Missing).Concat(incomplete.SelectMany(q => q.Missing)).Distinct();

    private static void Errors(List<Line> lines, Sources sources)
    {
        (string Name, SheetContent Sheet, string Count)[] lists =
        [
            ("nails", sources.Nails.Sheet, sources.Nails.Table.ErrorCount), ("facing", sources.Facing.Sheet, sources.Facing.Sections.ErrorCount),
            ("panels", sources.PanelList.Sheet, sources.PanelList.Table.ErrorCount), ("leveling pad", sources.Pad.Sheet, sources.Pad.Table.ErrorCount),
            ("drainage", sources.Drainage.Sheet, sources.Drainage.Table.ErrorCount), ("lifts", sources.Lifts.Sheet, sources.Lifts.Table.ErrorCount),
            ("test nails", sources.Tests.Sheet, $"{sources.Tests.Table.ErrorCount}+{sources.Tests.Loads.ErrorCount}"),
        ];
        string where = string.Join("&", lists.Select(l => $"IF({l.Count}>0,\"{l.Name} \",\"\")"));
        lines.Add(new Line("Cells with an error in the lists", $"'{lists[0].Sheet.Name}'!A1", string.Join("+", lists.Select(l => l.Count)), 0, $"TRIM({where})", ""));
    }

    private static string First(List<BidLine> lines) => lines.Count == 0 ? "" : lines[0].Item.Number;

    /// <param name="Target">Cell that the line leads to.</param>
    /// <param name="Formula">Live count; null where the count is the take-off's.</param>
    /// <param name="WhereFormula">Live place; null where it stays as it is.</param>
    internal sealed record Line(string Text, string Target, string? Formula, int Count, string? WhereFormula, string Where);
}
