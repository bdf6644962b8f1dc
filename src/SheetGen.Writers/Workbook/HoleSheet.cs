using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Drilling by hole diameter, summed from the nails.</summary>
internal sealed class HoleSheet
{
    public HoleSheet(WorkbookInput input, NailSheet nails)
    {
        string l = input.Length, volume = l + "3";
        Sheet = SheetHead.Make(input, "Holes", "Drilling by hole diameter", "Verification test nails are as if drilled and grouted over their whole length.");
        IReadOnlyList<NailQuantity> all = input.Quantities.Nails;
        List<(double Diameter, List<NailQuantity> Production, List<NailQuantity> Verification)> groups =
        [
            .. all.GroupBy(n => n.Nail.HoleDiameter).OrderBy(g => g.Key).Select(g => (g.Key, g.Where(n => !n.IsSacrificial).ToList(), g.Where(n => n.IsSacrificial).ToList())),
        ];
        Table = new TableBlock<(double Diameter, List<NailQuantity> Production, List<NailQuantity> Verification)>(Sheet, "Holes", 5, groups);
        string Where(string sign) => $"{nails.Table.Range("hole")},{Table.This("hole")},{nails.Table.Range("kind")},\"{sign}verification\"";
        string Sum(string column, string sign = "<>") => $"SUMIFS({nails.Table.Range(column)},{Where(sign)})";
        Table.Number("hole", $"Hole diameter, {l}", 12, CellFormat.Four, g => g.Diameter)
            .Number("small", input.IsFeet ? "Hole diameter, in" : "Hole diameter, mm", 12, CellFormat.Two, g => g.Diameter * (input.IsFeet ? 12 : 1000))
            .Formula("count", "Holes of production nails", 13, CellFormat.Whole, $"COUNTIFS({Where("<>")})", g => g.Production.Count)
            .Formula("length", $"Hole length, {l}", 13, CellFormat.Two, Sum("length"), g => g.Production.Sum(n => n.Nail.Length))
            .Formula("volume", $"Hole volume, {volume}", 13, CellFormat.Two, Sum("hole_volume"), g => g.Production.Sum(n => n.HoleVolume))
            .Formula("grout", $"Theoretical grout, {volume}", 13, CellFormat.Two, Sum("grout"), g => g.Production.Sum(n => n.Grout))
            .Formula("test_count", "Holes of verification nails", 13, CellFormat.Whole, $"COUNTIFS({Where("")})", g => g.Verification.Count)
            .Formula("test_length", $"Verification, hole length, {l}", 13, CellFormat.Two, Sum("length", ""), g => g.Verification.Sum(n => n.Nail.Length))
            .Formula("test_grout", $"Verification, theoretical grout, {volume}", 14, CellFormat.Two, Sum("grout", ""), g => g.Verification.Sum(n => n.Grout));
        Table.Fill("holes");
        Table.TotalHead("Total");
        double? Total(Func<NailQuantity, bool> where, Func<NailQuantity, double> of) => all.Count == 0 ? null : groups.Sum(g => g.Production.Concat(g.Verification).Where(where).Sum(of));
        Table.Total("count", Total(n => !n.IsSacrificial, _ => 1), CellFormat.Whole);
        Table.Total("length", Total(n => !n.IsSacrificial, n => n.Nail.Length), CellFormat.Two);
        Table.Total("volume", Total(n => !n.IsSacrificial, n => n.HoleVolume), CellFormat.Two);
        Table.Total("grout", Total(n => !n.IsSacrificial, n => n.Grout), CellFormat.Two);
        Table.Total("test_count", Total(n => n.IsSacrificial, _ => 1), CellFormat.Whole);
        Table.Total("test_length", Total(n => n.IsSacrificial, n => n.Nail.Length), CellFormat.Two);
        Table.Total("test_grout", Total(n => n.IsSacrificial, n => n.Grout), CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    private TableBlock<(double Diameter, List<NailQuantity> Production, List<NailQuantity> Verification)> Table { get; }
}
