using System.Globalization;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>How all bars are cut from stock, and bars that just pass a whole number of stock lengths.</summary>
internal sealed class CuttingSheet
{
    public CuttingSheet(WorkbookInput input, BarSheet bars)
    {
        string l = input.Length;
        CuttingPlan? plan = input.Quantities.Cutting;
        Sheet = SheetHead.Make(input, "Cutting plan", "Cutting plan", plan is null
            ? "No stock length is given (rates: stock_length)."
            : string.Create(CultureInfo.InvariantCulture, $"All bars as laid out, cut together; no coupled piece is shorter than {plan.LeastPiece:0.###} {l}. After an edit of the nails build anew: the plan does not follow."));
        IReadOnlyList<CutPattern> patterns = plan?.Patterns ?? [];
        Table = new TableBlock<CutPattern>(Sheet, "CuttingPlan", 5, patterns);
        TableBlock<CutPattern> t = Table;
        t.Text("bar", "Bar", 14, p => p.Bar.ToString())
            .Number("stock", $"Stock length, {l}", 12, CellFormat.Two, p => p.StockLength)
            .Wrapped("pieces", $"Pieces, {l}", 40, p => string.Join(" + ", p.Pieces.Select(x => x.ToString("0.######", CultureInfo.InvariantCulture))))
            .Number("count", "Stock bars", 11, CellFormat.Whole, p => p.Count)
            .Number("used", $"Used of one, {l}", 12, CellFormat.Two, p => p.Used)
            .Formula("bought", $"Bought, {l}", 13, CellFormat.Two, $"{t.This("count")}*{t.This("stock")}", p => p.Count * p.StockLength)
            .Formula("cut", $"Used, {l}", 13, CellFormat.Two, $"{t.This("count")}*{t.This("used")}", p => p.Count * p.Used)
            .Formula("drop", $"Drop, {l}", 13, CellFormat.Two, $"ROUND({t.This("bought")}-{t.This("cut")},6)", p => Math.Round(p.Count * p.StockLength - p.Count * p.Used, 6) + 0.0)
            .Formula("share", "Drop, share", 11, CellFormat.Percent, $"{t.This("drop")}/{t.This("bought")}", p => (Math.Round(p.Count * p.StockLength - p.Count * p.Used, 6) + 0.0) / (p.Count * p.StockLength));
        t.Fill("cutting-plan");
        t.TotalHead("Total");
        bool any = patterns.Count > 0;
        t.Total("count", any ? patterns.Sum(p => p.Count) : null, CellFormat.Whole);
        t.Total("bought", any ? patterns.Sum(p => p.Count * p.StockLength) : null, CellFormat.Two);
        t.Total("cut", any ? patterns.Sum(p => p.Count * p.Used) : null, CellFormat.Two);
        t.Total("drop", any ? patterns.Sum(p => Math.Round(p.Count * p.StockLength - p.Count * p.Used, 6)) : null, CellFormat.Two);
        Stubs(input, plan?.Stubs ?? [], t.LastRow + 3);
        Uncut = any ? $"ROUND(ABS(SUM({bars.Table.Range("total")})-SUM({t.Range("cut")})),3)" : null;
    }

    public SheetContent Sheet { get; }

    /// <summary>Length of bars in the bar list that the plan does not hold, or holds too much, for formulas; null without a plan.</summary>
    public string? Uncut { get; }

    private TableBlock<CutPattern> Table { get; }

    private void Stubs(WorkbookInput input, IReadOnlyList<StockStub> stubs, int row)
    {
        if (stubs.Count == 0)
            return;
        string l = input.Length;
        Sheet.Put(row, 0, "Bars that are coupled for little more than a whole number of stock lengths", CellStyle.Title);
        var t = new TableBlock<StockStub>(Sheet, "Stubs", row + 2, stubs);
        t.Text("bar", "Bar", 14, s => s.Bar.ToString())
            .Number("cut", $"Cut length, {l}", 12, CellFormat.Two, s => s.CutLength)
            .Number("beyond", $"Beyond whole stock bars, {l}", 14, CellFormat.Two, s => s.Beyond)
            .Number("count", "Bars", 10, CellFormat.Whole, s => s.Count)
            .Number("stock", $"Stock length, {l}", 12, CellFormat.Two, s => s.StockLength)
            .Number("without", $"Nail length without that piece, {l}", 16, CellFormat.Two, s => s.NailLengthWithout);
        t.Fill("cutting-stubs");
    }
}
