using System.Globalization;

namespace SheetGen.Model.Results;

/// <summary>Texts that a spreadsheet would run as a formula.</summary>
public static class FormulaText
{
    /// <summary>True for a text that begins as a formula does and is no number: with = + - @, a tab or a carriage return.</summary>
    public static bool IsLike(string text) =>
        text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r'
        && !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);

    /// <summary>The text as a spreadsheet shows it and does not run it: with an apostrophe before it where it is like a formula.</summary>
    public static string Harmless(string text) => IsLike(text) ? "'" + text : text;

    /// <summary>The text that <see cref="Harmless"/> was given.</summary>
    public static string Plain(string text) => text.StartsWith('\'') && IsLike(text[1..]) ? text[1..] : text;
}
