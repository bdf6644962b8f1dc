using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Cost build-up by pay item from the user's own rates for crew, equipment, material and subcontract; empty where none is given.</summary>
internal sealed class CostSheet
{
    private static readonly (string Key, string Head, Func<CostParts, double?> Of)[] Parts =
    [
        ("crew", "Crew, a unit", c => c.Crew), ("equipment", "Equipment, a unit", c => c.Equipment),
        ("material", "Material, a unit", c => c.Material), ("subcontract", "Subcontract, a unit", c => c.Subcontract),
    ];

    private readonly Rates _rates;

    public CostSheet(WorkbookInput input, BidSheet bid)
    {
        _rates = input.Project.Rates;
        Sheet = SheetHead.Make(input, "Cost build-up", "Cost build-up",
            "Your own cost a unit of each pay item (yellow); the mark-up stands on the sheet Rates. Compared with the unit prices of the bid, not put in their place.");
        Sheet.HeadColumns = 2;
        Table = new TableBlock<BidLine>(Sheet, "Costs", 5, input.Bid.Lines);
        TableBlock<BidLine> t = Table;
        string OfItem(string key) => $"INDEX({bid.Table.Range(key)},MATCH({t.This("number")},{bid.Table.Range("number")},0))";
        t.Text("number", "Item", 12, b => b.Item.Number)
            .Wrapped("description", "Description", 34, b => b.Item.Description)
            .Text("unit", "Unit", 8, b => b.Item.Unit)
            .Formula("quantity", "Bid quantity", 14, CellFormat.Two, OfItem("rounded"), b => b.Rounded);
        foreach ((string key, string head, Func<CostParts, double?> of) in Parts)
            t.Input(key, head, 12, CellFormat.Two, b => _rates.BuildUp.TryGetValue(b.Item.Number, out CostParts? parts) ? of(parts) : null);
        string all = string.Join(",", Parts.Select(p => t.This(p.Key)));
        t.Formula("cost", "Cost, a unit", 12, CellFormat.Two, $"IF(COUNT({all})=0,\"\",SUM({all}))", Cost)
            .Formula("total", "Cost", 15, CellFormat.Two, $"IF(OR({t.This("cost")}=\"\",{t.This("quantity")}=\"\"),\"\",{t.This("cost")}*{t.This("quantity")})", b => Cost(b) * b.Rounded)
            .Formula("price", "Cost with mark-up, a unit", 13, CellFormat.Two, $"IF({t.This("cost")}=\"\",\"\",{t.This("cost")}*(1+N({RateSheet.MarkUp})))", Price)
            .Formula("built", "Cost with mark-up", 15, CellFormat.Two, $"IF(OR({t.This("price")}=\"\",{t.This("quantity")}=\"\"),\"\",{t.This("price")}*{t.This("quantity")})", b => Price(b) * b.Rounded)
            .Formula("bid", "Unit price of the bid", 12, CellFormat.Two, $"IF({OfItem("price")}=\"\",\"\",{OfItem("price")})", b => b.Price)
            .Formula("margin", "Bid less cost", 15, CellFormat.Two,
                $"IF(OR({t.This("cost")}=\"\",{t.This("bid")}=\"\",{t.This("quantity")}=\"\"),\"\",({t.This("bid")}-{t.This("cost")})*{t.This("quantity")})", Margin);
        t.Fill("cost");
        t.TotalHead("Sum");
        t.Total("total", Sum(b => Cost(b) * b.Rounded), CellFormat.Two);
        t.Total("built", Sum(b => Price(b) * b.Rounded), CellFormat.Two);
        t.Total("margin", Sum(Margin), CellFormat.Two);
        foreach ((string key, _, _) in Parts)
            Sheet.Rules.Add(new InputRule(t.CellsOf(key), 0, 1e9, "Your cost a unit: a number of 0 or more, or nothing.", "", false));
    }

    public SheetContent Sheet { get; }

    private TableBlock<BidLine> Table { get; }

    private double? Cost(BidLine line) => _rates.BuildUp.TryGetValue(line.Item.Number, out CostParts? parts) && Parts.Any(p => p.Of(parts) is not null) ? parts.Sum : null;

    private double? Price(BidLine line) => Cost(line) * (1 + (_rates.MarkUp ?? 0));

    private double? Margin(BidLine line) => (line.Price - Cost(line)) * line.Rounded;

    private double? Sum(Func<BidLine, double?> of)
    {
        List<double> known = [.. Table.Items.Select(of).OfType<double>()];
        return known.Count == 0 ? null : known.Sum();
    }
}
