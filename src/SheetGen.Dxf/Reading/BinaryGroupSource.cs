using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.Unicode;

namespace SheetGen.Dxf;

/// <summary>Cuts a binary file into groups. Values come out as a text file would have them; a group counts as two lines.</summary>
/// <remarks>Codes take two bytes, in release 12 one (255 before a code of two bytes). Ranges of codes by kind of value: the DXF reference.</remarks>
internal sealed class BinaryGroupSource : IGroupSource
{
    private const int HeadLength = 22, LongestString = 1 << 20;
    private readonly byte[] _bytes;
    private readonly ReadLog _log;
    private readonly Encoding _encoding;
    private readonly bool _shortCodes;
    private int _at = HeadLength;

    internal BinaryGroupSource(byte[] bytes, ReadLog log)
    {
        (_bytes, _log) = (bytes, log);
        // Bytes of numbers are seldom UTF-8, so each string is asked for itself.
        _encoding = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
        _shortCodes = bytes.Length > HeadLength + 1 && bytes[HeadLength] == 0 && bytes[HeadLength + 1] != 0;
    }

    public int Line { get; private set; }

    internal static bool IsBinary(byte[] bytes) => bytes.AsSpan().StartsWith("AutoCAD Binary DXF\r\n\x1a\0"u8);

    public Group? Next()
    {
        if (_at >= _bytes.Length)
            return null;
        int line = Line + 1;
        if (!TakeCode(out int code))
            return Cut(line, "within a group code");
        if (code is < -5 or > 1071)
        {
            _log.Fail(line, $"expected a group code, found {code}");
            return null;
        }
        if (Value(code) is not { } value)
            return Cut(line, $"within the value of group code {code}");
        Line += 2;
        return new(code, value, Line);
    }

    private Group? Cut(int line, string where)
    {
        _log.Fail(line, $"the file ends {where}: it is cut off");
        return null;
    }

    private bool TakeCode(out int code)
    {
        code = 0;
        if (_shortCodes)
        {
            code = _bytes[_at++];
            if (code < 255)
                return true;
        }
        if (Take(2) is not { } span)
            return false;
        code = BinaryPrimitives.ReadInt16LittleEndian(span);
        return true;
    }

    private string? Value(int code) => code switch
    {
        1004 or (>= 310 and <= 319) => Chunk(),
        (>= 10 and <= 59) or (>= 110 and <= 149) or (>= 210 and <= 239) or (>= 460 and <= 469) or (>= 1010 and <= 1059) =>
            Take(8) is { } real ? BinaryPrimitives.ReadDoubleLittleEndian(real).ToString("R", CultureInfo.InvariantCulture) : null,
        (>= 60 and <= 79) or (>= 170 and <= 179) or (>= 270 and <= 289) or (>= 370 and <= 389) or (>= 400 and <= 409) or (>= 1060 and <= 1070) =>
            Take(2) is { } small ? BinaryPrimitives.ReadInt16LittleEndian(small).ToString(CultureInfo.InvariantCulture) : null,
        (>= 90 and <= 99) or (>= 420 and <= 429) or (>= 440 and <= 459) or 1071 =>
            Take(4) is { } whole ? BinaryPrimitives.ReadInt32LittleEndian(whole).ToString(CultureInfo.InvariantCulture) : null,
        >= 160 and <= 169 => Take(8) is { } large ? BinaryPrimitives.ReadInt64LittleEndian(large).ToString(CultureInfo.InvariantCulture) : null,
        >= 290 and <= 299 => Take(1) is { } flag ? flag[0].ToString(CultureInfo.InvariantCulture) : null,
        _ => String(),
    };

    private string? String()
    {
        ReadOnlySpan<byte> rest = _bytes.AsSpan(_at);
        int length = rest[..Math.Min(rest.Length, LongestString)].IndexOf((byte)0);
        if (length < 0)
            return null;
        _at += length + 1;
        ReadOnlySpan<byte> text = rest[..length];
        return (Utf8.IsValid(text) ? Encoding.UTF8 : _encoding).GetString(text);
    }

    private string? Chunk() => Take(1) is { } length && Take(length[0]) is { } bytes ? Convert.ToHexString(bytes) : null;

    private byte[]? Take(int count)
    {
        if (_at + count > _bytes.Length)
            return null;
        _at += count;
        return _bytes[(_at - count).._at];
    }
}
