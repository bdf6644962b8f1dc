namespace SheetGen.Writers.Workbook;

/// <summary>A worksheet as plain data. Where it is protected, it is without a password: formulas and heads are locked, inputs are open.</summary>
internal sealed class SheetContent(string name)
{
    private readonly Dictionary<int, SortedList<int, SheetCell>> _rows = [];
    private readonly Dictionary<int, double> _widths = [];

    public string Name => name;

    public bool IsProtected { get; init; } = true;

    /// <summary>Rows that stay in view and are repeated on every printed page.</summary>
    public int HeadRows { get; set; } = 5;

    /// <summary>Columns that stay in view.</summary>
    public int HeadColumns { get; set; }

    /// <summary>The sheet's tables, for the table files: name of the file, then heads and rows with unrounded numbers.</summary>
    public List<(string Name, IEnumerable<IReadOnlyList<string>> Rows)> Tables { get; } = [];

    /// <summary>The sheet's lists as tables of the spreadsheet, to whose columns formulas refer by name.</summary>
    public List<ListTable> ListTables { get; } = [];

    public List<InputRule> Rules { get; } = [];

    public List<SheetLink> Links { get; } = [];

    public List<SheetChart> Charts { get; } = [];

    /// <summary>Cells by row and column; the rows in no order.</summary>
    public IReadOnlyDictionary<int, SortedList<int, SheetCell>> Rows => _rows;

    public IReadOnlyDictionary<int, double> Widths => _widths;

    public void Put(int row, int column, SheetCell cell)
    {
        if (!_rows.TryGetValue(row, out SortedList<int, SheetCell>? cells))
            _rows[row] = cells = [];
        cells[column] = cell;
    }

    /// <summary>The unrounded texts of some columns of a row, from the left.</summary>
    public IReadOnlyList<string> Plain(int row, int columns)
    {
        _rows.TryGetValue(row, out SortedList<int, SheetCell>? cells);
        return [.. Enumerable.Range(0, columns).Select(c => cells is not null && cells.TryGetValue(c, out SheetCell cell) ? cell.Plain : "")];
    }

    public void Put(int row, int column, string text, CellStyle style) => Put(row, column, SheetCell.Of(text, style));

    /// <summary>Puts a text that leads to a cell of the workbook.</summary>
    public void PutLink(int row, int column, string text, string target)
    {
        Put(row, column, SheetCell.Of(text, CellStyle.Link));
        Links.Add(new SheetLink(CellAddress.Of(column, row), target));
    }

    /// <summary>At least this width, in characters.</summary>
    public void Widen(int column, double width) => _widths[column] = Math.Max(width, _widths.GetValueOrDefault(column));

    /// <summary>Wide enough for a cell, up to a limit; true where the limit is not enough.</summary>
    public bool WidenFor(int column, SheetCell cell, double limit)
    {
        double width = cell.ShownLength + 2.5;
        Widen(column, Math.Min(limit, width));
        return width > limit;
    }
}
