using System.Globalization;
using System.Text;

namespace SheetGen.Dxf;

/// <summary>Where groups come from, one after the other.</summary>
internal interface IGroupSource
{
    /// <summary>The line last read, from 1; of a binary file the line that it would be in text.</summary>
    int Line { get; }

    /// <summary>The next group, or null at the end of the file or after an error in the log.</summary>
    Group? Next();
}

/// <summary>Cuts a text file into groups.</summary>
internal sealed class GroupSource : IGroupSource
{
    private const int Shared = 4093, LongestShared = 24;

    private readonly byte[] _bytes;
    private readonly ReadLog _log;
    private readonly Encoding _encoding;
    private readonly (byte[] Bytes, string Text)[] _shared = new (byte[], string)[Shared];
    private int _at;
    private int _line;

    internal GroupSource(byte[] bytes, ReadLog log)
    {
        (_bytes, _log) = (bytes, log);
        _encoding = FileEncoding.Of(bytes, log);
        _at = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
    }

    /// <summary>The line last read, from 1.</summary>
    public int Line => _line;

    /// <summary>The next group, or null at the end of the file or after an error in the log.</summary>
    public Group? Next()
    {
        string? code;
        do
        {
            // Some programs leave blank lines between groups.
            code = NextLine()?.Trim();
        }
        while (code is "");
        if (code is null)
            return null;
        var codeLine = _line;
        if (!int.TryParse(code, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) || number is < -5 or > 1071)
        {
            _log.Fail(codeLine, $"expected a group code, found {ReadLog.Quote(code)}");
            return null;
        }
        var value = NextLine();
        if (value is null)
        {
            _log.Fail(codeLine, $"the file ends after group code {number}, without its value: it is cut off");
            return null;
        }
        return new(number, value, _line);
    }

    private string? NextLine()
    {
        if (_at >= _bytes.Length)
            return null;
        _line++;
        var rest = _bytes.AsSpan(_at);
        var length = rest.IndexOf((byte)'\n');
        _at += length < 0 ? rest.Length : length + 1;
        var line = length < 0 ? rest : rest[..length];
        if (line.EndsWith("\r"u8))
            line = line[..^1];
        return Text(line);
    }

    /// <summary>Short values that come again, as codes, layers and zeros do, are one string.</summary>
    private string Text(ReadOnlySpan<byte> line)
    {
        if (line.Length > LongestShared)
            return _encoding.GetString(line);
        var place = 17u;
        foreach (var b in line)
            place = place * 31 + b;
        ref var shared = ref _shared[place % Shared];
        if (!shared.Bytes.AsSpan().SequenceEqual(line) || shared.Text is null)
            shared = (line.ToArray(), _encoding.GetString(line));
        return shared.Text;
    }
}
