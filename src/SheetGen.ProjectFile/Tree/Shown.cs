using System.Text;

namespace SheetGen.ProjectFile.Tree;

/// <summary>Texts of the file as messages show them: on one line, without control characters, shortened.</summary>
internal static class Shown
{
    private const int Most = 40;

    public static string Short(string text)
    {
        var shown = new StringBuilder();
        foreach (char c in text)
        {
            if (shown.Length == Most)
                return shown.Append("...").ToString();
            shown.Append(char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c);
        }
        return shown.ToString();
    }
}
