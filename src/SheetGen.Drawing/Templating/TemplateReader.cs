using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Templating;

/// <summary>Reads the templates from their JSON text; the program's own are carried within it.</summary>
public static class TemplateReader
{
    /// <summary>Names of the layer lists that the program carries.</summary>
    public static IReadOnlyList<string> LayerLists { get; } = Names("layers/");

    /// <summary>Names of the note sets that the program carries.</summary>
    public static IReadOnlyList<string> NoteSets { get; } = Names("notes/");

    /// <summary>Names of the languages that the program carries.</summary>
    public static IReadOnlyList<string> Languages { get; } = [.. Names("text/").Where(n => n != "roles")];

    private static string[] Names(string folder) =>
        [.. typeof(TemplateReader).Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(folder, StringComparison.Ordinal))
            .Select(n => Path.GetFileNameWithoutExtension(n)).Order(StringComparer.Ordinal)];

    /// <summary>The program's own templates with the layer list, note set and language of those names ("standard", "general", "english" where null or unknown).</summary>
    public static DrawingTemplates Default(string? layers = null, string? notes = null, string? language = null)
    {
        Language english = Language.Of(Parse(Carried("text/english.json"), TemplateJson.Default.LanguageList), null);
        string spoken = language is not null && Languages.Contains(language) ? language : "english";
        string ownNotes = "general-" + spoken;
        string noteSet = notes is not null && NoteSets.Contains(notes) ? notes : NoteSets.Contains(ownNotes) ? ownNotes : "general";
        string list = layers is not null && LayerLists.Contains(layers) ? layers : "standard";
        LayerList layerList = ParseLayers(Carried($"layers/{list}.json"));
        SizeList sizes = Parse(Carried("sheets/sizes.json"), TemplateJson.Default.SizeList);
        return new DrawingTemplates
        {
            Layers = layerList.ByRole(),
            Linetypes = layerList.Linetypes,
            Texts = ParseTexts(Carried("text/roles.json")),
            Sizes = sizes.Sizes,
            FootScales = sizes.FootScales,
            MetreScales = sizes.MetreScales,
            SectionFootScales = sizes.SectionFootScales,
            SectionMetreScales = sizes.SectionMetreScales,
            DetailFootScales = sizes.DetailFootScales,
            DetailMetreScales = sizes.DetailMetreScales,
            Notes = ParseNotes(Carried($"notes/{noteSet}.json")),
            Language = spoken == "english" ? english : Language.Of(Parse(Carried($"text/{spoken}.json"), TemplateJson.Default.LanguageList), english),
        };
    }

    /// <summary>The templates with another layer list.</summary>
    /// <exception cref="FormatException">The text is no complete layer list; the message says why.</exception>
    public static DrawingTemplates WithLayers(DrawingTemplates templates, string json)
    {
        LayerList list = ParseLayers(json);
        return templates with { Layers = list.ByRole(), Linetypes = list.Linetypes };
    }

    /// <summary>The templates with other notes.</summary>
    /// <exception cref="FormatException">The text is no note set.</exception>
    public static DrawingTemplates WithNotes(DrawingTemplates templates, string json) => templates with { Notes = ParseNotes(json) };

    /// <summary>The templates with the words of another language.</summary>
    /// <exception cref="FormatException">The text is no complete language; the message says why.</exception>
    public static DrawingTemplates WithLanguage(DrawingTemplates templates, string json) =>
        templates with { Language = Language.Of(Parse(json, TemplateJson.Default.LanguageList), templates.Language) };

    private static LayerList ParseLayers(string json) => Parse(json, TemplateJson.Default.LayerList);

    private static IReadOnlyList<NoteBlock> ParseNotes(string json)
    {
        List<NoteBlock> blocks = Parse(json, TemplateJson.Default.ListNoteBlock);
        return blocks.Count > 0 && blocks.All(b => b?.Heading is not null && b.Notes is not null && b.Notes.All(n => n is not null))
            ? blocks
            : throw new FormatException("each entry of a note set has a heading and a list of notes");
    }

    private static Dictionary<TextRole, TextStyle> ParseTexts(string json)
    {
        Dictionary<string, TextStyle> texts = Parse(json, TemplateJson.Default.DictionaryStringTextStyle);
        return Enum.GetValues<TextRole>().ToDictionary(r => r, r => Required(texts, r.ToString(), "text role"));
    }

    internal static T Required<T>(Dictionary<string, T> items, string key, string kind) =>
        items.TryGetValue(key, out T? item) ? item : throw new FormatException($"the template lacks the {kind} \"{key}\"");

    private static T Parse<T>(string json, JsonTypeInfo<T> type)
    {
        try
        {
            return JsonSerializer.Deserialize(json, type) ?? throw new FormatException("the template is empty");
        }
        catch (JsonException e)
        {
            throw new FormatException("the template cannot be read: " + e.Message, e);
        }
    }

    private static string Carried(string name)
    {
        using Stream stream = typeof(TemplateReader).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the program lacks its template {name}");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
