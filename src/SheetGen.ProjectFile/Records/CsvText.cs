using System.Text;

namespace SheetGen.ProjectFile.Records;

/// <summary>A cell with its place; line and column count from 1.</summary>
public sealed record CsvCell(string Text, int Line, int Column);

/// <summary>
/// A text in the form of RFC 4180 as rows of cells. Commas, semicolons or tabs part the cells, whichever its first row has most of; lines end with LF, CR LF, or
/// CR alone as in old Macintosh files.
/// </summary>
/// <param name="Rows">Rows with any text, in order.</param>
/// <param name="Open">Where a quote is opened that is never closed; null where all are.</param>
/// <param name="Beyond">Where text follows a closing quote: most likely a quote was left open before, and swallowed rows.</param>
/// <param name="TooLarge">What is too many, and where reading stopped; null where all was read.</param>
internal sealed record CsvText(
    IReadOnlyList<IReadOnlyList<CsvCell>> Rows, (int Line, int Column)? Open, IReadOnlyList<(int Line, int Column)> Beyond, (string What, int Line, int Column)? TooLarge)
{
    private const int MostRows = 200_000, MostColumns = 200;

    /// <param name="hasComments">True where a row that begins with a hash is a remark, which is left out.</param>
    public static CsvText Read(string text, bool hasComments)
    {
        text = text.TrimStart('\uFEFF').Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        char mark = MarkOf(text, hasComments);
        var rows = new List<IReadOnlyList<CsvCell>>();
        var row = new List<CsvCell>();
        var cell = new StringBuilder();
        var beyond = new List<(int, int)>();
        int line = 1, column = 1, cellLine = 1, cellColumn = 1;
        bool isQuoted = false, isClosed = false;
        (int, int) opened = (1, 1);
        for (int i = 0; i < text.Length && !IsTooLarge(); i++)
        {
            char c = text[i];
            bool ends = !isQuoted && (c == mark || c == '\n');
            if (isQuoted && c == '"' && i + 1 < text.Length && text[i + 1] == '"')
            {
                cell.Append('"');
                i++;
                column++;
            }
            else if (isQuoted && c == '"')
            {
                (isQuoted, isClosed) = (false, true);
            }
            else if (c == '"' && !isClosed && IsBlank(cell))
            {
                cell.Clear();
                (isQuoted, opened) = (true, (line, column));
            }
            else if (ends)
            {
                EndCell();
                if (c == '\n')
                    EndRow();
            }
            else
            {
                if (isClosed && !char.IsWhiteSpace(c))
                {
                    beyond.Add((line, column));
                    isClosed = false;
                }
                cell.Append(c);
            }
            (line, column) = c == '\n' ? (line + 1, 1) : (line, column + 1);
            if (ends)
                (cellLine, cellColumn) = (line, column);
        }
        if (!IsTooLarge())
        {
            EndCell();
            EndRow();
        }
        return IsTooLarge()
            ? new(rows, null, beyond, (row.Count > MostColumns ? $"over {MostColumns} columns" : FormattableString.Invariant($"over {MostRows} rows"), cellLine, cellColumn))
            : new(rows, isQuoted ? opened : null, beyond, null);

        bool IsTooLarge() => row.Count > MostColumns || rows.Count > MostRows;

        void EndCell()
        {
            row.Add(new CsvCell(cell.ToString(), cellLine, cellColumn));
            cell.Clear();
            isClosed = false;
        }

        void EndRow()
        {
            // A row that is too wide stays as it is: nothing more is read.
            if (row.Count > MostColumns)
                return;
            if (row.Any(r => !string.IsNullOrWhiteSpace(r.Text)) && !(hasComments && IsComment(row[0].Text)))
                rows.Add(row);
            row = [];
        }
    }

    private static bool IsBlank(StringBuilder cell)
    {
        for (int i = 0; i < cell.Length; i++)
        {
            if (!char.IsWhiteSpace(cell[i]))
                return false;
        }
        return true;
    }

    private static bool IsComment(string text) => text.TrimStart().StartsWith('#');

    /// <summary>Of marks that are as many, a tab before a semicolon before a comma, which may be that of a number.</summary>
    private static char MarkOf(string text, bool hasComments)
    {
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            if (line.IsWhiteSpace() || (hasComments && line.TrimStart().StartsWith("#")))
                continue;
            int tabs = line.Count('\t'), semicolons = line.Count(';');
            return tabs >= Math.Max(semicolons, line.Count(',')) && tabs > 0 ? '\t' : semicolons >= line.Count(',') && semicolons > 0 ? ';' : ',';
        }
        return ',';
    }
}
