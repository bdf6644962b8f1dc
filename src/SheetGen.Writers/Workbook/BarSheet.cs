using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// The bar list: cut lengths, weights, stock bars and couplers. A line's length is the next one below that the nails of its bar have, so
/// that a length that is new or gone changes the list by itself.
/// </summary>
internal sealed class BarSheet
{
    private const int HeadRow = 5, Spare = 3;

    public BarSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Bars", "Bar list",
            "Cut length = length from the face + projection. Weights: ASTM A615/A615M Table 1, nominal, as transcribed in public copies (#20 from memory). Empty lines take lengths that an edit brings in.");
        List<Line> lines = LinesOf(input.Quantities.Bars);
        string l = input.Length, stock = RateSheet.StockLength, projection = RateSheet.BarProjection;
        double? given = input.Project.Rates.StockLength;
        Table = new TableBlock<Line>(Sheet, "Bars", HeadRow, lines);
        TableBlock<Line> t = Table;
        static string If(string empty, string formula) => $"IF({empty}=\"\",\"\",{formula})";
        string Where() => $"{nails.Table.Range("bar")},{t.This("bar")},{nails.Table.Range("kind")},{Kind(t)},{nails.Table.Range("length")},{t.This("length")}";
        t.Text("bar", "Bar", 14, b => b.First.Bar.ToString())
            .Text("for", "For", 14, b => b.First.Sacrificial ? "verification" : "production")
            .Add("length", $"Nail length, {l}", 11, b => SheetCell.Calculated(NextLength(b, lines, nails), b.Cut?.NailLength, CellFormat.Two))
            .Formula("cut", $"Cut length, {l}", 11, CellFormat.Two, $"IF(OR({t.This("length")}=\"\",{projection}=\"\"),\"\",{t.This("length")}+{projection})", b => b.Cut?.CutLength)
            .Formula("count", "Bars", 9, CellFormat.Whole, If(t.This("length"), $"COUNTIFS({Where()})"), b => b.Cut?.Count)
            .Formula("total", $"Total length, {l}", 13, CellFormat.Two, If(t.This("cut"), $"{t.This("count")}*{t.This("cut")}"), b => b.Cut?.TotalLength)
            .Number("unit", $"Unit weight, {input.Weight}/{l}", 11, CellFormat.Three, b => b.First.UnitWeight)
            .Formula("weight", $"Weight, {input.Weight}", 12, CellFormat.Two, If(t.This("unit"), $"{t.This("total")}*{t.This("unit")}"), b => b.Cut?.Weight)
            .Formula("couplers", "Couplers a bar", 10, CellFormat.Whole,
                $"IF(OR({stock}=\"\",{t.This("cut")}=\"\"),\"\",MAX(1,ROUNDUP(ROUND({t.This("cut")}/{stock},9),0))-1)", b => b.Cut?.CouplersEach)
            .Formula("all_couplers", "Couplers", 10, CellFormat.Whole, If(t.This("couplers"), $"{t.This("couplers")}*{t.This("count")}"), b => b.Cut?.CouplersEach * b.Cut?.Count)
            .Formula("whole", "Whole stock bars a bar", 11, CellFormat.Whole, If(t.This("couplers"), $"INT(ROUND({t.This("cut")}/{stock},9))"), b => Whole(b.Cut, given))
            .Formula("rest", $"Rest a bar, {l}", 11, CellFormat.Two, If(t.This("couplers"), $"ROUND({t.This("cut")}-{t.This("whole")}*{stock},9)"), b => Rest(b.Cut, given))
            .Formula("stock", "Stock bars, cut by itself", 10, CellFormat.Whole,
                If(t.This("couplers"), $"{t.This("whole")}*{t.This("count")}+IF({t.This("rest")}=0,0,ROUNDUP({t.This("count")}/INT(ROUND({stock}/{t.This("rest")},9)),0))"),
                b => b.Cut?.StockBars)
            .Wrapped("marks", "Nails as laid out", 50, b => Marks(b.Cut?.Marks ?? []));
        t.Fill("bars", b => b.Cut is not null);
        t.TotalHead("Total");
        IReadOnlyList<BarCut> bars = input.Quantities.Bars;
        t.Total("count", bars.Count == 0 ? null : bars.Sum(b => b.Count), CellFormat.Whole);
        t.Total("total", bars.Count == 0 ? null : bars.Sum(b => b.TotalLength), CellFormat.Two);
        t.Total("weight", bars.Count == 0 ? null : bars.Sum(b => b.Weight), CellFormat.Two);
        t.Total("all_couplers", bars.Count == 0 || given is null ? null : bars.Sum(b => b.CouplersEach * b.Count), CellFormat.Whole);
        t.Total("stock", bars.Count == 0 || given is null ? null : bars.Sum(b => b.StockBars), CellFormat.Whole);
        Sheet.Put(t.LastRow + 3, 0, "A bar longer than stock is coupled; what it needs beyond whole stock bars is cut here from stock bars of its own line only. The cutting plan over all bars needs no more.", CellStyle.Note);
    }

    public SheetContent Sheet { get; }

    public TableBlock<Line> Table { get; }

    private static string Kind(TableBlock<Line> t) => $"IF({t.This("for")}=\"verification\",\"verification\",\"<>verification\")";

    /// <summary>The greatest length of the group's nails below that of the line above; an empty text where there is none.</summary>
    private string NextLength(Line line, List<Line> lines, NailSheet nails)
    {
        string length = nails.Table.Range("length"), sign = line.First.Sacrificial ? "=" : "<>";
        string group = $"({nails.Table.Range("bar")}={Table.This("bar")})*({nails.Table.Range("kind")}{sign}\"verification\")";
        string above = CellAddress.Of(Table.ColumnOf("length"), HeadRow + line.Place);
        string below = line.Place > 0 && lines[line.Place - 1].First == line.First ? $"*({length}<N({above}))" : "";
        string greatest = $"SUMPRODUCT(MAX({group}{below}*{length}))";
        return $"IFERROR(IF({greatest}<=0,\"\",{greatest}),\"\")";
    }

    /// <summary>The lines, and after those of a bar some empty ones.</summary>
    private static List<Line> LinesOf(IReadOnlyList<BarCut> bars)
    {
        var lines = new List<Line>();
        foreach (IGrouping<(string, bool), BarCut> group in bars.GroupBy(b => (b.Bar.ToString(), b.Sacrificial)))
        {
            foreach (BarCut? cut in group.Concat(Enumerable.Repeat<BarCut?>(null, Spare)))
                lines.Add(new Line(lines.Count, group.First(), cut));
        }
        return lines;
    }

    /// <summary>The first marks, and how many more: the nail sheet names bar and length of every nail.</summary>
    private static string Marks(IReadOnlyList<string> marks) =>
        marks.Count <= 8 ? string.Join(", ", marks) : string.Join(", ", marks.Take(8)) + FormattableString.Invariant($" and {marks.Count - 8} more");

    private static double? Whole(BarCut? cut, double? stock) => cut is not null && stock is { } s ? Math.Floor(Math.Round(cut.CutLength / s, 9)) : null;

    private static double? Rest(BarCut? cut, double? stock) =>
        Whole(cut, stock) is { } whole && stock is { } s ? Math.Round(cut!.CutLength - whole * s, 9) : null;

    /// <param name="Place">Place in the list, from 0.</param>
    /// <param name="First">First line of the bar: its size, grade and use.</param>
    /// <param name="Cut">Null for an empty line.</param>
    internal sealed record Line(int Place, BarCut First, BarCut? Cut);
}
