using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>Grid stations, left out, added and nails, one line a row of nails.</summary>
internal sealed class ReconciliationSheet
{
    public ReconciliationSheet(WorkbookInput input, NailSheet nails)
    {
        Sheet = SheetHead.Make(input, "Reconciliation", "Reconciliation of the grid", "Grid stations - left out + added = nails, counted on the sheet \"Nails\". Verification test nails are extra to the grid.");
        List<GridCount> counts = [.. input.Quantities.Sections.SelectMany(s => s.Grid)];
        Table = new TableBlock<GridCount>(Sheet, "GridCounts", 5, counts, true);
        TableBlock<GridCount> t = Table;
        t.Number("no", "Section no.", 10, CellFormat.Whole, g => input.NumberOf(g.Wall, g.Section))
            .Text("wall", "Wall", 16, g => g.Wall.Name)
            .Text("section", "Section", 10, g => g.Section.Name)
            .Number("row", "Row", 8, CellFormat.General, g => g.Row.Value)
            .Number("stations", "Grid stations", 12, CellFormat.Whole, g => g.GridStations)
            .Number("left", "Left out", 12, CellFormat.Whole, g => g.LeftOut)
            .Number("added", "Added", 12, CellFormat.Whole, g => g.Added)
            .Formula("total", "Total", 12, CellFormat.Whole, $"{t.This("stations")}-{t.This("left")}+{t.This("added")}", g => g.GridStations - g.LeftOut + g.Added)
            .Formula("nails", "Nails", 12, CellFormat.Whole,
                $"COUNTIFS({nails.Table.Range("no")},{t.This("no")},{nails.Table.Range("row")},{t.This("row")},{nails.Table.Range("kind")},\"<>verification\")",
                g => g.Nails)
            .Formula("difference", "Difference", 12, CellFormat.Whole, $"{t.This("total")}-{t.This("nails")}", g => g.Difference);
        t.Fill("reconciliation");
        t.TotalHead("Total");
        double? Sum(Func<GridCount, double> of) => counts.Count == 0 ? null : counts.Sum(of);
        t.Total("stations", Sum(g => g.GridStations), CellFormat.Whole);
        t.Total("left", Sum(g => g.LeftOut), CellFormat.Whole);
        t.Total("added", Sum(g => g.Added), CellFormat.Whole);
        t.Total("total", Sum(g => g.GridStations - g.LeftOut + g.Added), CellFormat.Whole);
        t.Total("nails", Sum(g => g.Nails), CellFormat.Whole);
        t.Total("difference", Sum(g => g.Difference), CellFormat.Whole);
    }

    public SheetContent Sheet { get; }

    public TableBlock<GridCount> Table { get; }

    /// <summary>Number of rows with nails in the section whose number stands in a cell.</summary>
    public string RowCount(string number) => $"COUNTIFS({Table.Range("no")},{number},{Table.Range("nails")},\">0\")";
}
