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
    public const string ProofFreeLength = "proof_free_length";
    public const string Contingency = "contingency";
    public const string CheckLimit = "check_limit";
    public const string WalerBars = "waler_bars";
    public const string BearingBars = "bearing_bars";
    public const string BearingBarLength = "bearing_bar_length";
    public const string CentralizerEnd = "centralizer_end";
    public const string PlateWeight = "plate_weight";
    public const string NutWeight = "nut_weight";
    public const string WasherWeight = "washer_weight";
    public const string CouplerWeight = "coupler_weight";
    public const string SpareNails = "spare_nails";
    public const string MeshLength = "mesh_length";
    public const string MeshWidth = "mesh_width";
    public const string MeshLap = "mesh_lap";
    public const string StripLap = "strip_lap";
    public const string PadWidth = "pad_width";
    public const string PadHeight = "pad_height";
    public const string CopingWidth = "coping_width";
    public const string CopingHeight = "coping_height";
    public const string HoursPerDay = "hours_per_day";
    public const string Rigs = "rigs";
    public const string MarkUp = "mark_up";
    public const string DrillingPerDay = "drilling_per_day";
    public const string ShotcretePerDay = "shotcrete_per_day";
    public const string ExcavationPerDay = "excavation_per_day";

    private readonly IReadOnlyDictionary<string, double> _drilling;

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
            new(StockLength, "Longest stock length of bars", input.Length, rates.StockLength, 1, 100, ""),
            new(CentralizerSpacing, "Centralizer spacing", input.Length, rates.CentralizerSpacing, 0.1, 100, ""),
            new(CentralizerEnd, "Outer centralizers from the ends of the hole", input.Length, rates.CentralizerEnd ?? (input.IsFeet ? 2 : 0.6), 0, 100,
                rates.CentralizerEnd is null ? "default: common practice, no source" : ""),
            new(PlateWeight, "Weight of a bearing plate", input.Weight, rates.PlateWeight, 0, 1000, ""),
            new(NutWeight, "Weight of a nut", input.Weight, rates.NutWeight, 0, 1000, ""),
            new(WasherWeight, "Weight of a bevelled washer", input.Weight, rates.WasherWeight, 0, 1000, ""),
            new(CouplerWeight, "Weight of a coupler", input.Weight, rates.CouplerWeight, 0, 1000, ""),
            new(SpareNails, "Spare nails, share of the production nails", "share", rates.SpareNails, 0, 1, ""),
            new(MeshLength, "Sheet of welded wire, length", input.Length, rates.MeshLength, 0.1, 1000, ""),
            new(MeshWidth, "Sheet of welded wire, width", input.Length, rates.MeshWidth, 0.1, 1000, ""),
            new(MeshLap, "Lap of sheets of welded wire", input.Length, rates.MeshLap, 0, 100, ""),
            new(StripLap, "Laps and folds of drainage strips, share of their length", "share", rates.StripLap, 0, 10, ""),
            new(PadWidth, "Leveling pad, width", input.Length, rates.PadWidth, 0, 100, ""),
            new(PadHeight, "Leveling pad, height", input.Length, rates.PadHeight, 0, 100, ""),
            new(CopingWidth, "Coping, width", input.Length, rates.CopingWidth, 0, 100, ""),
            new(CopingHeight, "Coping, height", input.Length, rates.CopingHeight, 0, 100, ""),
            new(HoursPerDay, "Hours in a crew day", "h", rates.HoursPerDay, 0.1, 24, ""),
            new(Rigs, "Drill rigs at work", "each", rates.Rigs, 0.1, 100, ""),
            new(DesignBond, "Design bond, nominal pullout a length, where the design gives none", bond, rates.DesignBond, 0, 10000, ""),
            new(BondedLength, "Bonded length of a verification test nail", input.Length, rates.TestBondedLength, 0, 200,
                rates.TestBondedLength is null ? "default: 10 ft, or what the bar allows" : ""),
            new(FreeLength, "Free length of a verification test nail", input.Length, rates.TestFreeLength, 0, 200, ""),
            new(ProofFreeLength, "Free length of a proof test nail", input.Length, rates.ProofFreeLength, 0, 200, ""),
            new(Contingency, "Contingency, share of the sum", "share", rates.Contingency, 0, 10, ""),
            new(CheckLimit, "Limit for the checker's difference, share of our value", "share", rates.CheckLimit, 0, 1, ""),
            new(WalerBars, "Waler bars a row", "each", rates.WalerBars, 0, 10, ""),
            new(BearingBars, "Bearing bars a nail", "each", rates.BearingBars, 0, 20, ""),
            new(BearingBarLength, "Length of a bearing bar", input.Length, rates.BearingBarLength, 0, 50, ""),
            new(MarkUp, "Mark-up on cost, share of the cost", "share", rates.MarkUp, 0, 10, ""),
            new(DrillingPerDay, "Drilling a crew day", input.Length, rates.DrillingPerDay, 0.1, 100000, ""),
            new(ShotcretePerDay, "Shotcrete a crew day", input.Length + "2", rates.ShotcretePerDay, 0.1, 1e6, ""),
            new(ExcavationPerDay, "Excavation a crew day", input.Length + "3", rates.ExcavationPerDay, 0.1, 1e7, ""),
        ];
        Sheet = SheetHead.Make(input, "Rates", "Rates and factors", "Yellow cells may be changed. An empty cell is not given: what rests on it stays empty. No rate is a recommendation.");
        var table = new TableBlock<Rate>(Sheet, "Rates", 5, rows);
        table.Text("name", "Name", 22, r => r.Name)
            .Text("text", "Rate or factor", 52, r => r.Text)
            .Text("unit", "Unit", 9, r => r.Unit)
            .Input("value", "Value", 12, CellFormat.General, r => r.Value)
            .Text("source", "Where it is from", 34, r => r.Source.Length > 0 ? r.Source : r.Value is null ? "not given" : "project file");
        table.Fill("rates");
        string[] layers = [.. input.Quantities.Soils.Select(s => s.Layer).Concat(rates.Drilling.Keys).Distinct().Order(StringComparer.Ordinal)];
        _drilling = rates.Drilling;
        Layers = new TableBlock<string>(Sheet, "LayerRates", table.LastRow + 3, layers);
        Layers.Text("name", "Layer", 22, x => x)
            .Text("text", "Drilling rate", 52, _ => "length of hole that a rig drills in an hour, in this layer")
            .Text("unit", "Unit of the rate", 9, _ => input.Length + "/h")
            .Input("value", "Rate", 12, CellFormat.General, RateOf)
            .Text("source", "Where the rate is from", 34, x => RateOf(x) is null ? "not given" : "project file");
        Layers.Fill("layer-rates");
        Sheet.Rules.Add(new InputRule(Layers.CellsOf("value"), 0, 10000, "Your own rate, over 0, or nothing."));
        for (int i = 0; i < rows.Length; i++)
        {
            int row = table.FirstRow + i;
            Names.Add(new NamedCell(rows[i].Name, table.Absolute("value", row)));
            string limits = string.Create(CultureInfo.InvariantCulture, $"A number from {rows[i].Least} to {rows[i].Greatest}, or nothing.");
            Sheet.Rules.Add(new InputRule(CellAddress.Of(table.ColumnOf("value"), row), rows[i].Least, rows[i].Greatest, limits));
        }
    }

    public SheetContent Sheet { get; }

    /// <summary>Drilling rates by soil layer.</summary>
    public TableBlock<string> Layers { get; }

    /// <summary>Length of hole that a rig drills in an hour in a layer; null where not given.</summary>
    public double? RateOf(string layer) => _drilling.TryGetValue(layer, out double rate) ? rate : null;

    public List<NamedCell> Names { get; } = [];

    private sealed record Rate(string Name, string Text, string Unit, double? Value, double Least, double Greatest, string Source);
}
