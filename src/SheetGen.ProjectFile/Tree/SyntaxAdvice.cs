using System.Text.RegularExpressions;

namespace SheetGen.ProjectFile.Tree;

/// <summary>A slip that keeps a text from being YAML, in plain words at its own line.</summary>
internal readonly record struct SyntaxSlip(int Line, int Column, string Message, string Hint);

/// <summary>
/// Looks for the slips that people make in YAML, line by line, since a YAML reader names the place where it could go on no more and not
/// the place of the slip. It is asked only about texts that cannot be read.
/// </summary>
internal static partial class SyntaxAdvice
{
    [GeneratedRegex(@"^(?<key>[A-Za-z][A-Za-z_]*):(?<value>[^\s:/].*)$")]
    private static partial Regex NoBlank();

    [GeneratedRegex(@"^(?<key>[A-Za-z][A-Za-z_ -]*?)(?:\s*(?<mark>=)\s*|\s+)(?<value>\S.*)$")]
    private static partial Regex NoColon();

    [GeneratedRegex(@"^[A-Za-z][A-Za-z_]*\s*:(\s|$)")]
    private static partial Regex KeyStart();

    [GeneratedRegex(@"[\w)\]""'}:]\s+(?<key>[A-Za-z][A-Za-z_]*):\s")]
    private static partial Regex KeyInside();

    /// <summary>The first slip, at or before the line where reading stopped or just behind it; null where none is found.</summary>
    /// <param name="stopped">Line where the YAML reader stopped.</param>
    /// <param name="keys">Every key that project files know.</param>
    public static SyntaxSlip? Find(string text, int stopped, IReadOnlySet<string> keys)
    {
        var brackets = new Stack<(char Open, int Line, int Column)>();
        var indents = new Stack<(int Indent, bool Open)>();
        int number = 0;
        foreach (string line in SourceLines.All(text))
        {
            number++;
            if (number > stopped + 1)
                break;
            string content = line.TrimStart(' ');
            int indent = line.Length - content.Length;
            if (content.Length == 0 || content[0] == '#')
                continue;
            if (content[0] == '\t' && brackets.Count == 0)
                return new SyntaxSlip(number, indent + 1, "a tab is used as indentation", "indent with spaces");
            if (brackets.Count > 0)
            {
                (char open, int at, int column) = brackets.Peek();
                if (KeyStart().Match(content) is { Success: true } key && keys.Contains(content.Split(':')[0].TrimEnd()) && indent <= indents.Peek().Indent && key.Success)
                    return new SyntaxSlip(at, column, FormattableString.Invariant($"this {Word(open)} is not closed: line {number} starts a new key"), $"add {Closing(open)} behind the last value");
            }
            else if (Indentation(indents, line, indent, number) is { } slip)
            {
                return slip;
            }
            if (InLine(line, indent, number, brackets.Count > 0, keys) is { } inLine)
                return inLine;
            if (Brackets(line, number, brackets) is { } wrong)
                return wrong;
        }
        return null;
    }

    /// <summary>Follows the blocks; a slip where a line stands at no level of its neighbours, or deeper below a finished value.</summary>
    private static SyntaxSlip? Indentation(Stack<(int Indent, bool Open)> indents, string line, int indent, int number)
    {
        (int Indent, bool Open)? popped = null;
        while (indents.Count > 0 && indents.Peek().Indent > indent)
            popped = indents.Pop();
        bool dedent = popped is not null;
        if (indents.Count > 0 && indents.Peek().Indent < indent && (dedent || !indents.Peek().Open))
        {
            int neighbours = popped is { } p && p.Indent - indent <= indent - indents.Peek().Indent ? p.Indent : indents.Peek().Indent;
            return new SyntaxSlip(number, indent + 1, FormattableString.Invariant($"line {number} is indented by {indent}, its neighbours by {neighbours}"), "lines of one block start in one column");
        }
        string content = line[indent..];
        int at = indent;
        if (indents.Count == 0 || indents.Peek().Indent < indent)
            indents.Push((indent, true));
        Set(indents, EndsOpen(content));
        while (content.StartsWith("- ", StringComparison.Ordinal))
        {
            string inner = content[2..].TrimStart(' ');
            at += content.Length - inner.Length;
            content = inner;
            indents.Push((at, EndsOpen(content)));
        }
        return null;
    }

    private static void Set(Stack<(int Indent, bool Open)> indents, bool open) => indents.Push((indents.Pop().Indent, open));

    /// <summary>True where deeper lines may follow: behind a key without a value, a bare dash, or a block of text.</summary>
    private static bool EndsOpen(string content)
    {
        string bare = WithoutComment(content).TrimEnd();
        return bare.EndsWith(':') || bare == "-" || bare.EndsWith('|') || bare.EndsWith('>') || bare.EndsWith(',') || bare.EndsWith('[') || bare.EndsWith('{');
    }

    private static SyntaxSlip? InLine(string line, int indent, int number, bool inBracket, IReadOnlySet<string> keys)
    {
        string content = WithoutComment(line)[indent..].TrimEnd();
        int column = indent + 1;
        while (content.StartsWith("- ", StringComparison.Ordinal))
        {
            column += 2;
            content = content[2..];
        }
        if (!inBracket && content is ['[' or '{', ..] == false)
        {
            if (NoBlank().Match(content) is { Success: true } tight && keys.Contains(tight.Groups["key"].Value))
                return new SyntaxSlip(number, column, $"\"{Shown.Short(content)}\" has no blank behind its colon", $"put a blank after the colon: {tight.Groups["key"]}: {Shown.Short(tight.Groups["value"].Value)}");
            if (!content.Contains(": ", StringComparison.Ordinal) && !content.EndsWith(':') && NoColon().Match(content) is { Success: true } loose
                && keys.Contains(loose.Groups["key"].Value))
                return new SyntaxSlip(number, column, $"\"{Shown.Short(content)}\" has no colon behind the key", $"write {loose.Groups["key"]}: {Shown.Short(loose.Groups["value"].Value)}");
        }
        return Quotes(content, column, number) ?? SecondKey(content, column, number, keys);
    }

    /// <summary>A text in quotes that goes on behind them, or whose quotes do not end.</summary>
    private static SyntaxSlip? Quotes(string content, int column, int number)
    {
        for (int i = 0; i < content.Length; i++)
        {
            char quote = content[i];
            bool starts = quote is '"' or '\'' && (i == 0 || (content[i - 1] is ' ' or '[' or '{' or ',' && content[..i].TrimEnd(' ') is "" or [.., ':' or '[' or '{' or ',' or '-']));
            if (!starts)
                continue;
            int end = content.IndexOf(quote, i + 1);
            while (end > 0 && content[end - 1] == '\\' && quote == '"')
                end = content.IndexOf(quote, end + 1);
            if (end < 0)
                return new SyntaxSlip(number, column + i, "this quote is not closed", $"add {quote} behind the text");
            string behind = content[(end + 1)..].TrimStart();
            if (behind.Length > 0 && behind[0] is not (',' or ']' or '}' or ':' or '#') && (behind[0] != quote || behind.Length == 1))
                return new SyntaxSlip(number, column + end + 1, "the value goes on behind its closing quote", "put the quotes round the whole value; feet and inches need none: 5'-6\"");
            i = end + (behind.StartsWith(quote) ? 1 : 0);
        }
        return null;
    }

    /// <summary>A second key in one value: a comma forgotten in a bracket, or a colon in a text.</summary>
    private static SyntaxSlip? SecondKey(string content, int column, int number, IReadOnlySet<string> keys)
    {
        foreach (Match match in KeyInside().Matches(content))
        {
            Group key = match.Groups["key"];
            string before = content[..key.Index];
            int open = before.LastIndexOfAny(['{', '[', ',']);
            string value = before[(open + 1)..];
            if (!value.Contains(": ", StringComparison.Ordinal) || value.Count(c => c == '"') % 2 == 1 || value.Count(c => c == '\'') % 2 == 1)
                continue;
            return open >= 0 && keys.Contains(key.Value)
                ? new SyntaxSlip(number, column + key.Index, $"there is no comma before \"{key.Value}\"", $"write {value.Trim()}, {key.Value}: ...; a text with a colon stands in quotes")
                : new SyntaxSlip(number, column + key.Index, "a colon with a blank stands inside of a value", keys.Contains(key.Value) ? $"put \"{key.Value}\" on a line of its own, or the text in quotes" : "put the text in quotes");
        }
        return null;
    }

    private static SyntaxSlip? Brackets(string line, int number, Stack<(char Open, int Line, int Column)> brackets)
    {
        string text = WithoutComment(line);
        char quote = '\0';
        bool bracketed = brackets.Count > 0;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quote != '\0')
            {
                quote = c == quote ? '\0' : quote;
            }
            else if (c is '"' or '\'' && (i == 0 || text[i - 1] is ' ' or '[' or '{' or ','))
            {
                quote = c;
            }
            else if (c is '[' or '{' && (bracketed || i == 0 || text[i - 1] is ' '))
            {
                brackets.Push((c, number, i + 1));
                bracketed = true;
            }
            else if (c is ']' or '}' && bracketed)
            {
                if (brackets.Count == 0)
                    return new SyntaxSlip(number, i + 1, $"this {c} closes nothing", "remove it, or add the bracket that it closes");
                (char open, int at, int column) = brackets.Pop();
                if (Closing(open) != c)
                    return new SyntaxSlip(number, i + 1, FormattableString.Invariant($"this {c} does not match the {open} at {at}:{column}"), $"write {Closing(open)} there, or add it before");
            }
        }
        return null;
    }

    private static string WithoutComment(string line)
    {
        char quote = '\0';
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (quote != '\0')
                quote = c == quote ? '\0' : quote;
            else if (c is '"' or '\'' && (i == 0 || line[i - 1] is ' ' or '[' or '{' or ','))
                quote = c;
            else if (c == '#' && (i == 0 || line[i - 1] is ' ' or '\t'))
                return line[..i];
        }
        return line;
    }

    private static char Closing(char open) => open == '[' ? ']' : '}';

    private static string Word(char open) => open == '[' ? "bracket [" : "brace {";
}
