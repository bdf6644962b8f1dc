using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Writers.Csv;

namespace SheetGen.Writers.Workbook;

/// <summary>Every nail that is not at its grid place in the grid's direction, every grid station left out, and the reconciliation.</summary>
internal sealed class RedirectSheet
{
    public RedirectSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Redirects", "Moved, redirected and left-out nails",
            "LEFT and RIGHT: the side to which the tip lies for a person in front of the wall who faces it.");
        Sheet.HeadColumns = 4;
        string l = input.Length;
        var t = new TableBlock<Nail>(Sheet, 5, [.. input.Layout.Nails.Where(n => n.Status != NailStatus.Grid || n.IsAdded || n.Reason is not null)]);
        t.Number("no", "Section no.", 9, CellFormat.Whole, n => input.NumberOf(n.Wall, n.Section))
            .Text("wall", "Wall", 14, n => n.Wall.Name)
            .Text("section", "Section", 9, n => n.Section.Name)
            .Text("nail", "Nail", 14, n => n.Mark)
            .Text("row", "Row", 8, n => n.Row.ToString())
            .Text("status", "Status", 12, n => n.IsAdded ? ResultWords.Of(n.Status) + ", added" : ResultWords.Of(n.Status))
            .Number("station", $"Station, {l}", 12, input.Place, n => n.Station)
            .Number("grid", $"Grid station, {l}", 12, input.Place, n => n.IsAdded ? null : n.GridStation)
            .Number("splay", "Splay, deg", 9, CellFormat.General, n => n.Splay)
            .Text("side", "Side", 22, Side)
            .Number("inclination", "Inclination, deg", 11, CellFormat.General, n => n.Inclination)
            .Number("length", $"Length, {l}", 10, CellFormat.Two, n => n.Length)
            .Text("blocker", "Because of", 18, n => n.Reason?.Blocker ?? "")
            .Number("before", $"Clear before, {l}", 10, CellFormat.Two, n => Finite(n.Reason?.ClearBefore))
            .Number("after", $"Clear after, {l}", 10, CellFormat.Two, n => Finite(n.Reason?.ClearAfter))
            .Number("required", $"Required, {l}", 10, CellFormat.Two, n => Finite(n.Reason?.Required))
            .Wrapped("reason", "Reason", 70, n => n.Reason?.Text ?? "");
        t.Fill("redirects");

        int leftRow = t.LastRow + 4;
        Sheet.Put(leftRow - 1, 0, "Grid stations left out", CellStyle.Title);
        var left = new TableBlock<LeftOut>(Sheet, leftRow, input.Layout.LeftOut);
        left.Number("no", "Section no.", 9, CellFormat.Whole, n => input.NumberOf(n.Wall, n.Section))
            .Text("wall", "Wall", 14, n => n.Wall.Name)
            .Text("section", "Section", 9, n => n.Section.Name)
            .Text("nail", "Mark", 14, n => n.Mark)
            .Text("row", "Row", 8, n => n.Row.ToString())
            .Text("status", "Station", 12, n => input.Station(n.Wall, n.Along))
            .Number("elevation", $"Elevation, {l}", 12, input.Place, n => n.Elevation)
            .Text("reason", "Reason", 12, n => n.Reason);
        left.Fill("left-out");

        int gridRow = left.LastRow + 4;
        Sheet.Put(gridRow - 1, 0, "Reconciliation: grid stations - left out + added = nails", CellStyle.Title);
        List<GridCount> counts = [.. input.Quantities.Sections.SelectMany(s => s.Grid)];
        var grid = new TableBlock<GridCount>(Sheet, gridRow, counts);
        grid.Number("no", "Section no.", 9, CellFormat.Whole, g => input.NumberOf(g.Wall, g.Section))
            .Text("wall", "Wall", 14, g => g.Wall.Name)
            .Text("section", "Section", 9, g => g.Section.Name)
            .Number("row", "Row", 14, CellFormat.General, g => g.Row.Value)
            .Number("stations", "Grid stations", 8, CellFormat.Whole, g => g.GridStations)
            .Number("left", "Left out", 12, CellFormat.Whole, g => g.LeftOut)
            .Number("added", "Added", 12, CellFormat.Whole, g => g.Added)
            .Formula("total", "Total", 12, CellFormat.Whole, (_, r) => $"{grid.At("stations", r)}-{grid.At("left", r)}+{grid.At("added", r)}", g => g.GridStations - g.LeftOut + g.Added)
            .Formula("nails", "Nails", 9, CellFormat.Whole,
                (_, r) => $"COUNTIFS({nails.Table.Range("no")},{grid.At("no", r)},{nails.Table.Range("row")},{grid.At("row", r)},{nails.Table.Range("kind")},\"<>verification\")",
                g => g.Nails)
            .Formula("difference", "Difference", 12, CellFormat.Whole, (_, r) => $"{grid.At("total", r)}-{grid.At("nails", r)}", g => g.Difference);
        grid.Fill("reconciliation");
        grid.TotalHead("Total");
        double? Sum(Func<GridCount, double> of) => counts.Count == 0 ? null : counts.Sum(of);
        grid.Total("stations", Sum(g => g.GridStations), CellFormat.Whole);
        grid.Total("left", Sum(g => g.LeftOut), CellFormat.Whole);
        grid.Total("added", Sum(g => g.Added), CellFormat.Whole);
        grid.Total("total", Sum(g => g.GridStations - g.LeftOut + g.Added), CellFormat.Whole);
        grid.Total("nails", Sum(g => g.Nails), CellFormat.Whole);
        grid.Total("difference", Sum(g => g.Difference), CellFormat.Whole);
    }

    public SheetContent Sheet { get; }

    private static string Side(Nail nail)
    {
        if (nail.Splay == 0)
            return "";
        bool isUp = nail.Splay > 0, upIsLeft = nail.Wall.RetainedSide == Turn.Right;
        return (isUp == upIsLeft ? "LEFT" : "RIGHT") + (isUp ? " (up-station)" : " (down-station)");
    }

    private static double? Finite(double? value) => value is { } v && double.IsFinite(v) ? v : null;
}
