using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Cost build-up by pay item from the user's own rates for crew, equipment, material and subcontract; empty where none is given.</summary>
internal sealed class CostSheet
{
    private static readonly (string Key, string Head)[] Parts =
        [("crew", "Crew, a unit"), ("equipment", "Equipment, a unit"), ("material", "Material, a unit"), ("subcontract", "Subcontract, a unit")];

    public CostSheet(WorkbookInput input, BidSheet bid)
    {
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
        foreach ((string key, string head) in Parts)
            t.Input(key, head, 12, CellFormat.Two);
        string all = string.Join(",", Parts.Select(p => t.This(p.Key)));
        t.Formula("cost", "Cost, a unit", 12, CellFormat.Two, $"IF(COUNT({all})=0,\"\",SUM({all}))", _ => null)
            .Formula("total", "Cost", 15, CellFormat.Two, $"IF(OR({t.This("cost")}=\"\",{t.This("quantity")}=\"\"),\"\",{t.This("cost")}*{t.This("quantity")})", _ => null)
            .Formula("price", "Cost with mark-up, a unit", 13, CellFormat.Two, $"IF({t.This("cost")}=\"\",\"\",{t.This("cost")}*(1+N({RateSheet.MarkUp})))", _ => null)
            .Formula("built", "Cost with mark-up", 15, CellFormat.Two, $"IF(OR({t.This("price")}=\"\",{t.This("quantity")}=\"\"),\"\",{t.This("price")}*{t.This("quantity")})", _ => null)
            .Formula("bid", "Unit price of the bid", 12, CellFormat.Two, $"IF({OfItem("price")}=\"\",\"\",{OfItem("price")})", b => b.Price)
            .Formula("margin", "Bid less cost", 15, CellFormat.Two,
                $"IF(OR({t.This("cost")}=\"\",{t.This("bid")}=\"\",{t.This("quantity")}=\"\"),\"\",({t.This("bid")}-{t.This("cost")})*{t.This("quantity")})", _ => null);
        t.Fill("cost");
        t.TotalHead("Sum");
        t.Total("total", null, CellFormat.Two);
        t.Total("built", null, CellFormat.Two);
        t.Total("margin", null, CellFormat.Two);
        foreach ((string key, _) in Parts)
            Sheet.Rules.Add(new InputRule(t.CellsOf(key), 0, 1e9, "Your cost a unit: a number of 0 or more, or nothing.", "", false));
    }

    public SheetContent Sheet { get; }

    private TableBlock<BidLine> Table { get; }
}
