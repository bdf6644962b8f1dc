using System.Text;

namespace SheetGen.ProjectFile.Values;

/// <summary>Values as word processors and drawings write them, brought to plain characters.</summary>
internal static class Spelling
{
    /// <summary>Quotes and primes as ' and ", dashes as -, spaces of all kinds as one blank, fractions as 1/2; '' is ".</summary>
    public static string Plain(string text)
    {
        text = text.Trim();
        if (text.All(char.IsAscii))
            return text.Replace("''", "\"", StringComparison.Ordinal);
        var plain = new StringBuilder();
        foreach (char c in text)
        {
            plain.Append(c switch
            {
                '\u2018' or '\u2019' or '\u201b' or '\u2032' or '\u02b9' or '\u00b4' => "'",
                '\u201c' or '\u201d' or '\u201e' or '\u201f' or '\u2033' or '\u02ba' => "\"",
                '\u2212' or '\u2010' or '\u2011' or '\u2013' or '\u2014' => "-",
                '\u00a0' or '\u2009' or '\u202f' => " ",
                '\u00ba' or '\u02da' => "\u00b0",
                '\u2044' => "/",
                '\u00bd' => " 1/2",
                '\u00bc' => " 1/4",
                '\u00be' => " 3/4",
                '\u215b' => " 1/8",
                '\u215c' => " 3/8",
                '\u215d' => " 5/8",
                '\u215e' => " 7/8",
                _ => c.ToString(),
            });
        }
        return plain.ToString().Replace("''", "\"", StringComparison.Ordinal).Trim();
    }

    /// <summary>A word as it is compared: small letters, without blanks, hyphens, underscores and dots.</summary>
    public static string Bare(string word) =>
        new([.. Plain(word).Where(c => c is not (' ' or '-' or '_' or '.')).Select(char.ToLowerInvariant)]);
}
