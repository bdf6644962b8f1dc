using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Crew days of each excavation lift, from the user's own rates; empty where none is given.</summary>
internal sealed class ProductionSheet
{
    public ProductionSheet(WorkbookInput input, NailSheet nails, LiftSheet lifts, SoilSheet soils)
    {
        string l = input.Length, hours = RateSheet.HoursPerDay, rigs = RateSheet.Rigs;
        Sheet = SheetHead.Make(input, "Production", "Production by lift",
            "Crew days = amount / your own rate (sheet Rates); a task without a rate has no days. Drilling by a rate a day, or by the hours in each soil layer.");
        Sheet.HeadColumns = 5;
        var t = new TableBlock<(ExcavationLift Lift, int Line)>(Sheet, "Production", 5, [.. input.Quantities.Lifts.Select((x, i) => (x, i + 1))]);
        ILookup<int, NailQuantity> drilled = input.Quantities.Nails.Where(n => !n.IsSacrificial).ToLookup(n => input.LiftOf(n) ?? 0);
        string Where() => $"{nails.Table.Range("lift")},{t.This("line")},{nails.Table.Range("kind")},\"<>verification\"";
        string Days(string amount, string rate) => $"IF(OR({rate}=\"\",{amount}=\"\"),\"\",{amount}/{rate})";
        Model.Rates own = input.Project.Rates;
        double? DigDays((ExcavationLift Lift, int Line) x) => x.Lift.Volume / own.ExcavationPerDay;
        double? SprayDays((ExcavationLift Lift, int Line) x) => x.Lift.CutArea / own.ShotcretePerDay;
        double? DrillDays((ExcavationLift Lift, int Line) x) => own.DrillingPerDay is { } daily ? Drilling(drilled[x.Line]) / daily : soils.HoursOf(x.Lift) is { } rate && own is { HoursPerDay: { } h, Rigs: { } r }
            ? Drilling(drilled[x.Line]) * rate / (h * r) : null;
        t.Number("line", "Lift line", 8, CellFormat.General, x => x.Line)
            .Number("no", "Section no.", 10, CellFormat.General, x => input.NumberOf(x.Lift.Wall, x.Lift.Section))
            .Text("wall", "Wall", 16, x => x.Lift.Wall.Name)
            .Text("section", "Section", 10, x => x.Lift.Section.Name)
            .Number("lift", "Lift", 8, CellFormat.General, x => x.Lift.Number)
            .Text("rows", "Rows drilled", 10, x => string.Join("; ", x.Lift.Rows))
            .Station(input, "from", "From station", 13, x => x.Lift.Wall, x => x.Lift.Wall.StationOf(x.Lift.Start))
            .Station(input, "to", "To station", 13, x => x.Lift.Wall, x => x.Lift.Wall.StationOf(x.Lift.End))
            .Formula("nails", "Nails", 9, CellFormat.Whole, $"COUNTIFS({Where()})", x => drilled[x.Line].Count())
            .Formula("drilling", $"Drilling, {l}", 12, CellFormat.Two, $"SUMIFS({nails.Table.Range("length")},{Where()})", x => Drilling(drilled[x.Line]))
            .Number("area", $"Cut area of face, {l}2", 12, CellFormat.Two, x => x.Lift.CutArea)
            .Number("volume", $"Excavation, {l}3", 12, CellFormat.One, x => x.Lift.Volume)
            .Formula("dig", "Excavation, crew days", 12, CellFormat.Two, Days(t.This("volume"), RateSheet.ExcavationPerDay), DigDays)
            .Formula("drill", "Drilling, crew days", 12, CellFormat.Two,
                $"IF({RateSheet.DrillingPerDay}<>\"\",{t.This("drilling")}/{RateSheet.DrillingPerDay},IF(OR({hours}=\"\",{rigs}=\"\"),\"\","
                + $"{t.This("drilling")}*{soils.HoursEach(t.This("no"), t.This("lift"))}/({hours}*{rigs})))",
                DrillDays)
            .Formula("spray", "Shotcrete, crew days", 12, CellFormat.Two, Days(t.This("area"), RateSheet.ShotcretePerDay), SprayDays)
            .Formula("days", "Crew days of the lift", 12, CellFormat.Two,
                $"IF(COUNT({t.This("dig")},{t.This("drill")},{t.This("spray")})=0,\"\",SUM({t.This("dig")},{t.This("drill")},{t.This("spray")}))", x => SumOf([DigDays(x), DrillDays(x), SprayDays(x)]));
        t.Fill("production");
        t.TotalHead("Total");
        bool any = t.Items.Count > 0;
        t.Total("nails", any ? t.Items.Sum(x => drilled[x.Line].Count()) : null, CellFormat.Whole);
        t.Total("drilling", any ? t.Items.Sum(x => Drilling(drilled[x.Line])) : null, CellFormat.Two);
        double? Sum(Func<(ExcavationLift Lift, int Line), double?> of) => SumOf(t.Items.Select(of));
        t.Total("dig", Sum(DigDays), CellFormat.Two);
        t.Total("drill", Sum(DrillDays), CellFormat.Two);
        t.Total("spray", Sum(SprayDays), CellFormat.Two);
        t.Total("days", SumOf(t.Items.SelectMany(x => new[] { DigDays(x), DrillDays(x), SprayDays(x) })), CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    /// <summary>Sum of what is given; null where nothing is.</summary>
    private static double? SumOf(IEnumerable<double?> parts) => parts.OfType<double>().ToList() is { Count: > 0 } given ? given.Sum() : null;

    private static double Drilling(IEnumerable<NailQuantity> nails) => nails.Sum(n => n.Nail.Length);
}
