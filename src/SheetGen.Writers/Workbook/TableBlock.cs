namespace SheetGen.Writers.Workbook;

/// <summary>
/// A table in a sheet: heads, a row an item, and totals above the heads, so that rows can be added below. It is a table of the
/// spreadsheet: formulas, on its own sheet and on others, refer to its columns by name and so follow rows that are added or removed.
/// </summary>
/// <param name="name">Name of the table in formulas.</param>
/// <param name="isOpen">True where the user may change what is no formula.</param>
internal sealed class TableBlock<T>(SheetContent sheet, string name, int headRow, IReadOnlyList<T> items, bool isOpen = false)
{
    private const double WidestText = 44;
    private readonly List<Column> _columns = [];
    private readonly Dictionary<string, int> _places = [];

    public IReadOnlyList<T> Items => items;

    public int FirstRow => headRow + 1;

    /// <summary>The last row of items; the first where there are none, so that a range is never turned over.</summary>
    public int LastRow => Math.Max(FirstRow, headRow + items.Count);

    /// <summary>Adds a column.</summary>
    public TableBlock<T> Add(string key, string head, double width, Func<T, SheetCell> cell) => Add(key, new Column(head, width, null, cell));

    public TableBlock<T> Text(string key, string head, double width, Func<T, string> text) => Add(key, head, width, item => SheetCell.Of(text(item)));

    /// <summary>A column of long texts, which take as many lines as they need.</summary>
    public TableBlock<T> Wrapped(string key, string head, double width, Func<T, string> text) =>
        Add(key, head, width, item => SheetCell.Of(text(item), CellStyle.Wrapped));

    public TableBlock<T> Number(string key, string head, double width, CellFormat format, Func<T, double?> number) =>
        Add(key, head, width, item => SheetCell.Of(number(item), format));

    /// <summary>A column that the user fills in.</summary>
    public TableBlock<T> Input(string key, string head, double width, CellFormat format, Func<T, double?>? number = null) =>
        Add(key, head, width, item => SheetCell.Of(number?.Invoke(item), new CellStyle(CellLook.Input, format)));

    /// <summary>
    /// A column with one formula for all its cells, which may refer to columns added before by <see cref="This"/>. Where it cannot be
    /// computed from what the user has entered, its cell stays empty.
    /// </summary>
    public TableBlock<T> Formula(string key, string head, double width, CellStyle style, string formula, Func<T, double?> value)
    {
        string safe = $"IFERROR({formula},\"\")";
        return Add(key, new Column(head, width, safe, item => SheetCell.Calculated(safe, value(item), style)));
    }

    /// <summary>A column of texts with one formula for all its cells.</summary>
    public TableBlock<T> FormulaText(string key, string head, double width, CellStyle style, string formula, Func<T, string> value) =>
        Add(key, new Column(head, width, formula, item => SheetCell.Calculated(formula, value(item), style)));

    public int ColumnOf(string key) => _places.TryGetValue(key, out int place) ? place : throw new ArgumentException("no column " + key, nameof(key));

    /// <summary>The cell of a column in the formula's own row.</summary>
    public string This(string key) => ListTable.ThisRow(name, _columns[ColumnOf(key)].Head);

    /// <summary>All cells of a column, for formulas on any sheet.</summary>
    public string Range(string key) => ListTable.Column(name, _columns[ColumnOf(key)].Head);

    /// <summary>The number of rows, for formulas on any sheet.</summary>
    public string RowCount => $"ROWS({ListTable.Column(name, _columns[0].Head)})";

    /// <summary>The cells of a column as they are now, for what is no formula.</summary>
    public string CellsOf(string key) => CellAddress.Of(ColumnOf(key), FirstRow) + ":" + CellAddress.Of(ColumnOf(key), LastRow);

    /// <summary>One cell of a column, for formulas on any sheet.</summary>
    public string Absolute(string key, int row) => CellAddress.Absolute(sheet.Name, ColumnOf(key), row);

    /// <summary>The cell of a column in the row where another column has a value: an empty text where it is empty, an error where no row has it.</summary>
    public string Lookup(string key, string by, string value)
    {
        string found = $"INDEX({Range(key)},MATCH({value},{Range(by)},0))";
        return $"IF({found}=\"\",\"\",{found})";
    }

    /// <summary>The row in which a column has a value, counted from 1, as a formula; with <see cref="At"/> shorter than many lookups.</summary>
    public string Find(string by, string value) => $"MATCH({value},{Range(by)},0)";

    /// <summary>The cell of a column in a row counted from 1: blank where it is blank.</summary>
    public string At(string key, string row) => $"INDEX({Range(key)},{row})";

    /// <summary>How many cells of the table hold an error, for formulas on any sheet.</summary>
    public string ErrorCount => $"SUMPRODUCT(--ISERROR({name}))";

    /// <summary>How many cells of the first column stand below the table, where no formula counts them; for formulas on any sheet.</summary>
    public string StrayCount =>
        FormattableString.Invariant($"COUNTA('{sheet.Name}'!$A${FirstRow}:$A$200000)-COUNTA({ListTable.Column(name, _columns[0].Head)})");

    /// <summary>Puts heads and rows into the sheet, and the table among its tables.</summary>
    /// <param name="file">Name of the table's file.</param>
    /// <param name="isFiled">Which items the file holds; all where it is not given.</param>
    public void Fill(string file, Func<T, bool>? isFiled = null)
    {
        sheet.Tables.Add((file, Enumerable.Range(headRow, items.Count + 1)
            .Where(r => r == headRow || isFiled is null || isFiled(items[r - FirstRow])).Select(r => sheet.Plain(r, _columns.Count))));
        sheet.ListTables.Add(new ListTable(name, headRow, Math.Max(1, items.Count), [.. _columns.Select(c => (c.Head, c.Formula))]));
        for (int c = 0; c < _columns.Count; c++)
        {
            sheet.Put(headRow, c, _columns[c].Head, CellStyle.Head);
            sheet.Widen(c, _columns[c].Width);
        }
        for (int i = 0; i < items.Count; i++)
        {
            for (int c = 0; c < _columns.Count; c++)
                sheet.Put(FirstRow + i, c, Fitted(c, _columns[c].Cell(items[i])));
        }
        if (items.Count == 0)
            sheet.Put(FirstRow, 0, "none", CellStyle.Note);
    }

    /// <summary>Puts a total above the head of a column.</summary>
    public void Total(string key, double? value, CellFormat format)
    {
        string cells = Range(key);
        var cell = SheetCell.Calculated($"IF(COUNT({cells})=0,\"\",SUM({cells}))", value, new CellStyle(CellLook.Total, format));
        sheet.WidenFor(ColumnOf(key), cell, WidestText);
        sheet.Put(headRow - 1, ColumnOf(key), cell);
    }

    /// <summary>Puts a word at the left of the row of totals.</summary>
    public void TotalHead(string text) => sheet.Put(headRow - 1, 0, text, new CellStyle(CellLook.Total, CellFormat.General));

    private TableBlock<T> Add(string key, Column column)
    {
        if (_columns.Any(c => c.Head.Equals(column.Head, StringComparison.OrdinalIgnoreCase)))
            throw new ArgumentException("two columns with the head " + column.Head, nameof(column));
        _places.Add(key, _columns.Count);
        _columns.Add(column);
        return this;
    }

    private SheetCell Fitted(int column, SheetCell cell)
    {
        if (cell.Style.Look != CellLook.Wrapped && sheet.WidenFor(column, cell, Math.Max(WidestText, _columns[column].Width)) && cell.Style.Look == CellLook.Label)
            cell = cell.With(CellStyle.Wrapped with { IsQuoted = cell.Style.IsQuoted });
        return isOpen && cell.Formula is null ? cell.Opened() : cell;
    }

    private readonly record struct Column(string Head, double Width, string? Formula, Func<T, SheetCell> Cell);
}
