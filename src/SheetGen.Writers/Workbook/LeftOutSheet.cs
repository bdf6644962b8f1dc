using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Grid stations that the layout leaves without a nail, one row each.</summary>
internal sealed class LeftOutSheet
{
    public LeftOutSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Left out", "Grid stations left out", "Grid stations without a nail, and why; their marks are used by no other nail.");
        var t = new TableBlock<LeftOut>(Sheet, "LeftOut", 5, input.Layout.LeftOut);
        t.Number("no", "Section no.", 10, CellFormat.Whole, n => input.NumberOf(n.Wall, n.Section))
            .Text("wall", "Wall", 16, n => n.Wall.Name)
            .Text("section", "Section", 10, n => n.Section.Name)
            .Text("nail", "Mark", 14, n => n.Mark)
            .Number("row", "Row", 8, CellFormat.General, n => n.Row.Value)
            .Station(input, "station", "Station", 14, n => n.Wall, n => n.Wall.StationOf(n.Along))
            .Number("elevation", $"Elevation, {input.Length}", 12, input.Place, n => n.Elevation)
            .Wrapped("reason", "Reason", 70, n => n.Reason);
        t.Fill("left-out");
    }

    public SheetContent Sheet { get; }
}
