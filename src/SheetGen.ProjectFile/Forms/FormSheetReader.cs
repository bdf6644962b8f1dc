using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Forms.Xlsx;
using SheetGen.ProjectFile.Keys;
using SheetGen.ProjectFile.Tree;
using SheetGen.ProjectFile.Values;

namespace SheetGen.ProjectFile.Forms;

/// <summary>One sheet of a filled form: its row of headings, and the cells below them by heading. Cells that stand under no heading are faults.</summary>
internal sealed class FormSheetReader
{
    /// <summary>The headings are looked for in so many rows from the top.</summary>
    private const int HeadRows = 20;

    private readonly string _file;
    private readonly GridSheet _sheet;
    private readonly ProblemList _problems;
    private readonly Dictionary<int, string> _headings = [];
    private readonly int _headRow;

    /// <param name="headings">The headings that the sheet knows.</param>
    /// <param name="told">Headings of columns that only tell something.</param>
    public FormSheetReader(string file, GridSheet sheet, IReadOnlyList<string> headings, IReadOnlyList<string> told, ProblemList problems)
    {
        (_file, _sheet, _problems) = (file, sheet, problems);
        var known = headings.Concat(told).ToDictionary(Spelling.Bare, h => h);
        int Known(IReadOnlyList<GridCell> row) => row.Count(c => known.ContainsKey(Spelling.Bare(c.Text)));
        IReadOnlyList<GridCell>? head = sheet.Rows.Where(r => r[0].Row <= HeadRows && Known(r) >= Math.Min(2, headings.Count) && Known(r) * 2 > r.Count).MaxBy(Known);
        if (head is null)
        {
            IsReadable = sheet.Rows.Count == 0;
            if (!IsReadable)
                problems.Add(ProblemCodes.FormFile, new SourceSpot(file, 1, 1) { Sheet = sheet.Name }, "the sheet has no row of headings, so that nothing of it can be read", $"a row with {string.Join(", ", headings.Take(4))} and so on, as \"start --form\" writes it");
            return;
        }
        IsReadable = true;
        _headRow = head[0].Row;
        foreach (GridCell cell in head)
        {
            if (!known.TryGetValue(Spelling.Bare(cell.Text), out string? heading))
                problems.Add(ProblemCodes.UnknownKey, SpotOf(cell), $"unknown key \"{Shown.Short(cell.Text)}\" over a column of the sheet \"{sheet.Name}\"", Suggestion.Nearest(cell.Text, headings) is { } near ? $"did you mean \"{near}\"?" : "known here: " + string.Join(", ", headings.Take(30)));
            else if (_headings.ContainsValue(heading) && !told.Contains(heading))
                problems.Add(ProblemCodes.DuplicateKey, SpotOf(cell), $"two columns have the heading \"{heading}\"", "remove one of the two");
            else
                _headings[cell.Column] = heading;
        }
        foreach ((int firstRow, int firstColumn, int lastRow, int lastColumn) in sheet.Merged.Where(m => m.LastRow > _headRow && _headings.Keys.Any(c => c >= m.FirstColumn && c <= m.LastColumn && !told.Contains(_headings[c]))))
        {
            var spot = new SourceSpot(file, firstRow, firstColumn) { Sheet = sheet.Name };
            problems.Add(ProblemCodes.FormCell, spot, $"the cells {spot.Cell} to {new SourceSpot(file, lastRow, lastColumn) { Sheet = sheet.Name }.Cell} are merged, so that it is not clear which of them the value is for", "unmerge them, and write the value into each cell that it is for");
        }
    }

    public bool IsReadable { get; }

    /// <summary>Place of the sheet's row of headings.</summary>
    public SourceSpot Start => new(_file, Math.Max(1, _headRow), 1) { Sheet = _sheet.Name };

    /// <summary>The rows below the headings, each by heading; rows without anything are passed over.</summary>
    public IEnumerable<IReadOnlyDictionary<string, GridCell>> Rows()
    {
        var strays = new HashSet<int>();
        foreach (IReadOnlyList<GridCell> row in _headRow == 0 ? [] : _sheet.Rows.Where(r => r[0].Row > _headRow))
        {
            var cells = new Dictionary<string, GridCell>();
            foreach (GridCell cell in row)
            {
                if (_headings.TryGetValue(cell.Column, out string? heading))
                    cells[heading] = cell;
                else if (strays.Add(cell.Column))
                    _problems.Add(ProblemCodes.FormCell, SpotOf(cell), "this cell stands under no known heading, so that it cannot be read", "move it under a heading, or take it out");
            }
            if (cells.Count > 0)
                yield return cells;
        }
    }

    public SourceSpot SpotOf(GridCell cell) => new(_file, cell.Row, cell.Column) { Sheet = _sheet.Name };

    /// <summary>The value of a cell as a node.</summary>
    public Node ValueOf(GridCell cell, Key key) => CellValue.Of(cell, SpotOf(cell), key, _problems);
}
