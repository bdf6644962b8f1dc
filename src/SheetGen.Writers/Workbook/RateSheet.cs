using System.Globalization;
using SheetGen.Model;

namespace SheetGen.Writers.Workbook;

/// <summary>Rates and factors: named cells that the user may change; everything that rests on them is a formula.</summary>
internal sealed class RateSheet
{
    public const string BarProjection = "bar_projection";
    public const string GroutOverrun = "grout_overrun";
    public const string ShotcreteLoss = "shotcrete_loss";
    public const string StockLength = "stock_length";
    public const string CentralizerSpacing = "centralizer_spacing";
    public const string DesignBond = "design_bond";
    public const string BondedLength = "test_bonded_length";
    public const string FreeLength = "test_free_length";
    public const string Contingency = "contingency";
    public const string CheckLimit = "check_limit";
    public const string WalerBars = "waler_bars";
    public const string BearingBars = "bearing_bars";
    public const string BearingBarLength = "bearing_bar_length";
    public const string MarkUp = "mark_up";
    public const string DrillingPerDay = "drilling_per_day";
    public const string ShotcretePerDay = "shotcrete_per_day";
    public const string ExcavationPerDay = "excavation_per_day";

    public RateSheet(WorkbookInput input)
    {
        Rates rates = input.Project.Rates;
        string bond = $"{input.Force}/{input.Length}";
        bool isDefault = input.Project.Rules.Defaulted.Contains("bar_projection");
        Rate[] rows =
        [
            new(BarProjection, "Bar projection beyond the face, a nail", input.Length, input.Project.Rules.BarProjection, 0, 10, isDefault ? "default: common practice, no source" : "project file"),
            new(GroutOverrun, "Grout overrun, factor on the theoretical volume", "factor", rates.GroutOverrun, 1, 10, ""),
            new(ShotcreteLoss, "Shotcrete loss, share of the material supplied", "share", rates.ShotcreteLoss, 0, 0.9, ""),
            new(StockLength, "Stock length of bars", input.Length, rates.StockLength, 1, 100, ""),
            new(CentralizerSpacing, "Centralizer spacing", input.Length, rates.CentralizerSpacing, 0.1, 100, ""),
            new(DesignBond, "Design bond, nominal pullout a length", bond, rates.DesignBond, 0, 10000, ""),
            new(BondedLength, "Bonded length of a test nail", input.Length, rates.TestBondedLength, 0, 200,
                rates.TestBondedLength is null ? "default: 10 ft, or what the bar allows" : ""),
            new(FreeLength, "Free length of a test nail", input.Length, rates.TestFreeLength, 0, 200, ""),
            new(Contingency, "Contingency, share of the sum", "share", rates.Contingency, 0, 10, ""),
            new(CheckLimit, "Limit for the checker's difference, share of our value", "share", null, 0, 1, "the checker's own"),
            new(WalerBars, "Waler bars a row", "each", null, 0, 10, "the user's own"),
            new(BearingBars, "Bearing bars a nail", "each", null, 0, 20, "the user's own"),
            new(BearingBarLength, "Length of a bearing bar", input.Length, null, 0, 50, "the user's own"),
            new(MarkUp, "Mark-up on cost, share of the cost", "share", null, 0, 10, "the user's own"),
            new(DrillingPerDay, "Drilling a crew day", input.Length, null, 0.1, 100000, "the user's own"),
            new(ShotcretePerDay, "Shotcrete a crew day", input.Length + "2", null, 0.1, 1e6, "the user's own"),
            new(ExcavationPerDay, "Excavation a crew day", input.Length + "3", null, 0.1, 1e7, "the user's own"),
        ];
        Sheet = SheetHead.Make(input, "Rates", "Rates and factors", "Yellow cells may be changed. An empty cell is not given: what rests on it stays empty. No rate is a recommendation.");
        var table = new TableBlock<Rate>(Sheet, "Rates", 5, rows);
        table.Text("name", "Name", 22, r => r.Name)
            .Text("text", "Rate or factor", 52, r => r.Text)
            .Text("unit", "Unit", 9, r => r.Unit)
            .Input("value", "Value", 12, CellFormat.General, r => r.Value)
            .Text("source", "Where it is from", 34, r => r.Source.Length > 0 ? r.Source : r.Value is null ? "not given" : "project file");
        table.Fill("rates");
        for (int i = 0; i < rows.Length; i++)
        {
            int row = table.FirstRow + i;
            Names.Add(new NamedCell(rows[i].Name, table.Absolute("value", row)));
            string limits = string.Create(CultureInfo.InvariantCulture, $"A number from {rows[i].Least} to {rows[i].Greatest}, or nothing.");
            Sheet.Rules.Add(new InputRule(CellAddress.Of(table.ColumnOf("value"), row), rows[i].Least, rows[i].Greatest, limits));
        }
    }

    public SheetContent Sheet { get; }

    public List<NamedCell> Names { get; } = [];

    private sealed record Rate(string Name, string Text, string Unit, double? Value, double Least, double Greatest, string Source);
}
