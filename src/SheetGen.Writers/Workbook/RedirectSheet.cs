using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Every nail that is not at its grid place in the grid's direction, and why.</summary>
internal sealed class RedirectSheet
{
    public RedirectSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Redirects", "Moved, redirected and added nails",
            "LEFT and RIGHT: the side to which the tip lies for a person in front of the wall who faces it.");
        Sheet.HeadColumns = 4;
        string l = input.Length;
        var t = new TableBlock<Nail>(Sheet, "Redirects", 5, [.. input.Layout.Nails.Where(n => n.Status != NailStatus.Grid || n.IsAdded || n.Reason is not null)]);
        t.Number("no", "Section no.", 9, CellFormat.Whole, n => input.NumberOf(n.Wall, n.Section))
            .Text("wall", "Wall", 14, n => n.Wall.Name)
            .Text("section", "Section", 9, n => n.Section.Name)
            .Text("nail", "Nail", 14, n => n.Mark)
            .Text("row", "Row", 8, n => n.Row.ToString())
            .Text("status", "Status", 12, n => n.IsAdded ? ResultWords.Of(n.Status) + ", added" : ResultWords.Of(n.Status))
            .Station(input, "station", "Station", 12, n => n.Wall, n => n.Station)
            .Station(input, "grid", "Grid station", 12, n => n.Wall, n => n.IsAdded ? null : n.GridStation)
            .Number("splay", "Splay, deg", 9, CellFormat.General, n => n.Splay)
            .Text("side", "Side", 22, Side)
            .Number("inclination", "Inclination, deg", 11, CellFormat.General, n => n.Inclination)
            .Number("length", $"Length, {l}", 10, CellFormat.Two, n => n.Length)
            .Text("blocker", "Because of", 18, n => n.Reason?.Blocker ?? "")
            .Number("before", $"Clear before, {l}", 10, CellFormat.Two, n => FiniteNumber.OrNone(n.Reason?.ClearBefore))
            .Number("after", $"Clear after, {l}", 10, CellFormat.Two, n => FiniteNumber.OrNone(n.Reason?.ClearAfter))
            .Number("required", $"Required, {l}", 10, CellFormat.Two, n => FiniteNumber.OrNone(n.Reason?.Required))
            .Wrapped("reason", "Reason", 70, n => n.Reason?.Text ?? "");
        t.Fill("redirects");
    }

    public SheetContent Sheet { get; }

    private static string Side(Nail nail)
    {
        if (nail.Splay == 0)
            return "";
        bool isUp = nail.Splay > 0, upIsLeft = nail.Wall.RetainedSide == Turn.Right;
        return (isUp == upIsLeft ? "LEFT" : "RIGHT") + (isUp ? " (up-station)" : " (down-station)");
    }
}
