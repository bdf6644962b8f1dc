using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Precast panels by course and size.</summary>
internal sealed class PanelSheet
{
    public PanelSheet(WorkbookInput input)
    {
        string l = input.Length;
        Sheet = SheetHead.Make(input, "Panels", "Precast panels", "In level courses from the lowest bottom of the wall; restarted at corners. A panel belongs to the section of its middle.");
        Table = new TableBlock<PanelCount>(Sheet, "Panels", 5, input.Quantities.Panels, true);
        TableBlock<PanelCount> t = Table;
        t.Number("no", "Section no.", 10, CellFormat.Whole, p => input.NumberOf(p.Wall, p.Section))
            .Text("wall", "Wall", 16, p => p.Wall.Name)
            .Text("section", "Section", 10, p => p.Section.Name)
            .Number("course", "Course from below", 11, CellFormat.Whole, p => p.Course)
            .Text("size", "Size", 15, p => p.Size switch { PanelSize.Full => "full", PanelSize.Partial => "partial", _ => "special height" })
            .Text("mark", "Mark", 8, p => p.Mark)
            .Number("width", $"Width, {l}", 10, CellFormat.Two, p => p.Width)
            .Number("start", $"Height, down-station, {l}", 14, CellFormat.Two, p => p.StartHeight)
            .Number("end", $"Height, up-station, {l}", 14, CellFormat.Two, p => p.EndHeight)
            .Number("count", "Panels", 9, CellFormat.Whole, p => p.Count)
            .Number("area", $"Area of all, {l}2", 11, CellFormat.Two, p => p.Area)
            .Text("cut", "Cut by", 14, p => string.Join(", ", p.CutBy))
            .Wrapped("places", "Stations", 76, p => string.Join("; ", p.Places));
        t.Fill("panels");
        t.TotalHead("Total");
        t.Total("area", t.Items.Count == 0 ? null : t.Items.Sum(p => p.Area), CellFormat.Two);
        t.Total("count", t.Items.Count == 0 ? null : t.Items.Sum(p => p.Count), CellFormat.Whole);
    }

    public SheetContent Sheet { get; }

    public TableBlock<PanelCount> Table { get; }
}
