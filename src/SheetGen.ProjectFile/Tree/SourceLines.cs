namespace SheetGen.ProjectFile.Tree;

/// <summary>Lines of a text, split where the YAML reader splits them: CR LF, LF, CR, next line, line and paragraph separator.</summary>
internal static class SourceLines
{
    private const string Breaks = "\r\n\u0085\u2028\u2029";

    /// <summary>The line with a number from 1, without its end; empty where there is none.</summary>
    public static string Line(string text, int number) => All(text).Skip(number - 1).FirstOrDefault("");

    /// <summary>Number of lines; a line end at the very end starts no line of its own.</summary>
    public static int Count(string text) => Math.Max(1, All(text).Count() - (text.Length > 0 && Breaks.Contains(text[^1]) ? 1 : 0));

    /// <summary>Line and column of the first character that no text has; null where there is none.</summary>
    public static (int Line, int Column)? ControlCharacter(string text)
    {
        if (!text.Any(IsBad))
            return null;
        return All(text).Select((line, i) => (i + 1, line.ToList().FindIndex(IsBad) + 1)).First(p => p.Item2 > 0);
    }

    /// <summary>Line and column of the first tab in the indentation of a line, from a line on; null where there is none.</summary>
    public static (int Line, int Column)? IndentingTab(string text, int fromLine)
    {
        int number = 0;
        foreach (string line in All(text))
        {
            number++;
            int tab = line.IndexOf('\t');
            if (number >= fromLine && tab >= 0 && line[..tab].Trim(' ').Length == 0)
                return (number, tab + 1);
        }
        return null;
    }

    private static bool IsBad(char c) => char.IsControl(c) && c != '\t' && !Breaks.Contains(c);

    /// <summary>All lines, without their ends.</summary>
    public static IEnumerable<string> All(string text)
    {
        int start = 0;
        while (true)
        {
            int length = text.AsSpan(start).IndexOfAny(Breaks);
            if (length < 0)
                break;
            int end = start + length;
            yield return text[start..end];
            start = end + (text[end] == '\r' && end + 1 < text.Length && text[end + 1] == '\n' ? 2 : 1);
        }
        yield return text[start..];
    }
}
