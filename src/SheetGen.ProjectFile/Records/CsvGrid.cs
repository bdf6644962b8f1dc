using System.Globalization;
using System.Text;
using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile.Records;

/// <summary>A table in the form of RFC 4180 with heads, each cell with its place; commas, semicolons or tabs part the cells.</summary>
public sealed class CsvGrid
{
    private const int MostRows = 100_000, MostColumns = 200;

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
        List<List<CsvCell>> rows = Split(LineEnds(text.TrimStart('\uFEFF')), out (int Line, int Column)? open, out List<(int Line, int Column)> beyondQuotes);
        void Fault(string message, int line, int column, string hint, Severity severity = Severity.Error) =>
            problems.Add(new Problem(severity, code, message, new SourceSpot(file, line, column), hint));
        if (open is var (line, column))
            Fault("a quote is opened here and never closed", line, column, "close it with a second quote");
        foreach ((int Line, int Column) at in beyondQuotes)
            Fault("a text goes on behind its closing quote", at.Line, at.Column, "close the quote at the end of the cell, and write a quote within it twice");
        rows.RemoveAll(r => r.All(c => c.Text.Trim().Length == 0));
        if (rows.Count == 0)
        {
            Fault("the table is empty", 1, 1, $"its first line has the heads {string.Join(",", required)}");
            return null;
        }
        if (rows.Count > MostRows || rows[0].Count > MostColumns)
        {
            Fault(FormattableString.Invariant($"the table has {rows.Count} rows and {rows[0].Count} columns; the limits are {MostRows} and {MostColumns}"), 1, 1, "name another file");
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
        foreach (List<CsvCell> row in rows.Skip(1))
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

    /// <summary>The text with one kind of line end, those of old Macintosh files (CR alone) included.</summary>
    internal static string LineEnds(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');

    /// <param name="open">Where a quote is opened that is never closed.</param>
    /// <param name="beyond">Where text follows a closing quote: most likely a quote was left open before, and swallowed rows.</param>
    private static List<List<CsvCell>> Split(string text, out (int, int)? open, out List<(int, int)> beyond)
    {
        string first = text.Split('\n', 2)[0];
        char mark = new[] { ',', ';', '\t' }.MaxBy(c => first.Count(f => f == c));
        var rows = new List<List<CsvCell>>();
        var row = new List<CsvCell>();
        var cell = new StringBuilder();
        int line = 1, column = 1, cellLine = 1, cellColumn = 1;
        bool quoted = false, closed = false;
        (int, int) opened = (1, 1);
        beyond = [];
        void EndCell()
        {
            row.Add(new CsvCell(cell.ToString(), cellLine, cellColumn));
            cell.Clear();
        }
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quoted && c == '"' && i + 1 < text.Length && text[i + 1] == '"')
            {
                cell.Append('"');
                i++;
                column++;
            }
            else if (quoted ? c == '"' : c == '"' && cell.Length == 0)
            {
                (closed, quoted) = (quoted, !quoted);
                opened = (line, column);
            }
            else if (!quoted && (c == mark || c == '\n'))
            {
                EndCell();
                closed = false;
                if (c == '\n')
                {
                    rows.Add(row);
                    row = [];
                }
            }
            else
            {
                if (closed && !char.IsWhiteSpace(c))
                {
                    beyond.Add((line, column));
                    closed = false;
                }
                cell.Append(c);
            }
            (line, column) = c == '\n' ? (line + 1, 1) : (line, column + 1);
            if (!quoted && (c == mark || c == '\n'))
                (cellLine, cellColumn) = (line, column);
        }
        open = quoted ? opened : null;
        if (cell.Length > 0 || row.Count > 0)
        {
            EndCell();
            rows.Add(row);
        }
        return rows;
    }
}

/// <summary>A cell with its place; line and column count from 1.</summary>
public sealed record CsvCell(string Text, int Line, int Column);
