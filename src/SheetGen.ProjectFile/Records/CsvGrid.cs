using System.Globalization;
using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile.Records;

/// <summary>A table in the form of RFC 4180 with heads, each cell with its place; commas, semicolons or tabs part the cells.</summary>
public sealed class CsvGrid
{
    private readonly string _file;
    private readonly Dictionary<string, int> _columns = new(StringComparer.OrdinalIgnoreCase);

    private CsvGrid(string file) => _file = file;

    /// <summary>Rows below the heads; rows without any text are left out.</summary>
    public List<IReadOnlyList<CsvCell>> Rows { get; } = [];

    /// <summary>Reads a text; the problems of its form are added, and null is given where it has no heads.</summary>
    /// <param name="code">Code of the problems.</param>
    /// <param name="required">Heads that must be there.</param>
    /// <param name="known">All heads; others are a warning, since their column is not read.</param>
    public static CsvGrid? Read(string text, string file, string code, IReadOnlyList<string> required, IReadOnlyList<string> known, List<Problem> problems)
    {
        var grid = new CsvGrid(file);
        (IReadOnlyList<IReadOnlyList<CsvCell>> rows, var open, var beyondQuotes, var tooLarge) = CsvText.Read(text, hasComments: false);
        void Fault(string message, int line, int column, string hint, Severity severity = Severity.Error) =>
            problems.Add(new Problem(severity, code, message, new SourceSpot(file, line, column), hint));
        if (open is var (line, column))
            Fault("a quote is opened here and never closed", line, column, "close it with a second quote");
        foreach ((int Line, int Column) at in beyondQuotes)
            Fault("a text goes on behind its closing quote", at.Line, at.Column, "close the quote at the end of the cell, and write a quote within it twice");
        if (tooLarge is var (what, stopLine, stopColumn))
        {
            Fault($"the table has {what}", stopLine, stopColumn, "name another file");
            return null;
        }
        if (rows.Count == 0)
        {
            Fault("the table is empty", 1, 1, $"its first line has the heads {string.Join(",", required)}");
            return null;
        }
        foreach ((CsvCell head, int at) in rows[0].Select((c, i) => (c, i)))
        {
            string name = head.Text.Trim();
            if (name.Length == 0)
                continue;
            if (!known.Contains(name, StringComparer.OrdinalIgnoreCase))
                Fault($"the column \"{Short(name)}\" is not read", head.Line, head.Column, $"the columns are {string.Join(", ", known)}", Severity.Warning);
            else if (!grid._columns.TryAdd(name, at))
                Fault($"the column \"{Short(name)}\" is there twice", head.Line, head.Column, "leave one of them out");
        }
        string[] missing = [.. required.Where(r => !grid._columns.ContainsKey(r))];
        if (missing.Length > 0)
        {
            Fault($"the column \"{missing[0]}\" is missing" + (missing.Length > 1 ? $", and so are {string.Join(", ", missing.Skip(1))}" : ""), rows[0][0].Line, 1, $"the first line has the heads, such as {string.Join(",", required)}");
            return null;
        }
        foreach (IReadOnlyList<CsvCell> row in rows.Skip(1))
        {
            if (row.Count > rows[0].Count && row.Skip(rows[0].Count).FirstOrDefault(c => c.Text.Trim().Length > 0) is { } beyond)
                Fault("this cell stands beyond the last head", beyond.Line, beyond.Column, "quote a text that has commas in it");
            grid.Rows.Add(row);
        }
        return grid;
    }

    public bool Has(string head) => _columns.ContainsKey(head);

    /// <summary>The cell of a row; null where the column is not there or the cell is empty.</summary>
    public CsvCell? Cell(IReadOnlyList<CsvCell> row, string head) =>
        _columns.TryGetValue(head, out int at) && at < row.Count && row[at].Text.Trim().Length > 0 ? row[at] with { Text = row[at].Text.Trim() } : null;

    public SourceSpot At(CsvCell cell) => new(_file, cell.Line, cell.Column, Math.Max(1, cell.Text.Length));

    public SourceSpot At(IReadOnlyList<CsvCell> row) => new(_file, row[0].Line, 1);

    internal static string Short(string text) => new([.. text.Take(40).Select(c => char.IsControl(c) ? '?' : c), .. text.Length > 40 ? "..." : ""]);

    internal static bool TryNumber(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
