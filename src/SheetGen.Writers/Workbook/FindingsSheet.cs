using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Every finding of findings.json, one row each, errors first.</summary>
internal sealed class FindingsSheet
{
    public FindingsSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Findings", "Findings", "What the checker found on this layout; nothing with an error is to be drilled before the engineer has decided.");
        Finding[] findings = [.. input.Report.Findings.OrderBy(f => f.Severity)];
        var t = new TableBlock<Finding>(Sheet, "Findings", 5, findings);
        t.Text("severity", "Severity", 11, f => ResultWords.Of(f.Severity))
            .Text("code", "Code", 16, f => f.Code)
            .Text("wall", "Wall", 16, f => f.Wall?.Name ?? "")
            .Station(input, "station", "Station", 14, f => f.Wall, f => f.Station)
            .Station(input, "to", "To station", 14, f => f.Wall, f => f.ToStation)
            .Number("elevation", $"Elevation, {input.Length}", 12, input.Place, f => f.Elevation)
            .Number("clear", $"Clear, {input.Length}", 11, CellFormat.Two, f => f.Clear)
            .Number("required", $"Required, {input.Length}", 11, CellFormat.Two, f => f.Required)
            .Wrapped("nails", "Nails", 24, f => string.Join(", ", f.Nails))
            .Text("obstruction", "Obstruction", 18, f => f.Obstruction ?? "")
            .Wrapped("message", "Finding", 90, f => f.Message);
        t.Fill("findings");
    }

    public SheetContent Sheet { get; }
}
