using System.Globalization;

namespace SheetGen.Model.PayItems;

/// <summary>What is wrong with a pay expression.</summary>
/// <param name="Message">What is wrong and at which character, from 1.</param>
/// <param name="Hint">What to write instead; empty where there is nothing to say.</param>
public sealed record PayExpressionFault(string Message, string Hint = "");

/// <summary>A piece of a pay expression.</summary>
/// <param name="Kind">'0' number, 'n' name, or the sign itself.</param>
/// <param name="Text">As it stands in a formula.</param>
/// <param name="At">Place in the text, from 0.</param>
internal readonly record struct PayToken(char Kind, string Text, double Number, Dimension Dimension, QuantityReference? Reference, int At)
{
    private static readonly string[] UnitWords = ["ft", "ft2", "ft3", "m", "m2", "m3", "lb", "kg"];

    /// <summary>Splits a text; null with the fault where something in it is no part of an expression.</summary>
    public static List<PayToken>? Split(string text, out PayExpressionFault? fault)
    {
        var tokens = new List<PayToken>();
        fault = null;
        int i = 0;
        while (i < text.Length && fault is null)
        {
            if (char.IsWhiteSpace(text[i]))
                i++;
            else if (char.IsAsciiDigit(text[i]) || text[i] == '.')
                i = AddNumber(text, i, tokens, out fault);
            else if (char.IsAsciiLetter(text[i]))
                i = AddName(text, i, tokens, out fault);
            else if ("+-*/()".Contains(text[i], StringComparison.Ordinal))
                tokens.Add(new PayToken(text[i], text[i].ToString(), 0, Dimension.None, null, i++));
            else
                fault = Unexpected(text[i].ToString(), i);
        }
        return fault is null ? tokens : null;
    }

    public static PayExpressionFault Unexpected(string what, int at, string hint = "") =>
        new(FormattableString.Invariant($"unexpected '{what}' at character {at + 1}"), hint);

    private static int AddNumber(string text, int start, List<PayToken> tokens, out PayExpressionFault? fault)
    {
        int i = start;
        while (i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] == '.'))
            i++;
        string digits = text[start..i];
        fault = double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? null
            : new PayExpressionFault(FormattableString.Invariant($"not a number at character {start + 1}"), "write it as 27 or 0.5");
        int word = i;
        while (word < text.Length && text[word] == ' ')
            word++;
        int end = word;
        while (end < text.Length && char.IsAsciiLetterOrDigit(text[end]))
            end++;
        bool hasUnit = UnitWords.Contains(text[word..end]);
        tokens.Add(new PayToken('0', digits, number, hasUnit ? Dimension.OfUnit(text[word..end]) : Dimension.None, null, start));
        return hasUnit ? end : i;
    }

    private static int AddName(string text, int start, List<PayToken> tokens, out PayExpressionFault? fault)
    {
        int i = start;
        while (i < text.Length && (char.IsAsciiLetterOrDigit(text[i]) || text[i] == '_'))
            i++;
        string name = text[start..i];
        int next = i;
        while (next < text.Length && text[next] == ' ')
            next++;
        fault = null;
        if (next < text.Length && text[next] == '(')
        {
            fault = Unexpected(name + "(", start, "functions are not read: an expression has + - * / ( ), numbers and names; rounding: says how the result is rounded");
            return i;
        }
        if (name.Any(char.IsAsciiLetterUpper))
        {
            fault = Unexpected(name, start, "names of quantities are written small, such as pay_length");
            return i;
        }
        var reference = new QuantityReference(name);
        if (next < text.Length && text[next] == '[')
        {
            int close = text.IndexOf(']', next);
            string[] part = close < 0 ? [] : text[(next + 1)..close].Trim().Split(' ', 2, StringSplitOptions.TrimEntries);
            if (part.Length < 2 || part[0] is not ("wall" or "stage"))
            {
                fault = Unexpected("[", next, "write [wall NAME] or [stage NAME] behind a name");
                return i;
            }
            reference = part[0] == "wall" ? reference with { Wall = part[1] } : reference with { Stage = part[1] };
            i = close + 1;
        }
        tokens.Add(new PayToken('n', text[start..i], 0, Dimension.None, reference, start));
        return i;
    }
}
