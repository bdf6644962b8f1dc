using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Workbook;

/// <summary>changes.xlsx: what is not the same in two states, a sheet each for nails, findings, quantities and bid items.</summary>
public static class RevisionWorkbook
{
    private const uint Tabloid = 3, A3 = 8;

    public static void Write(RevisionDifference d, Stream stream)
    {
        bool feet = Lengths.IsFoot(d.Unit);
        string unit = Lengths.Symbol(d.Unit);
        CellFormat place = feet ? CellFormat.PlainTwo : CellFormat.PlainThree, station = feet ? CellFormat.StationFeet : CellFormat.StationMetres;
        double factor = Lengths.MetresPer(d.Old.Unit ?? d.Unit) / Lengths.MetresPer(d.Unit);
        double? Old(NailChange n, Func<RevisionNail, double> of) => n.Before is { } b ? of(b) * factor : null;
        double? OldAngle(NailChange n, Func<RevisionNail, double> of) => n.Before is { } b ? of(b) : null;
        double? New(NailChange n, Func<RevisionNail, double> of) => n.After is { } a ? of(a) : null;

        SheetContent nails = Head(d, "Nails", "Nails that changed");
        var t = new TableBlock<NailChange>(nails, "ChangedNails", 5, d.Nails);
        t.Text("mark", "Nail", 14, n => n.Mark).Text("wall", "Wall", 14, n => n.Wall).Text("change", "Change", 11, n => n.Kind.ToString().ToLowerInvariant())
            .Number("s0", "Station, old", 14, station, n => Old(n, x => x.Station)).Number("s1", "Station, new", 14, station, n => New(n, x => x.Station));
        if (d.HasStationEquations)
        {
            string Printed(NailChange n, double? s) => s is { } at ? d.PrintedStation(n.Wall, at) : "";
            t.Text("s0_printed", "Station, old, printed", 16, n => Printed(n, Old(n, x => x.Station))).Text("s1_printed", "Station, new, printed", 16, n => Printed(n, New(n, x => x.Station)));
        }
        t.Number("z0", $"Elevation, old, {unit}", 12, place, n => Old(n, x => x.Elevation)).Number("z1", $"Elevation, new, {unit}", 12, place, n => New(n, x => x.Elevation))
            .Number("a0", "Splay, old, deg", 10, CellFormat.Two, n => OldAngle(n, x => x.Splay)).Number("a1", "Splay, new, deg", 10, CellFormat.Two, n => New(n, x => x.Splay))
            .Number("i0", "Inclination, old, deg", 11, CellFormat.Two, n => OldAngle(n, x => x.Inclination)).Number("i1", "Inclination, new, deg", 11, CellFormat.Two, n => New(n, x => x.Inclination))
            .Number("l0", $"Length, old, {unit}", 10, CellFormat.Two, n => Old(n, x => x.Length)).Number("l1", $"Length, new, {unit}", 10, CellFormat.Two, n => New(n, x => x.Length))
            .Wrapped("what", "What", 80, n => n.What);
        t.Fill("nails");

        SheetContent findings = Head(d, "Findings", "Findings that are new, gone or changed");
        var f = new TableBlock<FindingChange>(findings, "ChangedFindings", 5, d.Findings);
        f.Text("change", "Change", 10, c => c.Before is null ? "new" : c.After is null ? "gone" : "changed")
            .Text("severity", "Severity", 11, c => ResultWords.Of(c.Severity)).Text("code", "Code", 16, c => (c.After ?? c.Before)!.Code)
            .Wrapped("nails", "Nails", 22, c => string.Join(", ", (c.After ?? c.Before)!.Nails)).Wrapped("old", "Before", 70, c => c.Before?.Message ?? "").Wrapped("new", "Now", 70, c => c.After?.Message ?? "");
        f.Fill("findings");

        SheetContent amounts = Head(d, "Quantities", "Quantities, old and new: totals, then by wall and stage");
        var q = new TableBlock<AmountChange>(amounts, "ChangedQuantities", 5, d.Amounts);
        q.Text("wall", "Wall", 16, a => a.Wall.Length == 0 ? "total" : a.Wall).Text("stage", "Stage", 12, a => a.Stage).Text("text", "Quantity", 44, a => a.Text).Text("unit", "Unit", 8, a => a.Unit)
            .Number("old", "Old", 14, CellFormat.Two, a => a.Before).Number("new", "New", 14, CellFormat.Two, a => a.After)
            .Formula("difference", "Difference", 14, CellFormat.Two, $"N({q.This("new")})-N({q.This("old")})", a => a.Difference);
        q.Fill("quantities");

        SheetContent items = Head(d, "Bid items", "Bid items, old and new");
        var b = new TableBlock<ItemChange>(items, "ChangedItems", 5, d.Items);
        b.Text("number", "Item", 12, i => i.Number).Text("text", "Description", 44, i => i.Description).Text("unit", "Unit", 8, i => i.Unit)
            .Number("old", "Old", 14, CellFormat.Two, i => i.Before).Number("new", "New", 14, CellFormat.Two, i => i.After)
            .Formula("difference", "Difference", 14, CellFormat.Two, $"N({b.This("new")})-N({b.This("old")})", i => (i.After ?? 0) - (i.Before ?? 0))
            .Number("amount0", "Amount, old", 14, CellFormat.Two, i => i.AmountBefore).Number("amount1", "Amount, new", 14, CellFormat.Two, i => i.AmountAfter);
        b.Fill("items");
        SpreadsheetFile.Write([nails, findings, amounts, items], [], feet ? Tabloid : A3, stream);
    }

    private static SheetContent Head(RevisionDifference d, string name, string title)
    {
        var sheet = new SheetContent(name);
        sheet.Put(1, 0, title, CellStyle.Title);
        sheet.Put(2, 0, $"{d.New.Title}  (lengths in {Lengths.Symbol(d.Unit)})", CellStyle.Text);
        sheet.Put(3, 0, $"Old: {d.Old.Name}; new: {d.New.Name}. {string.Join("; ", d.NotCompared.Select(n => "not compared: " + n))}", CellStyle.Note);
        return sheet;
    }
}
