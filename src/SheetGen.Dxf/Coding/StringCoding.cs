using System.Globalization;
using System.Text;

namespace SheetGen.Dxf;

/// <summary>Any string as one line of a file: <c>^J</c> for a line end and its like, <c>\U+XXXX</c> for what else the file cannot hold.</summary>
internal static class StringCoding
{
    /// <summary>Encodes a string.</summary>
    /// <param name="value">The string.</param>
    /// <param name="unicode">Whether the file is UTF-8, so that characters beyond ASCII may stand as they are.</param>
    internal static string Encode(string value, bool unicode)
    {
        if (!value.AsSpan().ContainsAnyExceptInRange(' ', '~') && !value.AsSpan().ContainsAny('^', '\\'))
            return value;
        var text = new StringBuilder(value.Length + 16);
        for (var i = 0; i < value.Length; i++)
        {
            var c = value[i];
            if (c == '^')
                text.Append("^ ");
            else if (c is '\t' or '\n' or '\r')
                text.Append('^').Append((char)(c + '@'));
            else if (c == '\\' && IsEscape(value, i))
                Escape(text, c);
            else if (c is >= ' ' and <= '~')
                text.Append(c);
            else if (unicode && c >= '\u00a0' && c is not ('\u2028' or '\u2029' or '\ufeff') && !IsLoneSurrogate(value, i))
                text.Append(c);
            else
                Escape(text, c);
        }
        return text.ToString();
    }

    /// <summary>Decodes a line of a file.</summary>
    internal static string Decode(string line)
    {
        if (!line.AsSpan().ContainsAny('^', '\\'))
            return line;
        var text = new StringBuilder(line.Length);
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (c == '\\' && IsUnicodeEscape(line, i))
            {
                text.Append((char)int.Parse(line.AsSpan(i + 3, 4), NumberStyles.HexNumber, CultureInfo.InvariantCulture));
                i += 6;
            }
            else if (c == '^' && i + 1 < line.Length && line[i + 1] is ' ' or >= '@' and <= '_')
            {
                i++;
                text.Append(line[i] == ' ' ? '^' : (char)(line[i] - '@'));
            }
            else
            {
                text.Append(c);
            }
        }
        return text.ToString();
    }

    private static void Escape(StringBuilder text, char c) =>
        text.Append("\\U+").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture));

    private static bool IsEscape(string value, int at) =>
        IsUnicodeEscape(value, at) || string.CompareOrdinal(value, at, "\\M+", 0, 3) == 0;

    private static bool IsUnicodeEscape(string value, int at) =>
        at + 7 <= value.Length
        && value[at + 1] is 'U' or 'u'
        && value[at + 2] == '+'
        && char.IsAsciiHexDigit(value[at + 3])
        && char.IsAsciiHexDigit(value[at + 4])
        && char.IsAsciiHexDigit(value[at + 5])
        && char.IsAsciiHexDigit(value[at + 6]);

    private static bool IsLoneSurrogate(string value, int at) =>
        char.IsHighSurrogate(value[at])
            ? at + 1 == value.Length || !char.IsLowSurrogate(value[at + 1])
            : char.IsLowSurrogate(value[at]) && (at == 0 || !char.IsHighSurrogate(value[at - 1]));
}
