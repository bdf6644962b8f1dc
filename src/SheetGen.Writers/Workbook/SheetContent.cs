namespace SheetGen.Writers.Workbook;

/// <summary>A worksheet as plain data.</summary>
internal sealed class SheetContent(string name)
{
    private readonly SortedDictionary<int, SortedDictionary<int, SheetCell>> _rows = [];
    private readonly Dictionary<int, double> _widths = [];

    public string Name => name;

    /// <summary>Rows that stay in view and are repeated on every printed page.</summary>
    public int HeadRows { get; set; } = 5;

    /// <summary>Columns that stay in view.</summary>
    public int HeadColumns { get; set; }

    /// <summary>The sheet's tables, for the table files: name of the file, then heads and rows with unrounded numbers.</summary>
    public List<(string Name, IReadOnlyList<IReadOnlyList<string>> Rows)> Tables { get; } = [];

    public List<InputRule> Rules { get; } = [];

    public IReadOnlyDictionary<int, SortedDictionary<int, SheetCell>> Rows => _rows;

    public IReadOnlyDictionary<int, double> Widths => _widths;

    public void Put(int row, int column, SheetCell cell)
    {
        if (!_rows.TryGetValue(row, out SortedDictionary<int, SheetCell>? cells))
            _rows[row] = cells = [];
        cells[column] = cell;
    }

    public void Put(int row, int column, string text, CellStyle style) => Put(row, column, SheetCell.Of(text, style));

    /// <summary>At least this width, in characters.</summary>
    public void Widen(int column, double width) => _widths[column] = Math.Max(width, _widths.GetValueOrDefault(column));
}
