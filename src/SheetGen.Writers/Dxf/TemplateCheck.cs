using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Templating;
using SheetGen.Dxf;

namespace SheetGen.Writers.Dxf;

/// <summary>Holds a user's layer list and notes to what the drawing format takes, before a wall is laid out.</summary>
public static partial class TemplateCheck
{
    private const int MostPattern = 12, MostNotes = 500, LongestNote = 4000;
    private const double LongestDash = 1000;

    /// <summary>A fault and where in the file it stands: a path such as <c>layers.Fill.color</c>.</summary>
    public sealed record Fault(string Path, string Message);

    /// <summary>All faults of a layer list.</summary>
    /// <param name="places">The file's own places, which also tell keys that no one reads.</param>
    public static IReadOnlyList<Fault> OfLayers(DrawingTemplates templates, JsonPlaces places)
    {
        var faults = new List<Fault>();
        faults.AddRange(places.Paths.Select(UnknownKey).OfType<Fault>());
        faults.AddRange(places.Twice.Select(t => new Fault(t.Path, $"\"{t.Path}\" is given twice")));
        for (int i = 0; i < templates.Linetypes.Count; i++)
            faults.AddRange(Missing(places, string.Create(CultureInfo.InvariantCulture, $"linetypes[{i}]"), "name", "description", "pattern") is { Length: > 0 } missing ? missing : OfLinetype(templates.Linetypes, i));
        HashSet<string> linetypes = [.. templates.Linetypes.Where(t => t.Name is not null).Select(t => t.Name.ToUpperInvariant())];
        var byName = new Dictionary<string, (LayerRole Role, LayerDefinition Layer)>(StringComparer.OrdinalIgnoreCase);
        foreach ((LayerRole role, LayerDefinition layer) in templates.Layers.Where(l => places.Has($"layers.{l.Key}")))
        {
            if (Missing(places, $"layers.{role}", "name", "color", "linetype", "weight", "screen", "description") is { Length: > 0 } missing)
            {
                faults.AddRange(missing);
                continue;
            }
            faults.AddRange(OfLayer(role, layer, linetypes));
            if (byName.TryGetValue(layer.Name, out (LayerRole Role, LayerDefinition Layer) first))
            {
                if (first.Layer with { Name = layer.Name, Description = layer.Description } != layer)
                    faults.Add(new($"layers.{role}.name", $"the layer \"{Shown(layer.Name)}\" is given otherwise for {first.Role}: one layer has one colour, line type and weight"));
            }
            else
            {
                byName.Add(layer.Name, (role, layer));
            }
        }
        return faults;
    }

    /// <summary>All faults of a note set.</summary>
    public static IReadOnlyList<Fault> OfNotes(DrawingTemplates templates, JsonPlaces places)
    {
        var faults = new List<Fault>(places.Twice.Select(t => new Fault(t.Path, $"\"{t.Path}\" is given twice")));
        int count = templates.Notes.Sum(b => b.Notes.Count);
        if (count > MostNotes)
            faults.Add(new("", string.Create(CultureInfo.InvariantCulture, $"there are {count} notes; the limit is {MostNotes}")));
        for (int i = 0; i < templates.Notes.Count; i++)
        {
            string block = string.Create(CultureInfo.InvariantCulture, $"[{i}]");
            Text(block + ".heading", templates.Notes[i].Heading);
            for (int n = 0; n < templates.Notes[i].Notes.Count; n++)
                Text(string.Create(CultureInfo.InvariantCulture, $"{block}.notes[{n}]"), templates.Notes[i].Notes[n]);
        }
        return faults;

        void Text(string path, string text)
        {
            if (BadSign(text) is { } sign)
                faults.Add(new(path, $"the text holds {sign}, which no sheet can show"));
            if (text.Length > LongestNote)
                faults.Add(new(path, string.Create(CultureInfo.InvariantCulture, $"the text has {text.Length} characters; the limit is {LongestNote}")));
        }
    }

    /// <summary>All faults of a language's texts.</summary>
    public static IReadOnlyList<Fault> OfLanguage(DrawingTemplates templates, JsonPlaces places) =>
    [
        // Sentences that begin with a capital and those that do not are two.
        .. places.Twice.Where(t => t.SameCase).Select(t => new Fault(t.Path, $"\"{Shown(t.Path)}\" is given twice")),
        // Heads of columns stand in one phrase, a line each; the reader has counted them.
        .. places.Texts.Select(t => (t.Path, Sign: BadSign(t.Path.StartsWith("phrases.", StringComparison.OrdinalIgnoreCase) ? t.Text.Replace("\n", "", StringComparison.Ordinal) : t.Text)))
            .Where(t => t.Sign is not null).Select(t => new Fault(t.Path, $"the text holds {t.Sign}, which no sheet can show")),
        .. places.Texts.Where(t => t.Text.Length > LongestNote).Select(t => new Fault(t.Path, "the text is too long for a sheet")),
    ];

    private static IEnumerable<Fault> OfLinetype(IReadOnlyList<LinetypeDefinition> all, int i)
    {
        LinetypeDefinition type = all[i];
        string at = string.Create(CultureInfo.InvariantCulture, $"linetypes[{i}]");
        if (NameFault(type.Name) is { } fault)
            yield return new(at + ".name", fault);
        else if (DxfLinetype.IsBuiltIn(type.Name))
            yield return new(at + ".name", $"the line type \"{type.Name}\" is built in; take another name");
        else if (all.Take(i).Any(t => string.Equals(t.Name, type.Name, StringComparison.OrdinalIgnoreCase)))
            yield return new(at + ".name", $"the line type \"{type.Name}\" is given twice");
        if (BadSign(type.Description) is { } sign)
            yield return new(at + ".description", $"the description holds {sign}");
        if (type.Pattern.Count is < 2 or > MostPattern)
            yield return new(at + ".pattern", $"a pattern has 2 to {MostPattern} lengths");
        else if (!type.Pattern.All(p => Math.Abs(p) <= LongestDash))
            yield return new(at + ".pattern", $"a length of a pattern is at most {LongestDash} mm");
        else if (!type.Pattern.Any(p => p >= 0) || !type.Pattern.Any(p => p < 0))
            yield return new(at + ".pattern", "a pattern needs a dash (over 0) or a dot (0), and a gap (under 0)");
    }

    private static IEnumerable<Fault> OfLayer(LayerRole role, LayerDefinition layer, HashSet<string> linetypes)
    {
        string at = $"layers.{role}";
        if (NameFault(layer.Name) is { } fault)
            yield return new(at + ".name", fault);
        if (layer.Color is < 1 or > 255)
            yield return new(at + ".color", string.Create(CultureInfo.InvariantCulture, $"{layer.Color} is no colour of the DXF palette (1 to 255)"));
        if (!layer.Linetype.Equals(DxfLinetype.Continuous, StringComparison.OrdinalIgnoreCase) && !linetypes.Contains(layer.Linetype.ToUpperInvariant()))
            yield return new(at + ".linetype", $"the line type \"{Shown(layer.Linetype)}\" is not in the list; Continuous is always there");
        if (!(Math.Abs(layer.Weight) <= 10) || !DxfLayer.LineWeights.Contains((int)Math.Round(layer.Weight * 100)))
        {
            string weights = string.Join(", ", DxfLayer.LineWeights.Select(w => (w / 100.0).ToString("0.00", CultureInfo.InvariantCulture)));
            yield return new(at + ".weight", string.Create(CultureInfo.InvariantCulture, $"{layer.Weight} mm is no line weight of the DXF format; it has {weights}"));
        }
        if (layer.Screen is < 0 or > 100)
            yield return new(at + ".screen", string.Create(CultureInfo.InvariantCulture, $"{layer.Screen} is no darkness in percent (0 to 100)"));
        if (BadSign(layer.Description) is { } sign)
            yield return new(at + ".description", $"the description holds {sign}");
    }

    private static Fault[] Missing(JsonPlaces places, string block, params string[] keys) =>
        [.. keys.Where(k => !places.Has($"{block}.{k}")).Select(k => new Fault(block, $"\"{k}\" is missing in {block}"))];

    private static Fault? UnknownKey(string path)
    {
        Match layer = LayerPath().Match(path);
        if (layer.Success && !Enum.TryParse<LayerRole>(layer.Groups[1].Value, ignoreCase: false, out _))
            return layer.Groups[2].Success ? null : new(path, $"no layer role is named \"{Shown(layer.Groups[1].Value)}\"");
        if (layer.Groups[2].Success && layer.Groups[2].Value.ToUpperInvariant() is not ("NAME" or "COLOR" or "LINETYPE" or "WEIGHT" or "SCREEN" or "DESCRIPTION" or "PLOT"))
            return new(path, $"unknown key \"{Shown(layer.Groups[2].Value)}\": a layer has name, color, linetype, weight, screen, description and plot");
        return null;
    }

    private static string? NameFault(string name) => BadSign(name) is { } sign
        ? $"the name \"{Shown(name)}\" holds {sign}"
        : DxfDocumentCheck.IsName(name) ? null : $"\"{Shown(name)}\" is no name in a drawing: none of < > / \\ \" : ; ? * | , = ` ^, no space at an end, at most 255 characters";

    /// <summary>A character that is not shown, or that turns the direction of what is.</summary>
    private static string? BadSign(string text)
    {
        foreach (char c in text)
        {
            if (char.IsControl(c) || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
                return string.Create(CultureInfo.InvariantCulture, $"the control character U+{(int)c:X4}");
        }
        return null;
    }

    private static string Shown(string text)
    {
        string clean = new([.. text.Take(40).Select(c => BadSign(c.ToString()) is null ? c : ' ')]);
        return text.Length > 40 ? clean + "..." : clean;
    }

    [GeneratedRegex(@"^layers\.([^.\[\]]+)(?:\.([^.\[\]]+))?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LayerPath();
}
