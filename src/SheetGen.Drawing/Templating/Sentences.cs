using System.Text;
using System.Text.RegularExpressions;

namespace SheetGen.Drawing.Templating;

/// <summary>
/// Sentences of the checker and of the layout in another language, by their English form with fields; what stands in a field is itself
/// translated where it is a sentence of the list. The first form that fits counts.
/// </summary>
internal sealed class Sentences
{
    /// <summary>Sentences within sentences.</summary>
    private const int Deepest = 6;

    /// <summary>Stands between two sentences of one text.</summary>
    public const string Join = "; ";

    private readonly (Regex Form, string Text)[] _forms;
    private readonly Func<string, string> _word;

    /// <param name="word">A word in a field that is no sentence of the list.</param>
    /// <param name="joins">False where no field may hold what stands between two sentences of one text.</param>
    public Sentences(IEnumerable<KeyValuePair<string, string>> forms, Func<string, string>? word = null, bool joins = true)
    {
        _forms = [.. forms.Select(f => (FormOf(f.Key, joins), f.Value))];
        _word = word ?? (w => w);
    }

    /// <summary>The same where the form that says most counts, whatever the order of the list, and each of several sentences stands for itself.</summary>
    public static Sentences MostSaidFirst(IEnumerable<KeyValuePair<string, string>> forms, Func<string, string> word) =>
        new(forms.OrderByDescending(f => NumberForm.Field().Replace(f.Key, "").Length), word, false);

    /// <summary>The sentence in the language; null where the list has no form of it.</summary>
    public string? Of(string english) => Of(english, Deepest);

    private string? Of(string english, int deep)
    {
        foreach ((Regex form, string text) in _forms)
        {
            Match match = form.Match(english);
            if (!match.Success)
                continue;
            return NumberForm.Field().Replace(text, field =>
            {
                string value = match.Groups["f" + field.Groups[1].Value].Value;
                if (NumberForm.Of(field.ValueSpan, value) is string counted)
                    return counted;
                return deep == 0 ? value : Of(value, deep - 1) ?? _word(value);
            });
        }
        return null;
    }

    /// <summary>A form as an expression: fields take as little as they can, and something; words for one and for many fit both.</summary>
    private static Regex FormOf(string form, bool joins)
    {
        string any = joins ? "." : $"(?:(?!{Join}).)";
        var pattern = new StringBuilder("^");
        int from = 0;
        foreach (Match field in NumberForm.Field().Matches(form))
        {
            pattern.Append(Regex.Escape(form[from..field.Index])).Append(field.Groups[2].Success
                ? $"(?:{Regex.Escape(field.Groups[2].Value)}|{Regex.Escape(field.Groups[3].Value)})" : $"(?<f{field.Groups[1].Value}>{any}+?)");
            from = field.Index + field.Length;
        }
        pattern.Append(Regex.Escape(form[from..])).Append('$');
        return new Regex(pattern.ToString(), RegexOptions.CultureInvariant | RegexOptions.Singleline, TimeSpan.FromSeconds(5));
    }
}
