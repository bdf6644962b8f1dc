using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>What would free the nails that are left unresolved, a relaxation a row.</summary>
internal sealed class HelpSheet
{
    public HelpSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Would help", "What would free unresolved nails",
            "The least relaxation of one rule for these nails alone, each tried with the search; the engineer decides. A smaller clearance needs the engineer of record's consent.");
        var t = new TableBlock<NailHelp>(Sheet, "WouldHelp", 5, input.Layout.Help);
        t.Text("wall", "Wall", 16, h => h.Wall.Name)
            .Wrapped("nails", "Nails", 40, h => string.Join(", ", h.Nails))
            .Station(input, "station", "From station", 14, h => h.Wall, h => h.Station)
            .Station(input, "to", "To station", 14, h => h.Wall, h => h.ToStation)
            .Text("relaxation", "Rule", 22, h => h.Relaxation)
            .Wrapped("value", "Value", 40, h => h.Value)
            .Wrapped("result", "Result", 60, h => h.Result);
        t.Fill("would-help");
    }

    public SheetContent Sheet { get; }
}
