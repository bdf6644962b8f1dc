using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Level runs of the leveling pad.</summary>
internal sealed class PadSheet
{
    public PadSheet(WorkbookInput input)
    {
        string l = input.Length;
        Sheet = SheetHead.Make(input, "Leveling pad", "Leveling pad", "Level runs along the stepped bottom, cut at corners and section limits; lengths along the face.");
        Table = new TableBlock<PadRun>(Sheet, "Pad", 5, input.Quantities.Pad, true);
        TableBlock<PadRun> t = Table;
        t.Number("no", "Section no.", 10, CellFormat.Whole, p => input.NumberOf(p.Wall, p.Section))
            .Text("wall", "Wall", 16, p => p.Wall.Name)
            .Text("section", "Section", 10, p => p.Section.Name)
            .Station(input, "from", "From station", 14, p => p.Wall, p => p.Wall.StationOf(p.Start))
            .Station(input, "to", "To station", 14, p => p.Wall, p => p.Wall.StationOf(p.End))
            .Number("elevation", $"Elevation, {l}", 12, input.Place, p => p.Elevation)
            .Number("length", $"Length, {l}", 12, CellFormat.Two, p => p.Length)
            .Number("rise", $"Step before, {l}", 13, input.Place, p => p.StepsUp)
            .Number("step", "Steps", 9, CellFormat.Whole, p => p.StepsUp is { } rise && rise != 0 ? 1 : 0);
        t.Fill("leveling-pad");
        t.TotalHead("Total");
        t.Total("length", t.Items.Count == 0 ? null : t.Items.Sum(p => p.Length), CellFormat.Two);
        t.Total("step", t.Items.Count == 0 ? null : t.Items.Count(p => p.StepsUp is { } rise && rise != 0), CellFormat.Whole);
    }

    public SheetContent Sheet { get; }

    public TableBlock<PadRun> Table { get; }
}
