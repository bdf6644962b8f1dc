using System.Text.RegularExpressions;

namespace SheetGen.Drawing.Templating;

/// <summary>
/// Sentences of the checker and of the layout in another language, by their English form with fields; what stands in a field is itself
/// translated where it is a sentence of the list. The first form that fits counts.
/// </summary>
internal sealed partial class Sentences
{
    /// <summary>Sentences within sentences.</summary>
    private const int Deepest = 6;

    private readonly (Regex Form, string Text)[] _forms;

    public Sentences(IEnumerable<KeyValuePair<string, string>> forms) => _forms = [.. forms.Select(f => (FormOf(f.Key), f.Value))];

    /// <summary>The sentence in the language; null where the list has no form of it.</summary>
    public string? Of(string english) => Of(english, Deepest);

    private string? Of(string english, int deep)
    {
        foreach ((Regex form, string text) in _forms)
        {
            Match match = form.Match(english);
            if (!match.Success)
                continue;
            return Field().Replace(text, field =>
            {
                string value = match.Groups["f" + field.Groups[1].Value].Value;
                return deep == 0 ? value : Of(value, deep - 1) ?? value;
            });
        }
        return null;
    }

    /// <summary>A form as an expression: fields take as little as they can, and something.</summary>
    private static Regex FormOf(string form)
    {
        string pattern = string.Concat(Field().Split(form).Select((part, i) => i % 2 == 0 ? Regex.Escape(part) : $"(?<f{part}>.+?)"));
        return new Regex("^" + pattern + "$", RegexOptions.CultureInvariant | RegexOptions.Singleline, TimeSpan.FromSeconds(5));
    }

    [GeneratedRegex("\\{([0-9])\\}", RegexOptions.CultureInvariant)]
    private static partial Regex Field();
}
