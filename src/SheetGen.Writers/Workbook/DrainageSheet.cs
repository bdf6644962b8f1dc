using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Drainage strips, one row a strip.</summary>
internal sealed class DrainageSheet
{
    public DrainageSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Drainage", "Drainage strips",
            "Between nail columns, no farther apart than the greatest spacing, no farther than half of it from the ends of a leg. Default of the spacing: 10 ft or 3 m (common practice, no source).");
        Table = new TableBlock<DrainStrip>(Sheet, "Strips", 5, input.Quantities.Strips, true);
        Table.Number("no", "Section no.", 10, CellFormat.Whole, s => input.NumberOf(s.Wall, s.Section))
            .Text("wall", "Wall", 16, s => s.Wall.Name)
            .Text("section", "Section", 10, s => s.Section.Name)
            .Station(input, "station", "Station", 14, s => s.Wall, s => s.Wall.StationOf(s.Along))
            .Number("spacing", $"Greatest spacing, {input.Length}", 12, CellFormat.Two, s => s.Spacing)
            .Text("source", "That spacing is from", 14, s => s.Wall.Drainage?.MaxSpacing is null ? "default" : "project file")
            .Number("length", $"Length, {input.Length}", 12, CellFormat.Two, s => s.Length)
            .Add("note", "Note", 60, s => s.Touches.Count == 0 ? SheetCell.Of("clear of all holes")
                : SheetCell.Of("not clear of " + string.Join(", ", s.Touches), new CellStyle(CellLook.Warning, CellFormat.General)));
        Table.Fill("drainage");
        Table.TotalHead("Total");
        Table.Total("length", Table.Items.Count == 0 ? null : Table.Items.Sum(s => s.Length), CellFormat.Two);
    }

    public SheetContent Sheet { get; }

    public TableBlock<DrainStrip> Table { get; }
}
