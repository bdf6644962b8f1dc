namespace SheetGen.Writers.Workbook;

/// <summary>A table in a sheet: heads and a row an item. Formulas elsewhere refer to its columns by key.</summary>
internal sealed class TableBlock<T>(SheetContent sheet, int headRow, IReadOnlyList<T> items)
{
    private readonly List<Column> _columns = [];
    private readonly Dictionary<string, int> _places = [];

    public IReadOnlyList<T> Items => items;

    public int FirstRow => headRow + 1;

    /// <summary>The last row of items; the first where there are none, so that a range is never turned over.</summary>
    public int LastRow => Math.Max(FirstRow, headRow + items.Count);

    /// <summary>Adds a column; the cell may refer to other cells of its row by <see cref="At"/>.</summary>
    public TableBlock<T> Add(string key, string head, double width, Func<T, int, SheetCell> cell)
    {
        _places.Add(key, _columns.Count);
        _columns.Add(new Column(head, width, cell));
        return this;
    }

    public TableBlock<T> Text(string key, string head, double width, Func<T, string> text) =>
        Add(key, head, width, (item, _) => SheetCell.Of(text(item)));

    /// <summary>A column of long texts, which take as many lines as they need.</summary>
    public TableBlock<T> Wrapped(string key, string head, double width, Func<T, string> text) =>
        Add(key, head, width, (item, _) => SheetCell.Of(text(item), CellStyle.Wrapped));

    public TableBlock<T> Number(string key, string head, double width, CellFormat format, Func<T, double?> number) =>
        Add(key, head, width, (item, _) => SheetCell.Of(number(item), format));

    public TableBlock<T> Formula(string key, string head, double width, CellFormat format, Func<T, int, string> formula, Func<T, double?> value) =>
        Add(key, head, width, (item, row) => SheetCell.Calculated(formula(item, row), value(item), format));

    public int ColumnOf(string key) => _places.TryGetValue(key, out int place) ? place : throw new ArgumentException("no column " + key, nameof(key));

    /// <summary>The cell of a column in a row, for formulas on the same sheet.</summary>
    public string At(string key, int row) => CellAddress.Of(ColumnOf(key), row);

    /// <summary>All cells of a column, for formulas on any sheet.</summary>
    public string Range(string key) => CellAddress.Range(sheet.Name, ColumnOf(key), FirstRow, LastRow);

    /// <summary>One cell of a column, for formulas on any sheet.</summary>
    public string Absolute(string key, int row) => CellAddress.Absolute(sheet.Name, ColumnOf(key), row);

    /// <summary>Puts heads and rows into the sheet, and the table among its tables.</summary>
    /// <param name="name">Name of the table's file.</param>
    public void Fill(string name)
    {
        sheet.Tables.Add((name, Enumerable.Range(headRow, items.Count + 1).Select(r => sheet.Plain(r, _columns.Count))));
        for (int c = 0; c < _columns.Count; c++)
        {
            sheet.Put(headRow, c, _columns[c].Head, CellStyle.Head);
            sheet.Widen(c, _columns[c].Width);
        }
        for (int i = 0; i < items.Count; i++)
        {
            for (int c = 0; c < _columns.Count; c++)
                sheet.Put(FirstRow + i, c, _columns[c].Cell(items[i], FirstRow + i));
        }
        if (items.Count == 0)
            sheet.Put(FirstRow, 0, "none", CellStyle.Note);
    }

    /// <summary>Puts a total below a column.</summary>
    public void Total(string key, double? value, CellFormat format)
    {
        int column = ColumnOf(key);
        string range = CellAddress.Of(column, FirstRow) + ":" + CellAddress.Of(column, LastRow);
        sheet.Put(LastRow + 1, column, SheetCell.Calculated(
            $"IF(COUNT({range})=0,\"\",SUM({range}))", value, new CellStyle(CellLook.Total, format)));
    }

    /// <summary>Puts a word at the left of the row of totals.</summary>
    public void TotalHead(string text) => sheet.Put(LastRow + 1, 0, text, new CellStyle(CellLook.Total, CellFormat.General));

    private readonly record struct Column(string Head, double Width, Func<T, int, SheetCell> Cell);
}
