using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Excavation lifts, one row a lift.</summary>
internal sealed class LiftSheet
{
    public LiftSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Excavation lifts", "Excavation lifts",
            "The face is cut row by row to a depth below the row (default 1.5 ft or 0.5 m, this program's own); the last cut goes to the bottom. Volume by average end area where cross sections are given.");
        string l = input.Length;
        Table = new TableBlock<ExcavationLift>(Sheet, "Lifts", 5, input.Quantities.Lifts, true);
        TableBlock<ExcavationLift> t = Table;
        t.Number("no", "Section no.", 10, CellFormat.Whole, x => input.NumberOf(x.Wall, x.Section))
            .Text("wall", "Wall", 16, x => x.Wall.Name)
            .Text("section", "Section", 10, x => x.Section.Name)
            .Number("lift", "Lift", 8, CellFormat.Whole, x => x.Number)
            .Text("row", "For row", 10, x => x.Row?.ToString() ?? "to bottom")
            .Text("rows", "Rows drilled", 12, x => string.Join("; ", x.Rows))
            .Station(input, "from", "From station", 13, x => x.Wall, x => x.Wall.StationOf(x.Start))
            .Station(input, "to", "To station", 13, x => x.Wall, x => x.Wall.StationOf(x.End))
            .Number("below", $"Cut below its row, {l}", 12, CellFormat.Two, x => x.Row is null ? null : x.BelowRow)
            .Text("source", "That depth is from", 14, x => x.Row is null ? "" : x.Wall.Lifts?.BelowRow is null ? "default" : "project file")
            .Number("area", $"Cut area of face, {l}2", 13, CellFormat.Two, x => x.CutArea)
            .Number("exposed", $"Exposed height, {l}", 12, CellFormat.Two, x => x.Exposed)
            .Number("limit", $"Limit, {l}", 10, CellFormat.Two, x => x.Limit)
            .FormulaText("verdict", "Against the limit", 15, CellStyle.Text,
                $"IF({t.This("limit")}=\"\",\"no limit given\",IF({t.This("exposed")}>{t.This("limit")}+0.000001,\"too high\",\"within\"))",
                x => x.Limit is null ? "no limit given" : x.IsTooHigh ? "too high" : "within")
            .Number("volume", $"Volume, {l}3", 12, CellFormat.One, x => x.Volume)
            .Text("hours", "Open no longer than", 14, x => x.Wall.Lifts?.MaxHours is { } h ? FormattableString.Invariant($"{h:0.##} h") : "not given");
        t.Fill("lifts");
        t.TotalHead("Total");
        t.Total("area", t.Items.Count == 0 ? null : t.Items.Sum(x => x.CutArea), CellFormat.Two);
        t.Total("volume", t.Items.All(x => x.Volume is null) ? null : t.Items.Sum(x => x.Volume ?? 0), CellFormat.One);
        if (input.Quantities.Totals[QuantityName.ExcavationVolume].Amount is null)
            Sheet.Put(t.LastRow + 3, 0, "Volume " + input.Quantities.Totals[QuantityName.ExcavationVolume].Note, CellStyle.Note);
    }

    public SheetContent Sheet { get; }

    public TableBlock<ExcavationLift> Table { get; }
}
