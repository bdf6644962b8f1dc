using System.Text;

namespace SheetGen.Model.PayItems;

/// <summary>
/// An expression over quantities: numbers (0.5, or 0.5 ft with a unit), names (pay_length, pay_length[wall North], pay_length[stage 2]),
/// + - * / and parentheses. It has no functions and no access to anything else.
/// </summary>
public sealed class PayExpression
{
    private readonly List<PayToken> _postfix;
    private readonly List<PayToken> _tokens;

    private PayExpression(string text, List<PayToken> tokens, List<PayToken> postfix)
    {
        Text = text;
        _tokens = tokens;
        _postfix = postfix;
    }

    public string Text { get; }

    /// <summary>Quantities used, each once, in order of appearance.</summary>
    public IReadOnlyList<QuantityReference> References => [.. _tokens.Select(t => t.Reference).OfType<QuantityReference>().Distinct()];

    /// <summary>The numbers that stand in it.</summary>
    public IReadOnlyList<double> Numbers => [.. _tokens.Where(t => t.Kind == '0').Select(t => t.Number)];

    /// <summary>Reads an expression; null, with what is wrong, where it is not one.</summary>
    public static PayExpression? Parse(string text, out PayExpressionFault? fault)
    {
        List<PayToken>? tokens = PayToken.Split(text, out fault);
        if (tokens is null)
            return null;
        List<PayToken>? postfix = ToPostfix(tokens, out fault);
        return postfix is null ? null : new PayExpression(text, tokens, postfix);
    }

    /// <summary>
    /// The value; null where a quantity has no amount, or with a fault where something is divided by zero or grows beyond all numbers.
    /// </summary>
    public double? Evaluate(Func<QuantityReference, double?> amountOf, out PayExpressionFault? fault)
    {
        var stack = new Stack<double?>();
        fault = null;
        foreach (PayToken token in _postfix)
        {
            if (token.Kind is '0' or 'n')
            {
                stack.Push(token.Reference is { } reference ? amountOf(reference) : token.Number);
                continue;
            }
            double? b = stack.Pop(), a = stack.Pop();
            if (token.Kind == '/' && b == 0)
                fault = new PayExpressionFault(FormattableString.Invariant($"division by zero at character {token.At + 1}"), "divide by a quantity that is never 0, or leave the item out");
            double? value = token.Kind switch { '+' => a + b, '-' => a - b, '*' => a * b, _ => a / b };
            if (value is { } number && !double.IsFinite(number))
                fault ??= new PayExpressionFault(FormattableString.Invariant($"the value is beyond all numbers at character {token.At + 1}"), "look for a slip in the numbers");
            if (fault is not null)
                return null;
            stack.Push(value);
        }
        return stack.Pop();
    }

    /// <summary>
    /// The dimension of the value; null with a fault where unlike things are added. A plain number takes the dimension of what it is
    /// added to.
    /// </summary>
    public Dimension? DimensionOf(Func<QuantityReference, Dimension> of, out PayExpressionFault? fault)
    {
        var stack = new Stack<(Dimension Dimension, bool IsPlain)>();
        fault = null;
        foreach (PayToken token in _postfix)
        {
            if (token.Kind is '0' or 'n')
            {
                stack.Push(token.Reference is { } reference ? (of(reference), false) : (token.Dimension, token.Dimension == Dimension.None));
                continue;
            }
            (Dimension b, bool plainB) = stack.Pop();
            (Dimension a, bool plainA) = stack.Pop();
            if (token.Kind is '*' or '/')
            {
                stack.Push((token.Kind == '*' ? a * b : a / b, plainA && plainB));
                continue;
            }
            if (a != b && !plainA && !plainB)
            {
                fault = new PayExpressionFault(
                    FormattableString.Invariant($"{a} and {b} are {(token.Kind == '+' ? "added" : "subtracted")} at character {token.At + 1}"),
                    "add only what has the same unit; use two items, or convert one part by a number with a unit such as 0.5 ft");
                return null;
            }
            stack.Push((plainA ? b : a, plainA && plainB));
        }
        return stack.Pop().Dimension;
    }

    /// <summary>The expression with every quantity replaced, as a spreadsheet writes it.</summary>
    public string ToFormula(Func<QuantityReference, string> cell)
    {
        var formula = new StringBuilder();
        foreach (PayToken token in _tokens)
            formula.Append(token.Reference is { } reference ? cell(reference) : token.Text);
        return formula.ToString();
    }

    private static List<PayToken>? ToPostfix(List<PayToken> tokens, out PayExpressionFault? fault)
    {
        var output = new List<PayToken>();
        var waiting = new Stack<PayToken>();
        bool wantsValue = true;
        fault = null;
        foreach (PayToken token in tokens)
        {
            bool opensValue = token.Kind is '0' or 'n' or '(';
            if (opensValue != wantsValue)
            {
                fault = PayToken.Unexpected(token.Text, token.At, wantsValue && token.Kind is ('-' or '+') ? "a sign before a value is not read: write (0 - x)" : "");
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
                        fault = new PayExpressionFault(FormattableString.Invariant($"')' without '(' at character {token.At + 1}"));
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
            fault = new PayExpressionFault("the expression ends too early");
            return null;
        }
        while (waiting.Count > 0)
        {
            PayToken token = waiting.Pop();
            if (token.Kind == '(')
            {
                fault = new PayExpressionFault(FormattableString.Invariant($"'(' without ')' at character {token.At + 1}"));
                return null;
            }
            output.Add(token);
        }
        return output;
    }

    private static int Rank(char kind) => kind switch { '*' or '/' => 2, '+' or '-' => 1, _ => 0 };
}
