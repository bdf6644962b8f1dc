using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace SheetGen.Dxf;

/// <summary>Cuts a binary DXF file into groups; numbers become the text that they would be in an ASCII file.</summary>
internal sealed class BinaryGroups(byte[] bytes, ReadLog log) : IGroupSource
{
    /// <summary>What every binary DXF file starts with.</summary>
    internal static ReadOnlySpan<byte> Mark => "AutoCAD Binary DXF\r\n\x1a\0"u8;

    // The first group is 0 and SECTION: its code has one byte in releases up to R12, two in later ones.
    private readonly bool _isWide = bytes.Length > Mark.Length + 1 && bytes[Mark.Length + 1] == 0;
    private readonly Encoding _encoding = System.Text.Unicode.Utf8.IsValid(bytes.AsSpan(Mark.Length)) ? Encoding.UTF8 : Encoding.Latin1;
    private int _at = Mark.Length;

    public int Line { get; private set; }

    public Group? Next()
    {
        if (_at >= bytes.Length || log.Error is not null)
            return null;
        Line += 2;
        int? code = _isWide ? Int16() : Byte();
        if (code == 255 && !_isWide)
            code = Int16();
        if (code is not { } known || known is < -5 or > 1071)
        {
            Fail(code is null ? "the file ends inside of a group: it is cut off" : "there is no such group code: the binary file is damaged");
            return null;
        }
        string? value = known switch
        {
            >= 10 and <= 59 or >= 110 and <= 149 or >= 210 and <= 239 or >= 460 and <= 469 or >= 1010 and <= 1059 => Real(),
            >= 60 and <= 79 or >= 170 and <= 179 or >= 270 and <= 289 or >= 370 and <= 389 or >= 400 and <= 409 or >= 1060 and <= 1070 => Text(Int16()),
            >= 90 and <= 99 or >= 420 and <= 429 or >= 440 and <= 459 or 1071 => Text(Take(4) is { } four ? BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(four)) : null),
            >= 160 and <= 169 => Take(8) is { } eight ? BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(eight)).ToString(CultureInfo.InvariantCulture) : null,
            >= 290 and <= 299 => Text(Byte()),
            >= 310 and <= 319 or 1004 => Byte() is { } length && Take(length) is not null ? "" : null,
            _ => String(),
        };
        if (value is null)
        {
            Fail($"the file ends after group code {known}, without its value: it is cut off");
            return null;
        }
        return new(known, value, Line);
    }

    private void Fail(string message) => log.Fail(Math.Max(1, Line - 1), message);

    private static string? Text(int? value) => value?.ToString(CultureInfo.InvariantCulture);

    private int? Byte() => Take(1) is { } at ? bytes[at] : null;

    private int? Int16() => Take(2) is { } at ? BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(at)) : null;

    private string? Real() => Take(8) is { } at ? BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(at)).ToString("R", CultureInfo.InvariantCulture) : null;

    private string? String()
    {
        int end = Array.IndexOf(bytes, (byte)0, _at);
        if (end < 0)
            return null;
        string text = _encoding.GetString(bytes, _at, end - _at);
        _at = end + 1;
        return text;
    }

    /// <summary>Where the next bytes start; null where there are not so many.</summary>
    private int? Take(int count)
    {
        if (count < 0 || _at + count > bytes.Length)
            return null;
        int at = _at;
        _at += count;
        return at;
    }
}
