using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Areas, shotcrete, reinforcement, panels and leveling pad.</summary>
internal sealed class FacingSheet
{
    public FacingSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Facing and panels", "Facing and panels",
            "Areas by polygons between top and stepped bottom. Neat: along the face. Pay outline: developed elevation as drawn. Loss is a share of the material supplied.");
        Sheet.HeadColumns = 3;
        string l = input.Length, area = l + "2", volume = l + "3";
        Sections = new TableBlock<SectionQuantities>(Sheet, 5, input.Quantities.Sections);
        TableBlock<SectionQuantities> t = Sections;
        const string loss = RateSheet.ShotcreteLoss;
        t.Number("no", "Section no.", 9, CellFormat.Whole, s => input.NumberOf(s.Wall, s.Section))
            .Text("wall", "Wall", 14, s => s.Wall.Name)
            .Text("section", "Section", 9, s => s.Section.Name)
            .Number("gross", $"Area with openings, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.FaceAreaGross))
            .Number("openings", $"Openings, {area}", 11, CellFormat.Two, s => Of(s, QuantityName.OpeningArea))
            .Formula("neat", $"Neat area, {area}", 12, CellFormat.Two, (_, r) => $"{t.At("gross", r)}-{t.At("openings", r)}", s => Of(s, QuantityName.FaceArea))
            .Number("outline", $"Pay outline, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.ElevationArea))
            .Number("front", $"Front of facing, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.PanelFaceArea))
            .Number("exposed", $"Neat area above grade, {area}", 12, CellFormat.Two, s => Of(s, QuantityName.ExposedArea))
            .Number("thickness", $"Shotcrete thickness, {l}", 11, CellFormat.Three, s => s.Wall.Facing?.Shotcrete)
            .Formula("shotcrete", $"Shotcrete, neat, {volume}", 12, CellFormat.Two,
                (_, r) => $"IF({t.At("thickness", r)}=\"\",\"\",{t.At("neat", r)}*{t.At("thickness", r)})", s => Of(s, QuantityName.ShotcreteVolume))
            .Formula("supplied", $"Shotcrete, supplied, {volume}", 12, CellFormat.Two,
                (_, r) => $"IF(OR({loss}=\"\",{t.At("thickness", r)}=\"\"),\"\",{t.At("shotcrete", r)}/(1-{loss}))", s => Of(s, QuantityName.ShotcreteSupplied))
            .Formula("mesh", $"Welded wire, neat, {area}", 12, CellFormat.Two,
                (_, r) => $"IF({t.At("thickness", r)}=\"\",\"\",{t.At("neat", r)})", s => Of(s, QuantityName.MeshArea))
            .Number("waler", $"Length of rows, {l}", 12, CellFormat.Two, s => Of(s, QuantityName.WalerLength))
            .Formula("waler_bars", $"Waler bars, {l}", 12, CellFormat.Two,
                (_, r) => $"IF({RateSheet.WalerBars}=\"\",\"\",{t.At("waler", r)}*{RateSheet.WalerBars})", _ => null)
            .Formula("nails", "Production nails", 11, CellFormat.Whole, (_, r) => nails.Count(t.At("no", r)), s => Of(s, QuantityName.NailCount))
            .Formula("bearing", $"Bearing bars, {l}", 12, CellFormat.Two,
                (_, r) => $"IF(OR({RateSheet.BearingBars}=\"\",{RateSheet.BearingBarLength}=\"\"),\"\",{t.At("nails", r)}*{RateSheet.BearingBars}*{RateSheet.BearingBarLength})",
                _ => null)
            .Number("coping", $"Coping, {l}", 11, CellFormat.Two, s => Of(s, QuantityName.CopingLength));
        t.Fill("facing");
        t.TotalHead("Total");
        foreach ((string key, string name) in Totals)
            t.Total(key, input.Quantities.Totals[name].Amount, CellFormat.Two);

        int panelRow = t.LastRow + 5;
        Sheet.Put(panelRow - 1, 0, "Precast panels, in level courses from the lowest bottom; restarted at corners", new CellStyle(CellLook.Title, CellFormat.General));
        Panels = new TableBlock<PanelCount>(Sheet, panelRow, input.Quantities.Panels);
        Panels.Number("no", "Section no.", 9, CellFormat.Whole, p => input.NumberOf(p.Wall, p.Section))
            .Text("wall", "Wall", 14, p => p.Wall.Name)
            .Text("section", "Section", 9, p => p.Section.Name)
            .Number("course", "Course from below", 12, CellFormat.Whole, p => p.Course)
            .Text("size", "Size", 15, p => p.Size switch { PanelSize.Full => "full", PanelSize.Partial => "partial", _ => "special height" })
            .Number("width", $"Width, {l}", 12, CellFormat.Two, p => p.Width)
            .Number("start", $"Height, down-station, {l}", 12, CellFormat.Two, p => p.StartHeight)
            .Number("end", $"Height, up-station, {l}", 12, CellFormat.Two, p => p.EndHeight)
            .Number("count", "Panels", 12, CellFormat.Whole, p => p.Count)
            .Text("places", "Stations", 11, p => string.Join("; ", p.Places));
        Panels.Fill("panels");

        int padRow = Panels.LastRow + 4;
        Sheet.Put(padRow - 1, 0, "Leveling pad", new CellStyle(CellLook.Title, CellFormat.General));
        Pad = new TableBlock<PadRun>(Sheet, padRow, input.Quantities.Pad);
        Pad.Number("no", "Section no.", 9, CellFormat.Whole, p => input.NumberOf(p.Wall, p.Section))
            .Text("wall", "Wall", 14, p => p.Wall.Name)
            .Text("section", "Section", 9, p => p.Section.Name)
            .Text("from", "From station", 12, p => input.Station(p.Wall, p.Start))
            .Text("to", "To station", 11, p => input.Station(p.Wall, p.End))
            .Number("elevation", $"Elevation, {l}", 12, input.Place, p => p.Elevation)
            .Number("length", $"Length, {l}", 12, CellFormat.Two, p => p.Length)
            .Number("rise", $"Step before, {l}", 12, input.Place, p => p.StepsUp)
            .Number("step", "Steps", 12, CellFormat.Whole, p => p.StepsUp is { } rise && rise != 0 ? 1 : 0);
        Pad.Fill("leveling-pad");
    }

    public SheetContent Sheet { get; }

    public TableBlock<SectionQuantities> Sections { get; }

    public TableBlock<PanelCount> Panels { get; }

    public TableBlock<PadRun> Pad { get; }

    private static readonly (string Key, string Name)[] Totals =
    [
        ("gross", QuantityName.FaceAreaGross), ("openings", QuantityName.OpeningArea), ("neat", QuantityName.FaceArea),
        ("outline", QuantityName.ElevationArea), ("front", QuantityName.PanelFaceArea), ("exposed", QuantityName.ExposedArea),
        ("shotcrete", QuantityName.ShotcreteVolume), ("supplied", QuantityName.ShotcreteSupplied), ("mesh", QuantityName.MeshArea),
        ("waler", QuantityName.WalerLength), ("coping", QuantityName.CopingLength),
    ];

    private static double? Of(SectionQuantities section, string name) => section.Amounts[name].Amount;
}
