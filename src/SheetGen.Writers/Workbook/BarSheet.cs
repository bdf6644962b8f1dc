using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The bar list: cut lengths, weights, stock bars and couplers.</summary>
internal sealed class BarSheet
{
    public BarSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Bars", "Bar list",
            "Cut length = length from the face + projection. Weights: ASTM A615/A615M Table 1, nominal, as transcribed in public copies (#20 from memory).");
        string l = input.Length;
        var t = new TableBlock<(BarCut Cut, int Line)>(Sheet, 5, [.. input.Quantities.Bars.Select((b, i) => (b, i + 1))]);
        string stock = RateSheet.StockLength;
        double? given = input.Project.Rates.StockLength;
        t.Number("line", "Line", 7, CellFormat.Whole, b => b.Line)
            .Text("bar", "Bar", 14, b => b.Cut.Bar.ToString())
            .Text("for", "For", 14, b => b.Cut.Sacrificial ? "verification" : "production")
            .Number("length", $"Nail length, {l}", 11, CellFormat.Two, b => b.Cut.NailLength)
            .Formula("cut", $"Cut length, {l}", 11, CellFormat.Two, (_, r) => $"{t.At("length", r)}+{RateSheet.BarProjection}", b => b.Cut.CutLength)
            .Formula("count", "Bars", 9, CellFormat.Whole, (_, r) => $"COUNTIFS({nails.Table.Range("bar_line")},{t.At("line", r)})", b => b.Cut.Count)
            .Formula("total", $"Total length, {l}", 13, CellFormat.Two, (_, r) => $"{t.At("count", r)}*{t.At("cut", r)}", b => b.Cut.TotalLength)
            .Number("unit", $"Unit weight, {input.Weight}/{l}", 11, CellFormat.Three, b => b.Cut.UnitWeight)
            .Formula("weight", $"Weight, {input.Weight}", 12, CellFormat.Two, (_, r) => $"IF({t.At("unit", r)}=\"\",\"\",{t.At("total", r)}*{t.At("unit", r)})", b => b.Cut.Weight)
            .Formula("couplers", "Couplers a bar", 10, CellFormat.Whole,
                (_, r) => $"IF({stock}=\"\",\"\",MAX(1,ROUNDUP(ROUND({t.At("cut", r)}/{stock},9),0))-1)", b => b.Cut.CouplersEach)
            .Formula("all_couplers", "Couplers", 10, CellFormat.Whole,
                (_, r) => $"IF({stock}=\"\",\"\",{t.At("couplers", r)}*{t.At("count", r)})", b => b.Cut.CouplersEach * b.Cut.Count)
            .Formula("whole", "Whole stock bars a bar", 11, CellFormat.Whole,
                (_, r) => $"IF({stock}=\"\",\"\",INT(ROUND({t.At("cut", r)}/{stock},9)))", b => Whole(b.Cut, given))
            .Formula("rest", $"Rest a bar, {l}", 11, CellFormat.Two,
                (_, r) => $"IF({stock}=\"\",\"\",ROUND({t.At("cut", r)}-{t.At("whole", r)}*{stock},9))", b => Rest(b.Cut, given))
            .Formula("stock", "Stock bars", 10, CellFormat.Whole,
                (_, r) => $"IF({stock}=\"\",\"\",{t.At("whole", r)}*{t.At("count", r)}+IF({t.At("rest", r)}=0,0,ROUNDUP({t.At("count", r)}/INT(ROUND({stock}/{t.At("rest", r)},9)),0)))",
                b => b.Cut.StockBars)
            .Wrapped("marks", "Nails", 50, b => Marks(b.Cut.Marks));
        t.Fill("bars");
        t.TotalHead("Total");
        IReadOnlyList<BarCut> bars = input.Quantities.Bars;
        t.Total("count", bars.Count == 0 ? null : bars.Sum(b => b.Count), CellFormat.Whole);
        t.Total("total", bars.Count == 0 ? null : bars.Sum(b => b.TotalLength), CellFormat.Two);
        t.Total("weight", bars.Count == 0 ? null : bars.Sum(b => b.Weight), CellFormat.Two);
        t.Total("all_couplers", bars.Count == 0 || given is null ? null : bars.Sum(b => b.CouplersEach * b.Count), CellFormat.Whole);
        t.Total("stock", bars.Count == 0 || given is null ? null : bars.Sum(b => b.StockBars), CellFormat.Whole);
        Sheet.Put(t.LastRow + 3, 0, "A bar longer than stock is coupled; what it needs beyond whole stock bars is cut from stock bars of its own line only.", CellStyle.Note);
    }

    public SheetContent Sheet { get; }

    /// <summary>The first marks, and how many more: the nail sheet names the line of every nail.</summary>
    private static string Marks(IReadOnlyList<string> marks) =>
        marks.Count <= 8 ? string.Join(", ", marks) : string.Join(", ", marks.Take(8)) + FormattableString.Invariant($" and {marks.Count - 8} more");

    private static double? Whole(BarCut cut, double? stock) => stock is { } s ? Math.Floor(Math.Round(cut.CutLength / s, 9)) : null;

    private static double? Rest(BarCut cut, double? stock) =>
        Whole(cut, stock) is { } whole && stock is { } s ? Math.Round(cut.CutLength - whole * s, 9) : null;
}
