using SheetGen.Writers.Workbook;

namespace SheetGen.Writers.Register;

/// <summary>Tables as a workbook: a sheet and a spreadsheet table each. Sums by contract and stage are formulas over the bid items, beside our own values.</summary>
public static class RegisterWorkbook
{
    private const uint Tabloid = 3, A3 = 8;
    private const int HeadRow = 5;

    /// <summary>Writes the workbook and leaves the stream open. The same tables give the same bytes.</summary>
    public static void Write(string title, string caution, IReadOnlyList<RegisterTable> tables, bool isMetric, string version, Stream stream)
    {
        List<SheetContent> sheets = [.. tables.Select(t => SheetOf(title, caution, t, version))];
        SpreadsheetFile.Write(sheets, [], isMetric ? A3 : Tabloid, stream);
    }

    private static SheetContent SheetOf(string title, string caution, RegisterTable table, string version)
    {
        var sheet = new SheetContent(table.Name) { HeadRows = HeadRow, HeadColumns = Math.Min(2, table.Columns.Count) };
        sheet.Put(1, 0, $"{title}: {table.Title}", CellStyle.Title);
        sheet.Put(2, 0, table.Note, CellStyle.Note);
        sheet.Put(3, 0, $"{caution} Program version {version}.", new CellStyle(CellLook.Warning, CellFormat.General));
        var block = new TableBlock<IReadOnlyList<RegisterCell>>(sheet, table.Name, HeadRow, table.Rows);
        for (int i = 0; i < table.Columns.Count; i++)
        {
            int at = i;
            string key = "c" + i.ToString(System.Globalization.CultureInfo.InvariantCulture);
            if (table.Name == "Sums" && table.Columns[i].Head is "Quantity" or "Unrounded" && table.Name == "Sums")
                block.Formula(key, table.Columns[i].Head, 14, CellFormat.Two, SumFormula(block, table.Columns[i].Head), r => r[at].Number);
            else
                block.Add(key, table.Columns[i].Head, table.Columns[i].IsNumeric ? 12 : 14, r => CellOf(r[at]));
        }
        block.Fill(table.Name.ToLowerInvariant());
        return sheet;
    }

    /// <summary>The bid quantities of the row's contract, stage, item and unit; "all" stands for any. Texts beside the numbers are left out by the function itself.</summary>
    private static string SumFormula(TableBlock<IReadOnlyList<RegisterCell>> sums, string column)
    {
        string Any(string key, string head) => $"((({sums.This(key)}=\"all\")+(Bid[{head}]={sums.This(key)}))>0)";
        string Same(string key, string head) => $"(Bid[{head}]={sums.This(key)})";
        return $"SUMPRODUCT({Any("c0", "Contract")}*{Any("c1", "Stage")}*{Same("c2", "Item")}*{Same("c3", "Description")}*{Same("c4", "Unit")},Bid[{column}])";
    }

    private static SheetCell CellOf(RegisterCell cell)
    {
        CellFormat format = cell.Text is not null ? CellFormat.General : cell.Decimals switch { <= 0 => CellFormat.Whole, 1 => CellFormat.One, 2 => CellFormat.Two, 3 => CellFormat.Three, _ => CellFormat.Four };
        CellStyle style = cell.IsWarning ? new CellStyle(CellLook.Warning, format) : cell.Text is not null ? CellStyle.Text : format;
        return cell.Text is { } text ? SheetCell.Of(text, style) : SheetCell.Of(cell.Number, style);
    }
}
