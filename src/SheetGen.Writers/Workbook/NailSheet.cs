using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>One row a nail: the source of all sums.</summary>
internal sealed class NailSheet
{
    private const string Fault = "look", NoWeight = "no weight";

    public NailSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Nails", "Nails", "One row a nail; every sum comes from here. Marks are those of the sheets. How to add a row: sheet Summary.");
        Sheet.HeadColumns = 5;
        Table = new TableBlock<NailQuantity>(Sheet, "Nails", 5, input.Quantities.Nails, true);
        string l = input.Length;
        Table.Number("no", "Section no.", 9, CellFormat.General, n => input.NumberOf(n.Nail.Wall, n.Nail.Section))
            .Text("wall", "Wall", 14, n => n.Nail.Wall.Name)
            .Text("section", "Section", 9, n => n.Nail.Section.Name)
            .Number("row", "Row", 7, CellFormat.General, n => n.Nail.Row.Value)
            .Text("nail", "Nail", 14, n => n.Nail.Mark)
            .Text("kind", "Kind", 12, n => ResultWords.Of(n.Nail.Kind))
            .Text("status", "Status", 12, n => ResultWords.Of(n.Nail.Status))
            .Station(input, "station", "Station", 12, n => n.Nail.Wall, n => n.Nail.Station)
            .Number("elevation", $"Elevation, {l}", 10, input.Place, n => n.Nail.Elevation)
            .Number("splay", "Splay, deg (+ up-station)", 11, CellFormat.General, n => n.Nail.Splay)
            .Number("inclination", "Inclination, deg", 11, CellFormat.General, n => n.Nail.Inclination);
        Measures(input);
        Places(input);
        Table.Fill("nail-quantities");
        Totals(input);
        string last = ", or nothing.";
        Sheet.Rules.Add(new InputRule(Table.CellsOf("kind"), 0, 0, "production, proof or verification" + last, "production,proof,verification", false));
        Sheet.Rules.Add(new InputRule(Table.CellsOf("no"), 1, input.Quantities.Sections.Count, "The number of a section, as on the sheet Quantities" + last, "", false));
        Sheet.Rules.Add(new InputRule(Table.CellsOf("length"), 0, 1000, "A length from 0 to 1000" + last, "", false));
    }

    public SheetContent Sheet { get; }

    public TableBlock<NailQuantity> Table { get; }

    /// <summary>Sum of a column over the production nails of a section whose number stands in a cell.</summary>
    public string Sum(string column, string number, bool sacrificial = false) =>
        $"SUMIFS({Table.Range(column)},{Table.Range("no")},{number},{Table.Range("kind")},\"{(sacrificial ? "" : "<>")}verification\")";

    /// <summary>Number of production nails of a section whose number stands in a cell.</summary>
    public string Count(string number, bool sacrificial = false) =>
        $"COUNTIFS({Table.Range("no")},{number},{Table.Range("kind")},\"{(sacrificial ? "" : "<>")}verification\")";

    /// <summary>Sum of the weights of a section whose number stands in a cell; empty where a nail of it has none.</summary>
    public string Weight(string number, bool sacrificial = false) =>
        $"IF(COUNTIFS({Table.Range("no")},{number},{Table.Range("fault")},\"{NoWeight}\",{Table.Range("kind")},\"{(sacrificial ? "" : "<>")}verification\")>0,\"\",{Sum("weight", number, sacrificial)})";

    /// <summary>Number of nails whose bar has no weight.</summary>
    public string NoWeightCount => $"COUNTIF({Table.Range("fault")},\"{NoWeight}\")";

    /// <summary>Number of nails that lack a figure which the sums need.</summary>
    public string FaultCount => $"COUNTIF({Table.Range("fault")},\"{Fault}\")";

    /// <summary>Mark of the first such nail.</summary>
    public string FirstFault => $"IFERROR(INDEX({Table.Range("nail")},MATCH(\"{Fault}\",{Table.Range("fault")},0)),\"\")";

    private void Measures(WorkbookInput input)
    {
        TableBlock<NailQuantity> t = Table;
        string l = input.Length, area = l + "2", volume = l + "3";
        bool fromBack = input.Project.PayLengthFrom == PayLengthFrom.BackOfShotcrete;
        string projection = RateSheet.BarProjection, spacing = RateSheet.CentralizerSpacing, stock = RateSheet.StockLength;
        string Between() => $"({t.This("length")}-2*{RateSheet.CentralizerEnd})";
        double? longest = input.Project.Rates.StockLength;
        t.Number("length", $"Length from face, {l}", 10, CellFormat.Two, n => n.Nail.Length)
            .Number("shotcrete", $"Shotcrete along the bar, {l}", 11, CellFormat.Three, n => n.ShotcreteAlong)
            .Formula("back", $"Length from back of shotcrete, {l}", 11, CellFormat.Three, $"{t.This("length")}-{t.This("shotcrete")}", n => n.LengthFromBack)
            .Formula("pay", $"Pay length, {l}", 10, fromBack ? CellFormat.Three : CellFormat.Two, $"{t.This(fromBack ? "back" : "length")}+0", n => n.PayLength)
            .Formula("projection", $"Projection, {l}", 10, CellFormat.Two, $"IF({projection}=\"\",\"\",{projection})", n => n.Projection)
            .Formula("bar_length", $"Bar length, {l}", 10, CellFormat.Two, $"{t.This("length")}+{t.This("projection")}", n => n.BarLength)
            .Text("bar", "Bar", 12, n => n.Nail.Bar.ToString())
            .Number("unit_weight", $"Unit weight, {input.Weight}/{l}", 10, CellFormat.Three, n => n.UnitWeight)
            .Formula("weight", $"Weight, {input.Weight}", 10, CellFormat.Two, $"IF({t.This("unit_weight")}=\"\",\"\",{t.This("bar_length")}*{t.This("unit_weight")})", n => n.Weight)
            .Number("hole", $"Hole diameter, {l}", 9, CellFormat.Three, n => n.Nail.HoleDiameter)
            .Formula("hole_volume", $"Hole volume, {volume}", 10, CellFormat.Four, $"PI()*{t.This("hole")}^2/4*{t.This("length")}", n => n.HoleVolume)
            .Number("bar_area", $"Bar area, {area}", 10, CellFormat.Six, n => n.BarArea)
            .Formula("bar_volume", $"Bar in the hole, {volume}", 10, CellFormat.Four, $"{t.This("bar_area")}*{t.This("length")}", n => n.BarVolume)
            .Formula("grout", $"Theoretical grout, {volume}", 11, CellFormat.Four, $"{t.This("hole_volume")}-{t.This("bar_volume")}", n => n.Grout)
            .Formula(
                "centralizers", "Centralizers", 12, CellFormat.Whole,
                $"IF({spacing}=\"\",\"\",IF(ROUND({Between()},9)<=0,1,MAX(1,ROUNDUP(ROUND({Between()}/{spacing},9),0))+1))", n => n.Centralizers)
            .Formula(
                "couplers", "Couplers", 10, CellFormat.Whole,
                $"IF(OR({stock}=\"\",{t.This("bar_length")}=\"\"),\"\",MAX(1,ROUNDUP(ROUND({t.This("bar_length")}/{stock},9),0))-1)",
                n => longest is { } s ? Math.Max(1, Math.Ceiling(n.BarLength / s - 1e-9)) - 1 : null)
            .Number("area", $"Area of face, {area}", 10, CellFormat.Two, n => n.Area);
    }

    private void Places(WorkbookInput input)
    {
        TableBlock<NailQuantity> t = Table;
        string l = input.Length;
        Vector3D At(Vector3D point) => new(point.N + input.Project.Origin.N, point.E + input.Project.Origin.E, point.Z);
        string[] needed = ["no", "length", "shotcrete", "hole", "bar_area"];
        t.Number("lift", "Lift line", 8, CellFormat.General, n => input.LiftOf(n))
            .Text("nearest", "Nearest", 16, n => Clearance(input, n)?.Nearest ?? "")
            .Number("clear", $"Least clear distance, {l}", 10, CellFormat.Two, n => FiniteNumber.OrNone(Clearance(input, n)?.LeastClear))
            .Number("head_n", $"Head northing, {l}", 12, CellFormat.PlainThree, n => At(n.Nail.Hole.Head).N)
            .Number("head_e", $"Head easting, {l}", 12, CellFormat.PlainThree, n => At(n.Nail.Hole.Head).E)
            .Number("head_z", $"Head elevation, {l}", 12, CellFormat.PlainThree, n => At(n.Nail.Hole.Head).Z)
            .Number("tip_n", $"Tip northing, {l}", 12, CellFormat.PlainThree, n => At(n.Nail.Hole.Tip).N)
            .Number("tip_e", $"Tip easting, {l}", 12, CellFormat.PlainThree, n => At(n.Nail.Hole.Tip).E)
            .Number("tip_z", $"Tip elevation, {l}", 12, CellFormat.PlainThree, n => At(n.Nail.Hole.Tip).Z)
            .FormulaText("fault", "Figure missing or wrong", 12, new CellStyle(CellLook.Warning, CellFormat.General),
                $"IF(COUNT({string.Join(",", needed.Select(t.This))})<{needed.Length},\"{Fault}\",IF(ISNUMBER({t.This("unit_weight")}),\"\",\"{NoWeight}\"))", n => n.UnitWeight is null ? NoWeight : "");
    }

    private void Totals(WorkbookInput input)
    {
        Table.TotalHead("Total");
        Table.Total("length", Sum(input, n => n.Nail.Length), CellFormat.Two);
        Table.Total("pay", Sum(input, n => n.PayLength), CellFormat.Two);
        Table.Total("projection", Sum(input, n => n.Projection), CellFormat.Two);
        Table.Total("bar_length", Sum(input, n => n.BarLength), CellFormat.Two);
        Table.Total("weight", Sum(input, n => n.Weight), CellFormat.Two);
        Table.Total("grout", Sum(input, n => n.Grout), CellFormat.Two);
        Table.Total("area", Sum(input, n => n.Area ?? 0, n => n.Area is not null), CellFormat.Two);
    }

    private static double? Sum(WorkbookInput input, Func<NailQuantity, double?> of, Func<NailQuantity, bool>? where = null)
    {
        List<NailQuantity> nails = [.. input.Quantities.Nails.Where(where ?? (_ => true))];
        return nails.Count == 0 ? null : nails.Sum(of);
    }

    private static NailClearance? Clearance(WorkbookInput input, NailQuantity nail) => input.Report.Nails.GetValueOrDefault(nail.Nail.Mark);
}
