using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace SheetGen.Drawing.Templating;

/// <summary>The words of the sheets in one language.</summary>
public sealed partial class Language
{
    /// <summary>Stands in texts for what the project calls a design section of its wall.</summary>
    private const string ZoneField = "{zone}";

    private readonly IReadOnlyDictionary<Phrase, string> _phrases;
    private readonly IReadOnlyDictionary<string, string> _terms;
    private readonly IReadOnlyDictionary<string, string>? _sentences;
    private readonly IReadOnlyDictionary<string, string>? _reports;
    private readonly Sentences _forms;
    private readonly Lazy<Sentences> _reportForms;

    private Language(
        IReadOnlyDictionary<Phrase, string> phrases, IReadOnlyDictionary<string, string> terms, IReadOnlyDictionary<string, string>? sentences, IReadOnlyDictionary<string, string>? reports)
    {
        (_phrases, _terms, _sentences, _reports) = (phrases, terms, sentences, reports);
        _forms = new Sentences(sentences ?? new Dictionary<string, string>());
        _reportForms = new(() => Sentences.MostSaidFirst((reports ?? new Dictionary<string, string>()).Concat((sentences ?? new Dictionary<string, string>()).Where(s => reports?.ContainsKey(s.Key) != true)), Term));
    }

    /// <summary>Reads a language from its list: every phrase, with the same fields as in another language.</summary>
    /// <param name="like">The language whose fields count; null to take them as they are.</param>
    /// <exception cref="FormatException">A phrase is missing, unknown or has other fields; the message names all of them.</exception>
    internal static Language Of(LanguageList list, Language? like)
    {
        if (list.Phrases is null)
            throw new FormatException("\"phrases\" is missing");
        var faults = new List<string>();
        var phrases = new Dictionary<Phrase, string>();
        foreach ((string name, string? text) in list.Phrases)
        {
            if (text is not null && Enum.TryParse(name, out Phrase phrase) && Enum.IsDefined(phrase) && !char.IsDigit(name[0]))
                phrases[phrase] = text;
            else
                faults.Add($"\"{name}\" is no phrase of the sheets");
        }
        foreach (Phrase phrase in Enum.GetValues<Phrase>())
        {
            if (!phrases.TryGetValue(phrase, out string? text))
                faults.Add($"the phrase \"{phrase}\" is missing");
            else if (like is not null && !Fields(text).SetEquals(Fields(like._phrases[phrase])))
                faults.Add($"the phrase \"{phrase}\" has other fields than \"{like._phrases[phrase]}\"");
            else if (like is not null && Lines(text) != Lines(like._phrases[phrase]))
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"the phrase \"{phrase}\" has {Lines(text)} lines (heads of columns); {Lines(like._phrases[phrase])} are needed"));
        }
        foreach ((string of, string? text) in (list.Terms ?? []).Concat(list.Sentences ?? []).Concat(list.Reports ?? []))
        {
            if (text is null)
                faults.Add($"\"{of}\" has no words");
        }
        if (faults.Count > 0)
            throw new FormatException(string.Join("; ", faults));
        return new(phrases, list.Terms ?? [], list.Sentences, list.Reports) { IsCheckers = list.SpeaksAsChecker || list.Sentences is not { Count: > 0 } };
    }

    /// <summary>The words with the project's own word for a design section of its wall.</summary>
    /// <param name="word">Null for the language's own.</param>
    public Language WithZone(string? word)
    {
        string zone = (word ?? _phrases[Phrase.DesignZone]).ToUpperInvariant();
        Dictionary<TKey, string> Named<TKey>(IEnumerable<KeyValuePair<TKey, string>> texts) where TKey : notnull =>
            texts.ToDictionary(t => t.Key, t => t.Value.Replace(ZoneField, zone, StringComparison.Ordinal));
        return new(Named(_phrases), Named(_terms), _sentences is null ? null : Named(_sentences), _reports is null ? null : Named(_reports)) { _zone = word ?? zone.ToLowerInvariant(), IsCheckers = IsCheckers };
    }

    /// <summary>What the sheets call a design section within a sentence: there a section is a cut.</summary>
    private string _zone = "section";

    /// <summary>A phrase with its values.</summary>
    public string Say(Phrase phrase, params ReadOnlySpan<string> values)
    {
        string text = _phrases[phrase];
        if (values.Length == 0 || !text.Contains('{', StringComparison.Ordinal))
            return text;
        var said = new StringBuilder(text.Length + 16);
        int from = 0;
        foreach (ValueMatch field in NumberForm.Field().EnumerateMatches(text))
        {
            ReadOnlySpan<char> form = text.AsSpan(field.Index, field.Length);
            int index = form[1] - '0';
            said.Append(text, from, field.Index - from).Append(index < values.Length ? NumberForm.Of(form, values[index]) ?? values[index] : form);
            from = field.Index + field.Length;
        }
        return said.Append(text, from, text.Length - from).ToString();
    }

    /// <summary>
    /// A word or head of a table of the take-off in this language, itself where the language has none. A unit after the last comma is
    /// looked up by itself.
    /// </summary>
    public string Term(string english)
    {
        if (_terms.TryGetValue(english, out string? whole))
            return whole;
        int comma = english.LastIndexOf(", ", StringComparison.Ordinal);
        return comma > 0 && _terms.TryGetValue(english[..comma], out string? head) ? $"{head}, {Term(english[(comma + 2)..])}" : english;
    }

    /// <summary>A cell of a table of the take-off: a range or a list of lengths with the language's own words between its figures.</summary>
    public string Cell(string english) => WordBetween().Replace(english, m => Term(m.Value));

    /// <summary>True for the language in which the checker speaks: its list has only the sentences that sheets say otherwise.</summary>
    private bool IsCheckers { get; init; }

    /// <summary>What a report of the checker's tools says, in this language; as it is where the language has no words for it.</summary>
    public string Report(string english)
    {
        if (_reports is null)
            return english;
        return _reportForms.Value.Of(english) ?? _forms.Of(english)
            ?? (english.Contains(Sentences.Join, StringComparison.Ordinal) ? string.Join(Sentences.Join, english.Split(Sentences.Join).Select(Report)) : Term(english));
    }

    /// <summary>A sentence of the checker or of the layout in this language; as it is where the language has none for it.</summary>
    public string Sentence(string english) => TrySentence(english) ?? english;

    /// <summary>The same; null where the language has no words for it.</summary>
    public string? TrySentence(string english)
    {
        string named = IsCheckers ? DesignSection().Replace(english, _zone) : english;
        return _forms.Of(named) ?? (IsCheckers ? named : null);
    }

    private static int Lines(string text) => text.Count(c => c == '\n') + 1;

    private static HashSet<string> Fields(string text) => [.. AnyField().Matches(text).Select(m => m.Value)];

    [GeneratedRegex(@"(?<=^|[ (])section(?= [^ ,:;]+( asks|[,:;]|$| [^ ,:]+[,:]))", RegexOptions.CultureInvariant)]
    private static partial Regex DesignSection();

    [GeneratedRegex(@"(?<=^[0-9.+-]+ )to(?= [0-9.+-]+$)|\btest(?= [0-9.]+: [0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex WordBetween();

    [GeneratedRegex("\\{[a-z0-9_]+\\}", RegexOptions.CultureInvariant)]
    private static partial Regex AnyField();
}
