using System.Text.RegularExpressions;

namespace SheetGen.ProjectFile.Tree;

/// <summary>
/// Bar sizes without quotes. YAML takes the # for the start of a comment and loses the rest of the line; a stand-in keeps the value, so
/// that the slip is named as what it is and reading goes on.
/// </summary>
internal static partial class BareBars
{
    public const char StandIn = '\ue000';

    [GeneratedRegex(@"\b(?:size|bar)\s*:\s+\[?\s*(#)[0-9]{1,2}\b")]
    private static partial Regex Bare();

    /// <summary>The text with the # of every bare bar size replaced; places stay.</summary>
    public static string Mask(string text)
    {
        if (!text.Contains(": #", StringComparison.Ordinal) && !text.Contains("[#", StringComparison.Ordinal))
            return text;
        char[] masked = text.ToCharArray();
        foreach (Match match in Bare().Matches(text))
        {
            int line = text.LastIndexOfAny(['\n', '\r'], match.Index) + 1;
            string before = text[line..match.Index];
            bool open = before.Count(c => c == '"') % 2 == 1 || before.Count(c => c == '\'') % 2 == 1;
            if (!open && !before.StartsWith('#') && !before.Contains(" #", StringComparison.Ordinal))
                masked[match.Groups[1].Index] = StandIn;
        }
        return new string(masked);
    }
}
