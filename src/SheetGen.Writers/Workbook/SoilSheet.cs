using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Drilling by soil layer, as the holes were laid out, with hours by the user's own rates.</summary>
internal sealed class SoilSheet
{
    private readonly TableBlock<SoilLength> _table;

    public SoilSheet(WorkbookInput input, RateSheet rates)
    {
        string l = input.Length;
        Sheet = SheetHead.Make(input, "Drilling by layer", "Drilling by soil layer",
            "Length of the holes in each layer of the boring nearest to their middle, layers taken as level, as laid out. Soils change between borings. Your own rates stand on the sheet Rates.");
        IReadOnlyList<SoilLength> soils = input.Quantities.Soils;
        _table = new TableBlock<SoilLength>(Sheet, "Soils", 5, soils);
        TableBlock<SoilLength> t = _table;
        t.Number("no", "Section no.", 10, CellFormat.General, s => input.NumberOf(s.Wall, s.Section))
            .Text("wall", "Wall", 16, s => s.Wall.Name)
            .Text("section", "Section", 10, s => s.Section.Name)
            .Number("lift", "Lift", 8, CellFormat.General, s => s.Lift)
            .Text("layer", "Layer", 24, s => s.Layer)
            .Number("length", $"Length of hole, {l}", 13, CellFormat.Two, s => s.Length)
            .Formula("rate", $"Rate, {l} an hour", 12, CellFormat.Two, rates.Layers.Lookup("value", "name", t.This("layer")), s => rates.RateOf(s.Layer))
            .Formula("hours", "Hours", 12, CellFormat.Two, $"IF(N({t.This("rate")})<=0,\"\",{t.This("length")}/{t.This("rate")})", s => s.Hours);
        t.Fill("drilling-by-layer");
        t.TotalHead("Total");
        t.Total("length", soils.Count == 0 ? null : soils.Sum(s => s.Length), CellFormat.Two);
        t.Total("hours", soils.Any(s => s.Hours is not null) ? soils.Sum(s => s.Hours ?? 0) : null, CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    /// <summary>Hours that a unit of hole takes in a lift, for formulas; an error where a layer of it has no rate.</summary>
    public string HoursEach(string number, string lift)
    {
        string where = $"{_table.Range("no")},{number},{_table.Range("lift")},{lift}";
        return $"SUMIFS({_table.Range("hours")},{where})/IF(COUNTIFS({where},{_table.Range("hours")},\">0\")<COUNTIFS({where}),0,SUMIFS({_table.Range("length")},{where}))";
    }

    /// <summary>Hours that a unit of hole takes in a lift; null where a layer of it has no rate.</summary>
    public double? HoursOf(ExcavationLift lift)
    {
        List<SoilLength> parts = [.. _table.Items.Where(s => ReferenceEquals(s.Section, lift.Section) && s.Lift == lift.Number)];
        return parts.Count == 0 || parts.Exists(s => s.Hours is null) ? null : parts.Sum(s => s.Hours!.Value) / parts.Sum(s => s.Length);
    }
}
