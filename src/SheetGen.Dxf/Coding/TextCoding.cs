using System.Globalization;
using System.Text;

namespace SheetGen.Dxf;

/// <summary>Shown text and its control codes: <c>%%d</c> degree, <c>%%p</c> plus-minus, <c>%%c</c> diameter, <c>%%%</c> percent.</summary>
internal static class TextCoding
{
    /// <summary>Encodes shown text: a degree sign becomes <c>%%d</c>; percent signs in a row would be taken for a control code, so each becomes <c>%%%</c>.</summary>
    internal static string Encode(string value)
    {
        if (!value.Contains("%%", StringComparison.Ordinal) && !value.Contains('\u00b0'))
            return value;
        static bool IsCode(char c) => c is '%' or '\u00b0';
        var text = new StringBuilder(value.Length + 8);
        for (var i = 0; i < value.Length; i++)
        {
            var inRow = value[i] == '%' && ((i > 0 && IsCode(value[i - 1])) || (i + 1 < value.Length && IsCode(value[i + 1])));
            text.Append(inRow ? "%%%" : value[i] == '\u00b0' ? "%%d" : value[i].ToString());
        }
        return text.ToString();
    }

    /// <summary>Gives text as it is shown; switches of underline and overline are left out.</summary>
    internal static string Decode(string coded)
    {
        if (!coded.Contains("%%", StringComparison.Ordinal))
            return coded;
        var text = new StringBuilder(coded.Length);
        for (var i = 0; i < coded.Length; i++)
        {
            if (coded[i] != '%' || i + 2 >= coded.Length || coded[i + 1] != '%')
            {
                text.Append(coded[i]);
                continue;
            }
            var (shown, length) = Code(coded, i + 2);
            text.Append(shown);
            i += length - 1;
        }
        return text.ToString();
    }

    private static (string Shown, int Length) Code(string coded, int at)
    {
        switch (char.ToLowerInvariant(coded[at]))
        {
            case 'd': return ("\u00b0", 3);
            case 'p': return ("\u00b1", 3);
            case 'c': return ("\u00d8", 3);
            case '%': return ("%", 3);
            case 'u' or 'o' or 'k': return ("", 3);
        }
        var isNumber = at + 3 <= coded.Length
            && byte.TryParse(coded.AsSpan(at, 3), NumberStyles.None, CultureInfo.InvariantCulture, out var code)
            && code >= 32;
        return isNumber
            ? (((char)byte.Parse(coded.AsSpan(at, 3), NumberStyles.None, CultureInfo.InvariantCulture)).ToString(), 5)
            : ("%", 1);
    }
}
