using System.Globalization;
using System.Text;

namespace SheetGen.Model.PayItems;

/// <summary>
/// An expression over quantity names: numbers, names, + - * / and parentheses. It has no functions and no access to anything else.
/// </summary>
public sealed class PayExpression
{
    private readonly List<Token> _postfix;
    private readonly List<Token> _tokens;

    private PayExpression(string text, List<Token> tokens, List<Token> postfix)
    {
        Text = text;
        _tokens = tokens;
        _postfix = postfix;
    }

    public string Text { get; }

    /// <summary>Names used, each once, in order of appearance.</summary>
    public IReadOnlyList<string> Names => [.. _tokens.Where(t => t.Kind == 'n').Select(t => t.Text).Distinct()];

    /// <summary>Reads an expression; null, with what is wrong and at which character (from 1), where it is not one.</summary>
    public static PayExpression? Parse(string text, out string error)
    {
        List<Token>? tokens = Split(text, out error);
        if (tokens is null)
            return null;
        List<Token>? postfix = ToPostfix(tokens, out error);
        return postfix is null ? null : new PayExpression(text, tokens, postfix);
    }

    /// <summary>The value; null where a name has no amount or something is divided by zero.</summary>
    public double? Evaluate(Func<string, double?> amountOf)
    {
        var stack = new Stack<double>();
        foreach (Token token in _postfix)
        {
            if (token.Kind == '0')
            {
                stack.Push(token.Number);
            }
            else if (token.Kind == 'n')
            {
                if (amountOf(token.Text) is not { } amount)
                    return null;
                stack.Push(amount);
            }
            else
            {
                double b = stack.Pop(), a = stack.Pop();
                if (token.Kind == '/' && b == 0)
                    return null;
                stack.Push(token.Kind switch { '+' => a + b, '-' => a - b, '*' => a * b, _ => a / b });
            }
        }
        return stack.Pop();
    }

    /// <summary>The expression with every name replaced, as a spreadsheet writes it.</summary>
    public string ToFormula(Func<string, string> reference)
    {
        var formula = new StringBuilder();
        foreach (Token token in _tokens)
            formula.Append(token.Kind == 'n' ? reference(token.Text) : token.Text);
        return formula.ToString();
    }

    private static List<Token>? Split(string text, out string error)
    {
        var tokens = new List<Token>();
        int i = 0;
        while (i < text.Length)
        {
            char c = text[i];
            int start = i;
            if (char.IsWhiteSpace(c))
            {
                i++;
            }
            else if (char.IsAsciiDigit(c))
            {
                while (i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] == '.'))
                    i++;
                if (!double.TryParse(text.AsSpan(start, i - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double n))
                {
                    error = FormattableString.Invariant($"not a number at character {start + 1}");
                    return null;
                }
                tokens.Add(new Token('0', text[start..i], n, start));
            }
            else if (char.IsAsciiLetterLower(c))
            {
                while (i < text.Length && (char.IsAsciiLetterLower(text[i]) || char.IsAsciiDigit(text[i]) || text[i] == '_'))
                    i++;
                tokens.Add(new Token('n', text[start..i], 0, start));
            }
            else if ("+-*/()".Contains(c, StringComparison.Ordinal))
            {
                tokens.Add(new Token(c, c.ToString(), 0, start));
                i++;
            }
            else
            {
                error = FormattableString.Invariant($"unexpected '{c}' at character {start + 1}");
                return null;
            }
        }
        error = "";
        return tokens;
    }

    private static List<Token>? ToPostfix(List<Token> tokens, out string error)
    {
        var output = new List<Token>();
        var waiting = new Stack<Token>();
        bool wantsValue = true;
        foreach (Token token in tokens)
        {
            bool opensValue = token.Kind is '0' or 'n' or '(';
            if (opensValue != wantsValue)
            {
                error = FormattableString.Invariant($"unexpected '{token.Text}' at character {token.At + 1}");
                return null;
            }
            switch (token.Kind)
            {
                case '0' or 'n':
                    output.Add(token);
                    wantsValue = false;
                    break;
                case '(':
                    waiting.Push(token);
                    break;
                case ')':
                    while (waiting.Count > 0 && waiting.Peek().Kind != '(')
                        output.Add(waiting.Pop());
                    if (waiting.Count == 0)
                    {
                        error = FormattableString.Invariant($"')' without '(' at character {token.At + 1}");
                        return null;
                    }
                    waiting.Pop();
                    break;
                default:
                    while (waiting.Count > 0 && Rank(waiting.Peek().Kind) >= Rank(token.Kind))
                        output.Add(waiting.Pop());
                    waiting.Push(token);
                    wantsValue = true;
                    break;
            }
        }
        if (wantsValue)
        {
            error = "the expression ends too early";
            return null;
        }
        while (waiting.Count > 0)
        {
            Token token = waiting.Pop();
            if (token.Kind == '(')
            {
                error = FormattableString.Invariant($"'(' without ')' at character {token.At + 1}");
                return null;
            }
            output.Add(token);
        }
        error = "";
        return output;
    }

    private static int Rank(char kind) => kind switch { '*' or '/' => 2, '+' or '-' => 1, _ => 0 };

    /// <param name="Kind">'0' number, 'n' name, or the sign itself.</param>
    private readonly record struct Token(char Kind, string Text, double Number, int At);
}
