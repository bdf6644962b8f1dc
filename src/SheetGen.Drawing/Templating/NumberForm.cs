using System.Text.RegularExpressions;

namespace SheetGen.Drawing.Templating;

/// <summary>Fields of texts: {0} for a value, and {0|NAIL|NAILS} for what is said with a value of one, and with any other.</summary>
internal static partial class NumberForm
{
    /// <summary>What is said with a value; null for a field that stands for the value itself.</summary>
    public static string? Of(ReadOnlySpan<char> field, string value)
    {
        int one = field.IndexOf('|'), many = field.LastIndexOf('|');
        return one < 0 ? null : (value == "1" ? field[(one + 1)..many] : field[(many + 1)..^1]).ToString();
    }

    [GeneratedRegex(@"\{([0-9])(?:\|([^|{}]*)\|([^|{}]*))?\}", RegexOptions.CultureInvariant)]
    public static partial Regex Field();
}
