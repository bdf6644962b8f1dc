using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Pay items with raw quantity, rule and rounded quantity side by side, and the user's prices.</summary>
internal sealed class BidSheet
{
    private const int HeadRow = 6;
    private readonly Dictionary<BidLine, string> _stored = new(ReferenceEqualityComparer.Instance);
    public const string Name = "Bid quantities", NoPrice = "no price", WrongPrice = "price is no number", Quantity = "quantity";

    public BidSheet(WorkbookInput input, QuantitySheet quantities, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, Name, "Bid quantities",
            "Caution: computed from the project file alone. An estimator and the engineer must check every figure before it is bid, built or paid.");
        Sheet.HeadRows = HeadRow;
        Sheet.HeadColumns = 2;
        Sheet.Put(3, 0, Sheet.Rows[3][0].Text!, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.Put(4, 0, $"Pay items: {input.Bid.Set.Name}. {input.Bid.Set.Notice}", CellStyle.Text);
        Sheet.Put(5, 0, "Unit prices (yellow) are the user's own; contingency stands on the sheet Rates.", CellStyle.Note);
        Table = new TableBlock<BidLine>(Sheet, "BidItems", HeadRow, input.Bid.Lines);
        TableBlock<BidLine> t = Table;
        BidFormula Of(BidLine line) => new(line, input.Quantities, quantities, nails);
        bool isPriced = input.Bid.Lines.Any(b => b.Price is not null);
        foreach (BidLine line in input.Bid.Lines)
            _stored[line] = Of(line).StoredState(isPriced);
        t.Text("number", "Item", 12, b => b.Item.Number)
            .Wrapped("description", "Description", 34, b => b.Item.Description)
            .Text("unit", "Unit", 8, b => b.Item.Unit)
            .Add("raw", "Quantity, unrounded", 15, b => SheetCell.Calculated(Of(b).Raw, b.Raw, CellFormat.Four))
            .Text("rule", "Rounding", 20, b => b.Item.Rounding.ToString())
            .Add("rounded", "Bid quantity", 14, b => SheetCell.Calculated(Of(b).Rounded(t.This("raw")), b.Rounded, FormatOf(b.Item.Rounding)))
            .Input("price", "Unit price", 12, CellFormat.Two, b => b.Price)
            .Formula("amount", "Amount", 15, CellFormat.Two,
                $"IF(AND(ISNUMBER({t.This("rounded")}),ISNUMBER({t.This("price")})),{t.This("rounded")}*{t.This("price")},\"\")", b => b.Amount)
            .Add("state", "What is missing", 30, b => SheetCell.Calculated(
                Of(b).State(t.This("price"), t.Range("price"), t.This("raw")), _stored[b], new CellStyle(CellLook.Warning, CellFormat.General)))
            .Formula("rank", "Place by amount", 9, CellFormat.General,
                $"IF({t.This("amount")}=\"\",\"\",1+SUMPRODUCT(ISNUMBER({t.Range("amount")})*(({t.Range("amount")}>{t.This("amount")})+({t.Range("amount")}={t.This("amount")})*(ROW({t.Range("amount")})<ROW()))))",
                b => Place(input.Bid, b))
            .Wrapped("quantity", "From the quantities", 22, b => b.Item.Quantity.Text)
            .Wrapped("measured", "Measured", 30, b => b.Item.Measured.Replace(PayLengthFromWords.Field, input.Project.PayLengthFrom.Words(), StringComparison.Ordinal))
            .Wrapped("subsidiary", "Subsidiary", 34, b => string.Join(", ", b.Item.Subsidiary))
            .Wrapped("note", "Note", 24, b => b.Note);
        t.Fill("bid");
        for (int i = 0; i < input.Bid.Lines.Count; i++)
        {
            if (input.Bid.Lines[i].Item.Quantity.References is [{ } first, ..])
                Sheet.Links.Add(new SheetLink(CellAddress.Of(t.ColumnOf("quantity"), t.FirstRow + i), quantities.PlaceOf(first.Name)));
        }
        Sheet.Rules.Add(new InputRule(t.CellsOf("price"), 0, 1e9, "Your unit price: a number of 0 or more, or nothing."));
        IsWhole = _stored.Values.All(s => s.Length == 0);
        Sums(input, IsWhole);
        Unresolved(input, t.LastRow + 6);
    }

    public SheetContent Sheet { get; }

    public TableBlock<BidLine> Table { get; }

    /// <summary>True where no item lacks a thing.</summary>
    public bool IsWhole { get; }

    /// <summary>What an item lacks as the take-off has it.</summary>
    public string StoredState(BidLine line) => _stored[line];

    /// <summary>Cell that names the sum, and says whether it is whole.</summary>
    public string SumLabelCell => CellAddress.Absolute(Sheet.Name, 0, Table.LastRow + 2);

    /// <summary>Cell of the sum.</summary>
    public string SumCell => CellAddress.Absolute(Sheet.Name, Table.ColumnOf("amount"), Table.LastRow + 2);

    /// <summary>How many items say a thing in their state, for formulas on any sheet.</summary>
    private string CountOf(string words) => $"COUNTIF({Table.Range("state")},\"*{words}*\")";

    public string WithoutPrice => CountOf(NoPrice);

    public string WithWrongPrice => CountOf(WrongPrice);

    public string WithoutQuantity => CountOf(Quantity);

    /// <summary>Number of the first item that says a thing in its state.</summary>
    private string FirstOf(string words) => $"IFERROR(INDEX({Table.Range("number")},MATCH(\"*{words}*\",{Table.Range("state")},0)),\"\")";

    public string FirstWithoutPrice => FirstOf(NoPrice);

    public string FirstWithWrongPrice => FirstOf(WrongPrice);

    public string FirstWithoutQuantity => FirstOf(Quantity);

    private void Sums(WorkbookInput input, bool isWhole)
    {
        int column = Table.ColumnOf("amount"), row = Table.LastRow + 2;
        List<double> amounts = [.. input.Bid.Lines.Select(b => b.Amount).OfType<double>()];
        double? sum = amounts.Count == 0 ? null : amounts.Sum(), share = input.Project.Rates.Contingency;
        double? all = sum + (sum * share ?? 0);
        string cells = Table.Range("amount"), rate = RateSheet.Contingency;
        string total = CellAddress.Of(column, row), extra = CellAddress.Of(column, row + 1);
        string Word(string text) => $"IF(SUMPRODUCT(--(LEN({Table.Range("state")})>0))=0,\"{text}\",\"{text}, INCOMPLETE\")";
        string Stored(string text) => isWhole ? text : text + ", INCOMPLETE";
        var label = new CellStyle(CellLook.Total, CellFormat.General);
        var figure = new CellStyle(CellLook.Total, CellFormat.Two);
        Sheet.Put(row, 0, SheetCell.Calculated(Word("Sum"), Stored("Sum"), label));
        Sheet.Put(row, column, SheetCell.Calculated($"IF(COUNT({cells})=0,\"\",SUM({cells}))", sum, figure));
        Sheet.Put(row + 1, 0, "Contingency", CellStyle.Text);
        Sheet.Put(row + 1, column, SheetCell.Calculated($"IFERROR(IF(OR({total}=\"\",{rate}=\"\"),\"\",{total}*{rate}),\"\")", sum * share, CellFormat.Two));
        Sheet.Put(row + 2, 0, SheetCell.Calculated(Word("Sum with contingency"), Stored("Sum with contingency"), label));
        Sheet.Put(row + 2, column, SheetCell.Calculated($"IF({total}=\"\",\"\",{total}+N({extra}))", all, figure));
        Sheet.WidenFor(column, SheetCell.Of(all, figure), 30);
        string Plain(double? value) => SheetCell.Of(value, CellFormat.Two).Plain;
        Sheet.Tables.Add(("bid-sums", [["What", "Amount"], [Stored("Sum"), Plain(sum)], ["Contingency", Plain(sum * share)], [Stored("Sum with contingency"), Plain(all)]]));
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

    private static double? Place(BidTable bid, BidLine line)
    {
        if (line.Amount is not { } amount)
            return null;
        int before = bid.Lines.TakeWhile(b => !ReferenceEquals(b, line)).Count(b => b.Amount == amount);
        return 1 + before + bid.Lines.Count(b => b.Amount > amount);
    }

    private static CellFormat FormatOf(PayRounding rule) => rule.Decimals switch
    {
        0 => CellFormat.Whole,
        1 => CellFormat.One,
        2 => CellFormat.Two,
        3 => CellFormat.Three,
        _ => CellFormat.Four,
    };
}
