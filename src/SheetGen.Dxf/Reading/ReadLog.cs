namespace SheetGen.Dxf;

/// <summary>Collects what goes wrong while reading.</summary>
internal sealed class ReadLog
{
    private readonly Dictionary<string, DxfProblem> _warnings = new(StringComparer.Ordinal);

    /// <summary>The error that makes the file unreadable: the first in the file.</summary>
    internal DxfProblem? Error { get; private set; }

    internal IReadOnlyList<DxfProblem> Warnings =>
        [.. _warnings.Values.OrderBy(w => w.Line).ThenBy(w => w.Message, StringComparer.Ordinal)];

    internal void Fail(int line, string message)
    {
        if (Error is null || line < Error.Line)
            Error = new(line, message);
    }

    /// <summary>Warns of a record: of the kind that its own is.</summary>
    internal void Warn(Record record, string message) => Warn(record.Line, message, record.Kind == "VIEWPORT" ? DxfProblemKind.Paper : DxfProblemKind.Content);

    internal void Warn(int line, string message, DxfProblemKind kind = DxfProblemKind.Content)
    {
        var known = _warnings.GetValueOrDefault(message);
        _warnings[message] = known is null
            ? new(line, message) { Kind = kind }
            : known with { Line = Math.Min(line, known.Line), Count = known.Count + 1 };
    }

    /// <summary>A value for a message: short and in one line.</summary>
    internal static string Quote(string value)
    {
        const int Longest = 40;
        var clean = string.Concat(value.Take(Longest).Select(c => char.IsControl(c) || c == '\ufffd' ? '?' : c));
        return "'" + clean + (value.Length > Longest ? "..." : "") + "'";
    }
}
