using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Crew days of each excavation lift, from the user's own rates a day; empty where none is given.</summary>
internal sealed class ProductionSheet
{
    public ProductionSheet(WorkbookInput input, NailSheet nails, LiftSheet lifts)
    {
        string l = input.Length;
        Sheet = SheetHead.Make(input, "Production", "Production by lift",
            "Crew days = amount / your own rate a crew day (sheet Rates); a task without a rate has no days. Nails and drilling are those of the lift's row, in its stations.");
        Sheet.HeadColumns = 4;
        var t = new TableBlock<ExcavationLift>(Sheet, "Production", 5, input.Quantities.Lifts);
        IReadOnlyList<NailQuantity> all = input.Quantities.Nails;
        Dictionary<ExcavationLift, List<NailQuantity>> drilled = input.Quantities.Lifts.ToDictionary(
            x => x, x => all.Where(n => !n.IsSacrificial && IsIn(n, x)).ToList(), ReferenceEqualityComparer.Instance as IEqualityComparer<ExcavationLift>);
        string Where() => $"{nails.Table.Range("no")},{t.This("no")},{nails.Table.Range("row")},{t.This("row")},{nails.Table.Range("kind")},\"<>verification\","
            + $"{nails.Table.Range("station")},\">=\"&{t.This("from")},{nails.Table.Range("station")},\"<=\"&{t.This("to")}";
        string Days(string amount, string rate) => $"IF(OR({rate}=\"\",{amount}=\"\"),\"\",{amount}/{rate})";
        t.Number("no", "Section no.", 10, CellFormat.General, x => input.NumberOf(x.Wall, x.Section))
            .Text("wall", "Wall", 16, x => x.Wall.Name)
            .Text("section", "Section", 10, x => x.Section.Name)
            .Number("lift", "Lift", 8, CellFormat.General, x => x.Number)
            .Number("row", "Row drilled", 9, CellFormat.General, x => x.Row?.Value)
            .Number("from", "From station", 13, input.Station, x => x.Wall.StationOf(x.Start))
            .Number("to", "To station", 13, input.Station, x => x.Wall.StationOf(x.End))
            .Formula("nails", "Nails", 9, CellFormat.Whole, $"IF({t.This("row")}=\"\",0,COUNTIFS({Where()}))", x => drilled[x].Count)
            .Formula("drilling", $"Drilling, {l}", 12, CellFormat.Two, $"IF({t.This("row")}=\"\",0,SUMIFS({nails.Table.Range("length")},{Where()}))", x => drilled[x].Sum(n => n.Nail.Length))
            .Number("area", $"Cut area of face, {l}2", 12, CellFormat.Two, x => x.CutArea)
            .Number("volume", $"Excavation, {l}3", 12, CellFormat.One, x => x.Volume)
            .Formula("dig", "Excavation, crew days", 12, CellFormat.Two, Days(t.This("volume"), RateSheet.ExcavationPerDay), _ => null)
            .Formula("drill", "Drilling, crew days", 12, CellFormat.Two, Days(t.This("drilling"), RateSheet.DrillingPerDay), _ => null)
            .Formula("spray", "Shotcrete, crew days", 12, CellFormat.Two, Days(t.This("area"), RateSheet.ShotcretePerDay), _ => null)
            .Formula("days", "Crew days of the lift", 12, CellFormat.Two,
                $"IF(COUNT({t.This("dig")},{t.This("drill")},{t.This("spray")})=0,\"\",SUM({t.This("dig")},{t.This("drill")},{t.This("spray")}))", _ => null);
        t.Fill("production");
        t.TotalHead("Total");
        bool any = input.Quantities.Lifts.Count > 0;
        t.Total("nails", any ? drilled.Values.Sum(d => d.Count) : null, CellFormat.Whole);
        t.Total("drilling", any ? drilled.Values.Sum(d => d.Sum(n => n.Nail.Length)) : null, CellFormat.Two);
        t.Total("dig", null, CellFormat.Two);
        t.Total("drill", null, CellFormat.Two);
        t.Total("spray", null, CellFormat.Two);
        t.Total("days", null, CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    private static bool IsIn(NailQuantity nail, ExcavationLift lift) => ReferenceEquals(nail.Nail.Section, lift.Section) && nail.Nail.Row == lift.Row
        && nail.Nail.Station >= lift.Wall.StationOf(lift.Start) && nail.Nail.Station <= lift.Wall.StationOf(lift.End);
}
