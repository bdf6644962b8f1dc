using System.Text.RegularExpressions;

namespace SheetGen.Drawing.Templating;

/// <summary>Fields of texts: {0} for a value, and {0|NAIL|NAILS} for what is said with a value of one, and with any other.</summary>
internal static partial class NumberForm
{
    /// <summary>What is said with a value; null for a field that stands for the value itself.</summary>
    public static string? Of(Match field, string value) => !field.Groups[2].Success ? null : field.Groups[value == "1" ? 2 : 3].Value;

    [GeneratedRegex(@"\{([0-9])(?:\|([^|{}]*)\|([^|{}]*))?\}", RegexOptions.CultureInvariant)]
    public static partial Regex Field();
}
