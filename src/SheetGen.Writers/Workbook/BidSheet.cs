using System.Globalization;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>The first sheet: pay items with raw quantity, rule and rounded quantity side by side, and the user's prices.</summary>
internal sealed class BidSheet
{
    private const int HeadRow = 8;

    public BidSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Bid quantities", "Bid quantities",
            "Caution: computed from the project file alone. An estimator and the engineer must check every figure before it is bid, built or paid.");
        Sheet.HeadRows = HeadRow;
        Sheet.Put(3, 0, Sheet.Rows[3][0].Text!, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.Put(4, 0, "Input hash (SHA-256): " + input.Project.InputHash, CellStyle.Text);
        Sheet.Put(5, 0, $"Revision {Shown(input.Project.Sheets.Revision)}, date {Shown(input.Project.Sheets.Date)}, program version {input.Run.Version}", CellStyle.Text);
        Sheet.Put(6, 0, $"Pay items: {input.Bid.Set.Name}. {input.Bid.Set.Notice}", CellStyle.Text);
        Sheet.Put(7, 0, "Unit prices (yellow) and contingency are the user's own.", CellStyle.Note);
        var t = new TableBlock<BidLine>(Sheet, HeadRow, input.Bid.Lines);
        t.Text("number", "Item", 12, b => b.Item.Number)
            .Wrapped("description", "Description", 30, b => b.Item.Description)
            .Text("unit", "Unit", 8, b => b.Item.Unit)
            .Add("raw", "Quantity, unrounded", 15, (b, _) => SheetCell.Calculated(Raw(b, input.Quantities), b.Raw, CellFormat.Four))
            .Text("rule", "Rounding", 20, b => b.Item.Rounding.ToString())
            .Add("rounded", "Bid quantity", 14, (b, r) => b.Parts.Count > 0
                ? SheetCell.Of(b.Rounded, FormatOf(b.Item.Rounding))
                : SheetCell.Calculated(Rounded(b.Item.Rounding, t.At("raw", r)), b.Rounded, FormatOf(b.Item.Rounding)))
            .Add("price", "Unit price", 12, (b, _) => SheetCell.Of(b.Price, new CellStyle(CellLook.Input, CellFormat.Money)))
            .Add("amount", "Amount", 15, (b, r) => SheetCell.Calculated(
                $"IF(OR({t.At("rounded", r)}=\"\",{t.At("price", r)}=\"\"),\"\",{t.At("rounded", r)}*{t.At("price", r)})", b.Amount, CellFormat.Money))
            .Wrapped("quantity", "From the quantities", 22, b => b.Item.Quantity.Text)
            .Wrapped("measured", "Measured", 30, b => b.Item.Measured)
            .Wrapped("subsidiary", "Subsidiary", 34, b => string.Join(", ", b.Item.Subsidiary))
            .Wrapped("note", "Note", 24, b => b.Note);
        t.Fill("bid");
        Sheet.Rules.Add(new InputRule(t.At("price", t.FirstRow) + ":" + t.At("price", t.LastRow), 0, 1e9, "Your unit price: a number of 0 or more, or nothing."));
        Sums(input, t);
        Unresolved(input, t.LastRow + 6);
    }

    public SheetContent Sheet { get; }

    private void Sums(WorkbookInput input, TableBlock<BidLine> t)
    {
        int column = t.ColumnOf("amount"), row = t.LastRow + 1;
        List<double> amounts = [.. input.Bid.Lines.Select(b => b.Amount).OfType<double>()];
        double? sum = amounts.Count == 0 ? null : amounts.Sum();
        double? share = input.Project.Rates.Contingency;
        t.Total("amount", sum, CellFormat.Money);
        t.TotalHead("Sum");
        string total = CellAddress.Of(column, row), extra = CellAddress.Of(column, row + 1);
        Sheet.Put(row + 1, 0, "Contingency", CellStyle.Text);
        Sheet.Put(row + 1, column, SheetCell.Calculated(
            $"IF(OR({total}=\"\",{RateSheet.Contingency}=\"\"),\"\",{total}*{RateSheet.Contingency})", sum * share, CellFormat.Money));
        Sheet.Put(row + 2, 0, "Sum with contingency", new CellStyle(CellLook.Total, CellFormat.General));
        Sheet.Put(row + 2, column, SheetCell.Calculated(
            $"IF({total}=\"\",\"\",{total}+IF({extra}=\"\",0,{extra}))", sum + (sum * share ?? 0), new CellStyle(CellLook.Total, CellFormat.Money)));
    }

    private void Unresolved(WorkbookInput input, int row)
    {
        double count = input.Quantities.Totals[QuantityName.UnresolvedCount].Amount ?? 0;
        var style = new CellStyle(count > 0 ? CellLook.Warning : CellLook.Plain, CellFormat.General);
        Sheet.Put(row, 0, "Of these, unresolved nails (not to be drilled before the engineer decides)", style);
        string unit = input.Length;
        Put(row + 1, "Unresolved nails", "each", QuantityName.UnresolvedCount, CellFormat.Whole);
        Put(row + 2, "Pay length of unresolved nails", unit, QuantityName.UnresolvedLength, CellFormat.Two);

        void Put(int at, string text, string measure, string name, CellFormat format)
        {
            Sheet.Put(at, 1, text, CellStyle.Text);
            Sheet.Put(at, 2, measure, CellStyle.Text);
            Sheet.Put(at, 3, SheetCell.Calculated(QuantitySheet.NameOf(name), input.Quantities.Totals[name].Amount, format));
        }
    }

    private static string Raw(BidLine line, QuantityTable quantities)
    {
        PayItem item = line.Item;
        string value = item.Quantity.ToFormula(r => quantities.Of(r).State == QuantityState.NotAsked ? "0"
            : r.IsTotal ? QuantitySheet.NameOf(r.Name) : FormattableString.Invariant($"({quantities.Of(r).Amount ?? 0:R})"));
        if (item.Factor != 1)
            value = FormattableString.Invariant($"({value})*{item.Factor:R}");
        string missing = string.Join(",", item.Quantity.References.Where(r => r.IsTotal && (quantities.Of(r).State != QuantityState.NotAsked || line.Raw is null)).Select(r => QuantitySheet.NameOf(r.Name) + "=\"\""));
        return missing.Length == 0 ? $"IFERROR({value},\"\")" : $"IF(OR({missing}),\"\",IFERROR({value},\"\"))";
    }

    private static string Rounded(PayRounding rule, string raw)
    {
        string step = rule.Step.ToString("0.#########", CultureInfo.InvariantCulture);
        string inner = FormattableString.Invariant($"ROUND(ROUND({raw},{rule.QuantumDecimals})/{step},6)");
        string function = rule.Direction switch { RoundingDirection.Up => "ROUNDUP", RoundingDirection.Down => "ROUNDDOWN", _ => "ROUND" };
        return FormattableString.Invariant($"IF({raw}=\"\",\"\",ROUND({function}({inner},0)*{step},{rule.Decimals}))");
    }

    private static CellFormat FormatOf(PayRounding rule) => rule.Decimals switch
    {
        <= 0 => CellFormat.Whole,
        1 => CellFormat.One,
        2 => CellFormat.Two,
        3 => CellFormat.Three,
        _ => CellFormat.Four,
    };

    private static string Shown(string text) => text.Length > 0 ? text : "not given";
}
