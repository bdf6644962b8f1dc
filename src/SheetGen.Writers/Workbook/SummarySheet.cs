using System.Globalization;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// The first sheet: what is missing where, the totals by wall and stage, three charts, what drives the cost, and the way to every other sheet.
/// </summary>
internal sealed class SummarySheet
{
    public const string Name = "Summary", FaultyNails = "faulty_nails";
    private const int ChartRows = 14, MostDrivers = 10, LastColumn = 9;
    private readonly WorkbookInput _input;
    private readonly SummaryParts _parts;

    /// <param name="others">All other sheets in order.</param>
    public SummarySheet(WorkbookInput input, SummaryParts parts, IReadOnlyList<SheetContent> others)
    {
        (_input, _parts) = (input, parts);
        Sheet = SheetHead.Make(input, Name, "Summary of quantities",
            "Caution: computed from the project file alone. An estimator and the engineer must check every figure before it is bid, built or paid.");
        Sheet.HeadRows = 2;
        Sheet.Put(3, 0, Sheet.Rows[3][0].Text!, new CellStyle(CellLook.Warning, CellFormat.General));
        Sheet.Put(4, 0, "Input hash (SHA-256): " + input.Project.InputHash, CellStyle.Text);
        Sheet.Put(5, 0, $"Revision {Shown(input.Project.Sheets.Revision)}, date {Shown(input.Project.Sheets.Date)}, program version {input.Run.Version}", CellStyle.Text);
        Sheet.Widen(0, 54);
        for (int c = 1; c <= LastColumn; c++)
            Sheet.Widen(c, 14);
        int row = Completeness(7);
        int charts = row + 1;
        row = Totals(charts + ChartRows + 1);
        row = Drivers(row + 1, charts);
        row = Areas(row + 1, charts);
        Lengths(charts);
        row = Contents(row + 1, others);
        Notes(row + 1);
    }

    public SheetContent Sheet { get; }

    public List<NamedCell> Names { get; } = [];

    private int Completeness(int row)
    {
        var panel = new CompletenessPanel(_input, _parts);
        Sheet.Put(row, 0, "Completeness", CellStyle.Title);
        IReadOnlyList<CompletenessPanel.Line> lines = panel.Lines;
        int head = row + 1, first = head + 1, last = head + lines.Count;
        string cells = CellAddress.Of(1, first) + ":" + CellAddress.Of(1, first + panel.Blocking - 1);
        int missing = lines.Take(panel.Blocking).Sum(l => l.Count);
        Sheet.Put(row, 1, SheetCell.Calculated(
            $"IF(SUM({cells})=0,\"COMPLETE: nothing is missing\",\"INCOMPLETE: see below what is missing where\")",
            missing == 0 ? "COMPLETE: nothing is missing" : "INCOMPLETE: see below what is missing where", new CellStyle(missing == 0 ? CellLook.Strong : CellLook.Warning, CellFormat.General)));
        Heads(head, "What", "How many", "Where");
        for (int i = 0; i < lines.Count; i++)
        {
            CompletenessPanel.Line line = lines[i];
            int at = first + i;
            Sheet.PutLink(at, 0, line.Text, line.Target);
            Sheet.Put(at, 1, line.Formula is null ? SheetCell.Of(line.Count, CellFormat.Whole) : SheetCell.Calculated(line.Formula, line.Count, CellFormat.Whole));
            var style = new CellStyle(line.Count > 0 ? CellLook.Warning : CellLook.Label, CellFormat.General);
            Sheet.Put(at, 2, line.WhereFormula is null ? SheetCell.Of(line.Where, style) : SheetCell.Calculated(line.WhereFormula, line.Where, style));
            if (line.Text == CompletenessPanel.NailFaults)
                Names.Add(new NamedCell(FaultyNails, CellAddress.Absolute(Name, 1, at)));
        }
        return last + 1;
    }

    private int Totals(int row)
    {
        (string Quantity, string Head, CellFormat Format)[] columns =
        [
            (QuantityName.NailCount, "Nails", CellFormat.Whole), (QuantityName.PayLength, $"Pay length, {_input.Length}", CellFormat.Two),
            (QuantityName.BarWeight, $"Bar weight, {_input.Weight}", CellFormat.Two), (QuantityName.GroutVolume, $"Theoretical grout, {_input.Length}3", CellFormat.Two),
            (QuantityName.FaceArea, $"Face area, {_input.Length}2", CellFormat.Two), (QuantityName.ShotcreteVolume, $"Shotcrete, neat, {_input.Length}3", CellFormat.Two),
            (QuantityName.StripLength, $"Drainage strips, {_input.Length}", CellFormat.Two), (QuantityName.ExcavationVolume, $"Excavation, {_input.Length}3", CellFormat.One),
            (QuantityName.VerificationCount, "Verification nails", CellFormat.Whole),
        ];
        QuantityTable table = _input.Quantities;
        QuantitySheet all = _parts.Quantities;
        Sheet.PutLink(row, 0, "Totals, by wall and stage", $"'{all.Sheet.Name}'!A1");
        Heads(row + 1, ["", .. columns.Select(c => c.Head)]);
        int at = row + 2;
        void Line(string text, Func<string, string> cell, Func<SectionQuantities, bool> where, CellLook look)
        {
            Sheet.Put(at, 0, text, new CellStyle(look == CellLook.Total ? CellLook.Total : CellLook.Label, CellFormat.General));
            for (int c = 0; c < columns.Length; c++)
            {
                List<double> known = [.. table.Sections.Where(where).Select(s => s.Amounts[columns[c].Quantity].Amount).OfType<double>()];
                string source = cell(columns[c].Quantity);
                Sheet.Put(at, c + 1, SheetCell.Calculated($"IF({source}=\"\",\"\",{source})", known.Count == 0 ? null : known.Sum(), new CellStyle(look, columns[c].Format)));
            }
            at++;
        }
        Line("Total", QuantitySheet.NameOf, _ => true, CellLook.Total);
        for (int w = 0; w < all.Walls.Count; w++)
            Line(all.Walls[w].Name, q => all.OfWall(q, w), s => ReferenceEquals(s.Wall, all.Walls[w]), CellLook.Plain);
        for (int t = 0; t < all.Stages.Count; t++)
            Line(all.StageHead(t), q => all.OfStage(q, t), s => QuantitySheet.StageOf(s).Equals(all.Stages[t], StringComparison.OrdinalIgnoreCase), CellLook.Plain);
        Sheet.Put(at, 0, "Incomplete?", CellStyle.Note);
        for (int c = 0; c < columns.Length; c++)
            Sheet.Put(at, c + 1, SheetCell.Calculated(QuantitySheet.StateNameOf(columns[c].Quantity), all.StoredState(columns[c].Quantity), CellStyle.Note));
        string sum = _parts.Bid.SumCell, label = _parts.Bid.SumLabelCell;
        Sheet.Put(at + 1, 0, SheetCell.Calculated($"\"Bid quantities, \"&LOWER(LEFT({label},1))&MID({label},2,60)", "Bid quantities, sum" + (_parts.Bid.IsWhole ? "" : ", INCOMPLETE"), new CellStyle(CellLook.Strong, CellFormat.General)));
        Sheet.Put(at + 1, 1, SheetCell.Calculated($"IF({sum}=\"\",\"no prices\",{sum})", _input.Bid.Sum, new CellStyle(CellLook.Strong, CellFormat.Two)));
        if (_input.Bid.Sum is null)
            Sheet.Put(at + 1, 1, SheetCell.Calculated($"IF({sum}=\"\",\"no prices\",{sum})", "no prices", new CellStyle(CellLook.Strong, CellFormat.Two)));
        return at + 2;
    }

    private void Lengths(int charts)
    {
        LengthSheet lengths = _parts.Lengths;
        string Cells(string key) => CellAddress.Range(lengths.Sheet.Name, lengths.Table.ColumnOf(key), lengths.Table.FirstRow, lengths.Table.LastRow);
        Dictionary<double, int> counts = _input.Quantities.Nails.Where(n => !n.IsSacrificial).GroupBy(n => n.Nail.Length).ToDictionary(g => g.Key, g => g.Count());
        Sheet.Charts.Insert(0, new SheetChart(
            $"Production nails by length, {_input.Length}", "Nails", Cells("length"), Cells("production"),
            [.. lengths.Lengths.Select(l => (l is { } known ? known.ToString("0.##", CultureInfo.InvariantCulture) : "", l is { } k ? (double?)counts.GetValueOrDefault(k) : null))],
            false, "#,##0", 0, charts, 1, charts + ChartRows));
    }

    /// <summary>The items of the greatest amounts, with their share of the sum; in the order of the amounts as they are now.</summary>
    private int Drivers(int row, int charts)
    {
        Sheet.PutLink(row, 0, "What drives the cost", $"'{BidSheet.Name}'!A1");
        Heads(row + 1, "Item", "Amount", "Share", "Added up");
        List<BidLine> sorted = [.. _input.Bid.Lines.Where(b => b.Amount is not null).OrderByDescending(b => b.Amount)];
        double? sum = _input.Bid.Sum;
        int count = Math.Min(MostDrivers, _input.Bid.Lines.Count), first = row + 2;
        string total = _parts.Bid.SumCell;
        double added = 0;
        for (int i = 0; i < count; i++)
        {
            int at = first + i;
            BidLine? line = i < sorted.Count ? sorted[i] : null;
            string place = FormattableString.Invariant($"MATCH({i + 1},{_parts.Bid.Table.Range("rank")},0)");
            string Found(string key) => $"INDEX({_parts.Bid.Table.Range(key)},{place})";
            string amount = CellAddress.Of(1, at), share = CellAddress.Of(2, at);
            double? part = sum is 0 ? null : line?.Amount / sum;
            added += part ?? 0;
            Sheet.Put(at, 0, SheetCell.Calculated($"IFERROR({Found("number")}&\" \"&{Found("description")},\"\")", line is null ? "" : NameOf(line), CellStyle.Text));
            Sheet.Put(at, 1, SheetCell.Calculated($"IFERROR({Found("amount")},\"\")", line?.Amount, CellFormat.Two));
            Sheet.Put(at, 2, SheetCell.Calculated($"IFERROR({amount}/{total},\"\")", part, CellFormat.Percent));
            Sheet.Put(at, 3, SheetCell.Calculated($"IF({share}=\"\",\"\",SUM({CellAddress.Of(2, first)}:{share}))", part is null ? null : added, CellFormat.Percent));
        }
        if (count > 0)
        {
            Sheet.Charts.Add(new SheetChart(
                sum is null ? "Share of the sum by item (no prices given)" : "Share of the sum by item", "", CellAddress.Range(Name, 0, first, first + count - 1), CellAddress.Range(Name, 2, first, first + count - 1),
                [.. Enumerable.Range(0, count).Select(i => i < sorted.Count && sum is not (null or 0) ? (NameOf(sorted[i]), sorted[i].Amount / sum) : ("", (double?)null))],
                true, "0%", 5, charts, LastColumn + 1, charts + ChartRows));
        }
        return first + count;
    }

    private int Areas(int row, int charts)
    {
        AreaBins bins = AreaBins.Of(_input.Quantities.Nails.Select(n => n.Area).OfType<double>());
        Sheet.PutLink(row, 0, "Area of face a nail", $"'{_parts.Nails.Sheet.Name}'!A1");
        Heads(row + 1, $"Area, {_input.Length}2", "Nails", "from", "to under");
        int first = row + 2;
        string area = _parts.Nails.Table.Range("area");
        for (int i = 0; i < bins.Counts.Count; i++)
        {
            (int at, bool isLast) = (first + i, i == bins.Counts.Count - 1);
            string from = CellAddress.Of(2, at), to = CellAddress.Of(3, at);
            Sheet.Put(at, 0, bins.NameOf(i), CellStyle.Text);
            Sheet.Put(at, 1, SheetCell.Calculated(
                $"IFERROR(SUMPRODUCT(ISNUMBER({area})*(ROUND({area},6)>={from}){(isLast ? "" : $"*(ROUND({area},6)<{to})")}),\"\")", bins.Counts[i], CellFormat.Whole));
            Sheet.Put(at, 2, SheetCell.Of(bins.From(i), CellFormat.Two));
            Sheet.Put(at, 3, isLast ? SheetCell.Of("and more", CellStyle.Text) : SheetCell.Of(bins.From(i + 1), CellFormat.Two));
        }
        int end = first + bins.Counts.Count - 1;
        Sheet.Charts.Add(new SheetChart(
            $"Area of face a nail, {_input.Length}2", "Nails", CellAddress.Range(Name, 0, first, end), CellAddress.Range(Name, 1, first, end),
            [.. Enumerable.Range(0, bins.Counts.Count).Select(i => (bins.NameOf(i), (double?)bins.Counts[i]))], false, "#,##0", 1, charts, 5, charts + ChartRows));
        return end + 1;
    }

    private int Contents(int row, IReadOnlyList<SheetContent> others)
    {
        Sheet.Put(row, 0, "Contents", CellStyle.Title);
        for (int i = 0; i < others.Count; i++)
        {
            Sheet.PutLink(row + 1 + i, 0, others[i].Name, $"'{others[i].Name}'!A1");
            Sheet.Put(row + 1 + i, 1, others[i].Rows[1][0].Text ?? "", CellStyle.Text);
        }
        return row + 1 + others.Count;
    }

    private void Notes(int row)
    {
        Sheet.Put(row, 0, "How to work in this book", CellStyle.Title);
        string[] notes =
        [
            "Sheets are protected without a password: formulas are locked, inputs are open (Review, Unprotect Sheet).",
            "Every list is a table; all sums refer to its columns by name, so that they follow every row in it.",
            "To change a nail: write over its figures on the sheet Nails. Bars, Grout, By section, Nails by length and the bid follow.",
            "To add a nail: unprotect the sheet Nails, copy a whole row of the table, insert the copied cells between two rows of the table, and write its",
            "own mark, length and the rest over the copy. A row written below the table counts only after the table has been made larger to hold it; until",
            "then the panel above says how many rows stand outside.",
            "To take a nail out: delete its whole row. The independent check then shows the difference to what was laid out.",
            "Areas of face, gaps, coordinates and drawings are those of the layout: they do not move when a nail is edited here.",
        ];
        for (int i = 0; i < notes.Length; i++)
            Sheet.Put(row + 1 + i, 0, notes[i], CellStyle.Text);
    }

    private void Heads(int row, params IReadOnlyList<string> heads)
    {
        for (int c = 0; c < heads.Count; c++)
            Sheet.Put(row, c, heads[c], CellStyle.Head);
    }

    private static string NameOf(BidLine line) => line.Item.Number + " " + line.Item.Description;

    private static string Shown(string text) => text.Length > 0 ? text : "not given";
}

/// <summary>The sheets that the summary refers to.</summary>
internal sealed record SummaryParts(QuantitySheet Quantities, BidSheet Bid, NailSheet Nails, LengthSheet Lengths, BarSheet Bars, CuttingSheet Cutting, FieldSheet Field, CheckSheet Check, Sources Sources);
