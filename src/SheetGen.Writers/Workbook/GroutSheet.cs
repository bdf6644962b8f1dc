using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Grout by section.</summary>
internal sealed class GroutSheet
{
    public GroutSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Grout", "Drilling and grout",
            "Theoretical grout = hole volume - nominal bar volume in the hole. Take of 100 to 130 % of the hole is usual (FHWA-NHI-14-007, 9.3.4, as transcribed).");
        string l = input.Length, volume = l + "3";
        var t = new TableBlock<SectionQuantities>(Sheet, "Grout", 5, input.Quantities.Sections);
        double perBulk = input.IsFeet ? 27 : 1;
        t.Number("no", "Section no.", 10, CellFormat.Whole, s => input.NumberOf(s.Wall, s.Section))
            .Text("wall", "Wall", 16, s => s.Wall.Name)
            .Text("section", "Section", 10, s => s.Section.Name)
            .Number("hole", $"Hole diameter, {l}", 11, CellFormat.Three, s => s.Section.HoleDiameter)
            .Formula("count", "Production nails", 12, CellFormat.Whole, nails.Count(t.This("no")), s => Of(s, QuantityName.NailCount))
            .Formula("length", $"Hole length, {l}", 12, CellFormat.Two, nails.Sum("length", t.This("no")), s => Of(s, QuantityName.HoleLength))
            .Formula("holes", $"Hole volume, {volume}", 12, CellFormat.Two, nails.Sum("hole_volume", t.This("no")), s => Of(s, QuantityName.HoleVolume))
            .Formula("bars", $"Bars in holes, {volume}", 12, CellFormat.Two, nails.Sum("bar_volume", t.This("no")),
                s => Of(s, QuantityName.HoleVolume) - Of(s, QuantityName.GroutVolume))
            .Formula("grout", $"Theoretical grout, {volume}", 12, CellFormat.Two, $"{t.This("holes")}-{t.This("bars")}", s => Of(s, QuantityName.GroutVolume))
            .Formula("overrun", $"Grout with overrun, {volume}", 12, CellFormat.Two,
                $"IF({RateSheet.GroutOverrun}=\"\",\"\",{t.This("grout")}*{RateSheet.GroutOverrun})", s => Of(s, QuantityName.GroutWithOverrun))
            .Formula("bulk", $"Theoretical grout in bulk, {(input.IsFeet ? "yd3" : "m3")}", 12, CellFormat.Two,
                FormattableString.Invariant($"{t.This("grout")}/{perBulk}"), s => Of(s, QuantityName.GroutVolume) / perBulk)
            .Formula("verification", $"Verification nails, theoretical grout, {volume}", 14, CellFormat.Two,
                nails.Sum("grout", t.This("no"), true), s => Of(s, QuantityName.VerificationGrout));
        t.Fill("grout");
        t.TotalHead("Total");
        double? Total(string name) => input.Quantities.Totals[name].Amount;
        t.Total("count", Total(QuantityName.NailCount), CellFormat.Whole);
        t.Total("length", Total(QuantityName.HoleLength), CellFormat.Two);
        t.Total("holes", Total(QuantityName.HoleVolume), CellFormat.Two);
        t.Total("bars", Total(QuantityName.HoleVolume) - Total(QuantityName.GroutVolume), CellFormat.Two);
        t.Total("grout", Total(QuantityName.GroutVolume), CellFormat.Two);
        t.Total("overrun", Total(QuantityName.GroutWithOverrun), CellFormat.Two);
        t.Total("bulk", Total(QuantityName.GroutVolume) / perBulk, CellFormat.Two);
        t.Total("verification", Total(QuantityName.VerificationGrout), CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    private static double? Of(SectionQuantities section, string name) => section.Amounts[name].Amount;
}
