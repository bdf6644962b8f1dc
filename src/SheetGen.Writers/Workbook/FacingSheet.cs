using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Areas, shotcrete, reinforcement and coping by section.</summary>
internal sealed class FacingSheet
{
    public FacingSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Facing", "Facing",
            "Areas by polygons between top and stepped bottom. Neat: along the face. Pay outline: developed elevation as drawn. Loss is a share of the material supplied.");
        Sheet.HeadColumns = 3;
        string l = input.Length, area = l + "2", volume = l + "3";
        Sections = new TableBlock<SectionQuantities>(Sheet, "Facing", 5, input.Quantities.Sections, true);
        TableBlock<SectionQuantities> t = Sections;
        const string loss = RateSheet.ShotcreteLoss;
        t.Number("no", "Section no.", 9, CellFormat.Whole, s => input.NumberOf(s.Wall, s.Section))
            .Text("wall", "Wall", 14, s => s.Wall.Name)
            .Text("section", "Section", 9, s => s.Section.Name)
            .Number("gross", $"Area with openings, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.FaceAreaGross))
            .Number("openings", $"Openings, {area}", 11, CellFormat.Two, s => Of(s, QuantityName.OpeningArea))
            .Formula("neat", $"Neat area, {area}", 12, CellFormat.Two, $"{t.This("gross")}-{t.This("openings")}", s => Of(s, QuantityName.FaceArea))
            .Number("outline", $"Pay outline, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.ElevationArea))
            .Number("front", $"Front of facing, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.PanelFaceArea))
            .Number("exposed", $"Neat area above grade, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.ExposedArea))
            .Number("columns", $"Neat area by columns, {area}", 12, CellFormat.Two, s => Columns(input, s))
            .Number("thickness", $"Shotcrete thickness, {l}", 11, CellFormat.Three, s => s.Wall.Facing?.Shotcrete)
            .Formula("shotcrete", $"Shotcrete, neat, {volume}", 12, CellFormat.Two,
                $"IF({t.This("thickness")}=\"\",\"\",{t.This("neat")}*{t.This("thickness")})", s => Of(s, QuantityName.ShotcreteVolume))
            .Formula("supplied", $"Shotcrete, supplied, {volume}", 12, CellFormat.Two,
                $"IF(OR({loss}=\"\",{t.This("thickness")}=\"\"),\"\",{t.This("shotcrete")}/(1-{loss}))", s => Of(s, QuantityName.ShotcreteSupplied))
            .Formula("mesh", $"Welded wire, neat, {area}", 12, CellFormat.Two,
                $"IF({t.This("thickness")}=\"\",\"\",{t.This("neat")})", s => Of(s, QuantityName.MeshArea))
            .Number("waler", $"Length of rows, {l}", 12, CellFormat.Two, s => Of(s, QuantityName.WalerLength))
            .Formula("waler_bars", $"Waler bars, {l}", 12, CellFormat.Two,
                $"IF({RateSheet.WalerBars}=\"\",\"\",{t.This("waler")}*{RateSheet.WalerBars})", s => Of(s, QuantityName.WalerBarLength))
            .Formula("nails", "Production nails", 11, CellFormat.Whole, nails.Count(t.This("no")), s => Of(s, QuantityName.NailCount))
            .Formula("bearing", $"Bearing bars, {l}", 12, CellFormat.Two,
                $"IF(OR({RateSheet.BearingBars}=\"\",{RateSheet.BearingBarLength}=\"\"),\"\",{t.This("nails")}*{RateSheet.BearingBars}*{RateSheet.BearingBarLength})",
                s => Of(s, QuantityName.BearingBarLength))
            .Number("facing", $"Permanent facing, {volume}", 12, CellFormat.Two, s => Of(s, QuantityName.FacingVolume))
            .Number("gap", $"Fill in the gap, {volume}", 12, CellFormat.Two, s => Of(s, QuantityName.GapVolume))
            .Number("coping", $"Coping, {l}", 11, CellFormat.Two, s => Of(s, QuantityName.CopingLength));
        t.Fill("facing");
        t.TotalHead("Total");
        foreach ((string key, string name) in Totals)
            t.Total(key, input.Quantities.Totals[name].Amount, CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    public TableBlock<SectionQuantities> Sections { get; }

    private static readonly (string Key, string Name)[] Totals =
    [
        ("gross", QuantityName.FaceAreaGross), ("openings", QuantityName.OpeningArea), ("neat", QuantityName.FaceArea),
        ("outline", QuantityName.ElevationArea), ("front", QuantityName.PanelFaceArea), ("exposed", QuantityName.ExposedArea),
        ("shotcrete", QuantityName.ShotcreteVolume), ("supplied", QuantityName.ShotcreteSupplied), ("mesh", QuantityName.MeshArea),
        ("waler", QuantityName.WalerLength), ("waler_bars", QuantityName.WalerBarLength), ("bearing", QuantityName.BearingBarLength),
        ("facing", QuantityName.FacingVolume), ("gap", QuantityName.GapVolume), ("coping", QuantityName.CopingLength),
    ];

    /// <summary>The area that the independent check has for a section, by columns.</summary>
    private static double? Columns(WorkbookInput input, SectionQuantities section) =>
        input.Quantities.Checks.FirstOrDefault(c => c.Name == QuantityName.FaceArea && c.Source == CheckSource.Stored && ReferenceEquals(c.Section, section))?.Second;

    private static double? Of(SectionQuantities section, string name) => section.Amounts[name].Amount;
}
