namespace SheetGen.ProjectFile.Tree;

/// <summary>Lines of a text, split where the YAML reader splits them: CR LF, LF, CR, next line, line and paragraph separator.</summary>
internal static class SourceLines
{
    /// <summary>The line with a number from 1, without its end; empty where there is none.</summary>
    public static string Line(string text, int number)
    {
        int start = 0;
        for (int line = 1; line < number; line++)
        {
            int end = End(text, start);
            if (end >= text.Length)
                return "";
            start = end + (text[end] == '\r' && end + 1 < text.Length && text[end + 1] == '\n' ? 2 : 1);
        }
        return text[start..End(text, start)];
    }

    private static int End(string text, int start)
    {
        int end = text.AsSpan(start).IndexOfAny("\r\n\u0085\u2028\u2029");
        return end < 0 ? text.Length : start + end;
    }
}
