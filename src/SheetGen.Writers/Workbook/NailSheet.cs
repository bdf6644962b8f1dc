using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Writers.Csv;

namespace SheetGen.Writers.Workbook;

/// <summary>One row a nail: the source of all sums.</summary>
internal sealed class NailSheet
{
    public NailSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Nails", "Nails", "One row a nail; every sum comes from here. Marks are those of the sheets.");
        Sheet.HeadColumns = 5;
        Dictionary<string, int> lines = BarLines(input.Quantities);
        string l = input.Length, area = l + "2", volume = l + "3";
        string end = (input.Project.Rates.CentralizerEnd ?? (input.IsFeet ? 2 : 0.6)).ToString("0.######", System.Globalization.CultureInfo.InvariantCulture);
        bool fromBack = input.Project.PayLengthFrom == PayLengthFrom.BackOfShotcrete;
        Table = new TableBlock<NailQuantity>(Sheet, 5, input.Quantities.Nails);
        TableBlock<NailQuantity> t = Table;
        t.Number("no", "Section no.", 9, CellFormat.Whole, n => input.NumberOf(n.Nail.Wall, n.Nail.Section))
            .Text("wall", "Wall", 14, n => n.Nail.Wall.Name)
            .Text("section", "Section", 9, n => n.Nail.Section.Name)
            .Number("row", "Row", 7, CellFormat.General, n => n.Nail.Row.Value)
            .Text("nail", "Nail", 14, n => n.Nail.Mark)
            .Text("kind", "Kind", 12, n => ResultWords.Of(n.Nail.Kind))
            .Text("status", "Status", 12, n => ResultWords.Of(n.Nail.Status))
            .Number("station", $"Station, {l}", 12, input.Place, n => n.Nail.Station)
            .Number("elevation", $"Elevation, {l}", 10, input.Place, n => n.Nail.Elevation)
            .Number("splay", "Splay, deg (+ up-station)", 11, CellFormat.General, n => n.Nail.Splay)
            .Number("inclination", "Inclination, deg", 11, CellFormat.General, n => n.Nail.Inclination)
            .Number("length", $"Length from face, {l}", 10, CellFormat.Two, n => n.Nail.Length)
            .Number("shotcrete", $"Shotcrete along the bar, {l}", 11, CellFormat.Three, n => n.ShotcreteAlong)
            .Formula("back", $"Length from back of shotcrete, {l}", 11, CellFormat.Three, (_, r) => $"{t.At("length", r)}-{t.At("shotcrete", r)}", n => n.LengthFromBack)
            .Formula("pay", $"Pay length, {l}", 10, fromBack ? CellFormat.Three : CellFormat.Two, (_, r) => t.At(fromBack ? "back" : "length", r), n => n.PayLength)
            .Formula("projection", $"Projection, {l}", 10, CellFormat.Two, (_, _) => RateSheet.BarProjection, n => n.Projection)
            .Formula("bar_length", $"Bar length, {l}", 10, CellFormat.Two, (_, r) => $"{t.At("length", r)}+{t.At("projection", r)}", n => n.BarLength)
            .Text("bar", "Bar", 12, n => n.Nail.Bar.ToString())
            .Number("bar_line", "Line of the bar list", 9, CellFormat.Whole, n => lines[n.Nail.Mark])
            .Number("unit_weight", $"Unit weight, {input.Weight}/{l}", 10, CellFormat.Three, n => n.UnitWeight)
            .Formula("weight", $"Weight, {input.Weight}", 10, CellFormat.Two, (_, r) => $"IF({t.At("unit_weight", r)}=\"\",\"\",{t.At("bar_length", r)}*{t.At("unit_weight", r)})", n => n.Weight)
            .Number("hole", $"Hole diameter, {l}", 9, CellFormat.Three, n => n.Nail.HoleDiameter)
            .Formula("hole_volume", $"Hole volume, {volume}", 10, CellFormat.Four, (_, r) => $"PI()*{t.At("hole", r)}^2/4*{t.At("length", r)}", n => n.HoleVolume)
            .Number("bar_area", $"Bar area, {area}", 10, CellFormat.Six, n => n.BarArea)
            .Formula("bar_volume", $"Bar in the hole, {volume}", 10, CellFormat.Four, (_, r) => $"{t.At("bar_area", r)}*{t.At("length", r)}", n => n.BarVolume)
            .Formula("grout", $"Theoretical grout, {volume}", 11, CellFormat.Four, (_, r) => $"{t.At("hole_volume", r)}-{t.At("bar_volume", r)}", n => n.Grout)
            .Formula(
                "centralizers", "Centralizers", 12, CellFormat.Whole,
                (_, r) => $"IF({RateSheet.CentralizerSpacing}=\"\",\"\",IF(ROUND({t.At("length", r)}-2*{end},9)<=0,1,MAX(1,ROUNDUP(ROUND(({t.At("length", r)}-2*{end})/{RateSheet.CentralizerSpacing},9),0))+1))",
                n => n.Centralizers)
            .Number("area", $"Area of face, {area}", 10, CellFormat.Two, n => n.Area)
            .Text("nearest", "Nearest", 16, n => Clearance(input, n)?.Nearest ?? "")
            .Number("clear", $"Least clear distance, {l}", 10, CellFormat.Two, n => Finite(Clearance(input, n)?.LeastClear));
        t.Fill("nail-quantities");
        t.TotalHead("Total");
        t.Total("length", Sum(input, n => n.Nail.Length), CellFormat.Two);
        t.Total("pay", Sum(input, n => n.PayLength), CellFormat.Two);
        t.Total("projection", Sum(input, n => n.Projection), CellFormat.Two);
        t.Total("bar_length", Sum(input, n => n.BarLength), CellFormat.Two);
        t.Total("weight", Sum(input, n => n.Weight), CellFormat.Two);
        t.Total("grout", Sum(input, n => n.Grout), CellFormat.Two);
        t.Total("area", Sum(input, n => n.Area ?? 0, n => n.Area is not null), CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    public TableBlock<NailQuantity> Table { get; }

    /// <summary>Sum of a column over the production nails of a section whose number stands in a cell.</summary>
    public string Sum(string column, string number, bool sacrificial = false) =>
        $"SUMIFS({Table.Range(column)},{Table.Range("no")},{number},{Table.Range("kind")},\"{(sacrificial ? "" : "<>")}verification\")";

    /// <summary>Number of production nails of a section whose number stands in a cell.</summary>
    public string Count(string number, bool sacrificial = false) =>
        $"COUNTIFS({Table.Range("no")},{number},{Table.Range("kind")},\"{(sacrificial ? "" : "<>")}verification\")";

    private static double? Sum(WorkbookInput input, Func<NailQuantity, double?> of, Func<NailQuantity, bool>? where = null)
    {
        List<NailQuantity> nails = [.. input.Quantities.Nails.Where(where ?? (_ => true))];
        return nails.Count == 0 ? null : nails.Sum(of);
    }

    private static Dictionary<string, int> BarLines(QuantityTable quantities)
    {
        var lines = new Dictionary<string, int>();
        for (int i = 0; i < quantities.Bars.Count; i++)
        {
            foreach (string mark in quantities.Bars[i].Marks)
                lines[mark] = i + 1;
        }
        return lines;
    }

    private static NailClearance? Clearance(WorkbookInput input, NailQuantity nail) => input.Report.Nails.GetValueOrDefault(nail.Nail.Mark);

    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;
}
