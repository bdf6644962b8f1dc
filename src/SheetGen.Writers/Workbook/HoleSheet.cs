using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Drilling by hole diameter, summed from the nails.</summary>
internal sealed class HoleSheet
{
    public HoleSheet(WorkbookInput input, NailSheet nails)
    {
        string l = input.Length, volume = l + "3";
        Sheet = SheetHead.Make(input, "Holes", "Drilling by hole diameter", "Verification test nails are as if drilled and grouted over their whole length.");
        List<List<NailQuantity>> groups =
        [
            .. input.Quantities.Nails.GroupBy(n => (n.IsSacrificial, n.Nail.HoleDiameter)).OrderBy(g => g.Key).Select(g => g.ToList()),
        ];
        var t = new TableBlock<List<NailQuantity>>(Sheet, 5, groups);
        string Sum(string column, int row, string sign) =>
            $"SUMIFS({nails.Table.Range(column)},{nails.Table.Range("hole")},{t.At("hole", row)},{nails.Table.Range("kind")},\"{sign}verification\")";
        static string Sign(List<NailQuantity> group) => group[0].IsSacrificial ? "" : "<>";
        t.Text("for", "For", 16, g => g[0].IsSacrificial ? "verification" : "production")
            .Number("hole", $"Hole diameter, {l}", 12, CellFormat.Four, g => g[0].Nail.HoleDiameter)
            .Number("small", input.IsFeet ? "Hole diameter, in" : "Hole diameter, mm", 12, CellFormat.Two, g => g[0].Nail.HoleDiameter * (input.IsFeet ? 12 : 1000))
            .Formula("count", "Holes", 10, CellFormat.Whole,
                (g, r) => $"COUNTIFS({nails.Table.Range("hole")},{t.At("hole", r)},{nails.Table.Range("kind")},\"{Sign(g)}verification\")", g => g.Count)
            .Formula("length", $"Hole length, {l}", 13, CellFormat.Two, (g, r) => Sum("length", r, Sign(g)), g => g.Sum(n => n.Nail.Length))
            .Formula("volume", $"Hole volume, {volume}", 13, CellFormat.Two, (g, r) => Sum("hole_volume", r, Sign(g)), g => g.Sum(n => n.HoleVolume))
            .Formula("grout", $"Theoretical grout, {volume}", 13, CellFormat.Two, (g, r) => Sum("grout", r, Sign(g)), g => g.Sum(n => n.Grout));
        t.Fill("holes");
        t.TotalHead("Total");
        IReadOnlyList<NailQuantity> all = input.Quantities.Nails;
        t.Total("count", all.Count == 0 ? null : all.Count, CellFormat.Whole);
        t.Total("length", all.Count == 0 ? null : groups.Sum(g => g.Sum(n => n.Nail.Length)), CellFormat.Two);
        t.Total("volume", all.Count == 0 ? null : groups.Sum(g => g.Sum(n => n.HoleVolume)), CellFormat.Two);
        t.Total("grout", all.Count == 0 ? null : groups.Sum(g => g.Sum(n => n.Grout)), CellFormat.Two);
    }

    public SheetContent Sheet { get; }
}
