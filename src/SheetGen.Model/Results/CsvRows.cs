using System.Text;

namespace SheetGen.Model.Results;

/// <summary>
/// Rows of comma-separated values after RFC 4180: CRLF, UTF-8 without a mark at the start, quotes only where needed. A text that a
/// spreadsheet would run as a formula gets an apostrophe before it.
/// </summary>
public sealed class CsvRows(Stream stream) : IDisposable
{
    private readonly StreamWriter _writer = new(stream, new UTF8Encoding(false), 1 << 16, leaveOpen: true);

    public void Write(params IReadOnlyList<string> cells)
    {
        for (int i = 0; i < cells.Count; i++)
        {
            if (i > 0)
                _writer.Write(',');
            _writer.Write(Quoted(FormulaText.Harmless(cells[i])));
        }
        _writer.Write("\r\n");
    }

    public void Dispose() => _writer.Dispose();

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : "\"" + text.Replace("\"", "\"\"") + "\"";
}
