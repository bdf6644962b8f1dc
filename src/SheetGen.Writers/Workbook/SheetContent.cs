namespace SheetGen.Writers.Workbook;

/// <summary>A worksheet as plain data.</summary>
internal sealed class SheetContent(string name)
{
    private readonly Dictionary<int, SortedList<int, SheetCell>> _rows = [];
    private readonly Dictionary<int, double> _widths = [];

    public string Name => name;

    /// <summary>Rows that stay in view and are repeated on every printed page.</summary>
    public int HeadRows { get; set; } = 5;

    /// <summary>Columns that stay in view.</summary>
    public int HeadColumns { get; set; }

    /// <summary>The sheet's tables, for the table files: name of the file, then heads and rows with unrounded numbers.</summary>
    public List<(string Name, IEnumerable<IReadOnlyList<string>> Rows)> Tables { get; } = [];

    public List<InputRule> Rules { get; } = [];

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

    /// <summary>At least this width, in characters.</summary>
    public void Widen(int column, double width) => _widths[column] = Math.Max(width, _widths.GetValueOrDefault(column));
}
