using System.Text;

namespace SheetGen.Dxf;

/// <summary>Shown text of several lines and its formatting codes: <c>\P</c> new line, <c>\{</c>, <c>\}</c>, <c>\\</c>, fonts, heights, stacks.</summary>
internal static class MTextCoding
{
    /// <summary>The longest piece of text that one group of a file holds.</summary>
    internal const int ChunkLength = 250;

    /// <summary>Encodes shown text.</summary>
    internal static string Encode(string value) => TextCoding.Encode(value)
        .Replace("\\", "\\\\", StringComparison.Ordinal)
        .Replace("{", "\\{", StringComparison.Ordinal)
        .Replace("}", "\\}", StringComparison.Ordinal)
        .Replace("\n", "\\P", StringComparison.Ordinal);

    /// <summary>Cuts a coded text into pieces that fit a group, never inside a code.</summary>
    internal static List<string> Chunks(string coded)
    {
        var chunks = new List<string>();
        var start = 0;
        var at = 0;
        while (at < coded.Length)
        {
            var length = CodeLength(coded, at);
            if (at + length - start > ChunkLength)
            {
                chunks.Add(coded[start..at]);
                start = at;
            }
            at += length;
        }
        chunks.Add(coded[start..]);
        return chunks;
    }

    /// <summary>Gives text as it is shown.</summary>
    internal static string Decode(string coded)
    {
        var text = new StringBuilder(coded.Length);
        for (var i = 0; i < coded.Length; i++)
        {
            var c = coded[i];
            if (c is '{' or '}')
                continue;
            if (c != '\\' || i + 1 == coded.Length)
            {
                text.Append(c);
                continue;
            }
            i++;
            i = DecodeCode(coded, i, text);
        }
        return TextCoding.Decode(text.ToString());
    }

    /// <summary>Takes the code whose letter is at a place; gives the place of its last character.</summary>
    private static int DecodeCode(string coded, int at, StringBuilder text)
    {
        switch (coded[at])
        {
            case '\\' or '{' or '}':
                text.Append(coded[at]);
                return at;
            case 'P' or 'N' or 'X':
                text.Append('\n');
                return at;
            case '~':
                text.Append('\u00a0');
                return at;
            case 'L' or 'l' or 'O' or 'o' or 'K' or 'k':
                return at;
            case 'A' or 'C' or 'c' or 'F' or 'f' or 'H' or 'Q' or 'T' or 'W' or 'p':
                var end = coded.IndexOf(';', at);
                return end < 0 ? at : end;
            case 'S':
                return DecodeStack(coded, at, text);
            default:
                text.Append('\\').Append(coded[at]);
                return at;
        }
    }

    private static int DecodeStack(string coded, int at, StringBuilder text)
    {
        var end = coded.IndexOf(';', at);
        if (end < 0)
            return at;
        text.Append(coded[(at + 1)..end].Replace('^', '/').Replace('#', '/'));
        return end;
    }

    private static int CodeLength(string coded, int at)
    {
        var left = coded.Length - at;
        if (coded[at] == '\\')
            return Math.Min(left, left >= 7 && coded[at + 1] == 'U' && coded[at + 2] == '+' ? 7 : 2);
        if (coded[at] == '^' || char.IsHighSurrogate(coded[at]))
            return Math.Min(left, 2);
        return left >= 3 && string.CompareOrdinal(coded, at, "%%%", 0, 3) == 0 ? 3 : 1;
    }
}
