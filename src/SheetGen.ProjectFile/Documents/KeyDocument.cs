using System.Globalization;
using System.Text;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Documents;

/// <summary>docs/project-file.md, made from the key table.</summary>
public static class KeyDocument
{
    private const string Intro = """
        # The project file

        Made from the key table in `src/SheetGen.ProjectFile/Keys`; a test fails when this page is stale, and
        `SHEETGEN_WRITE_DOCS=1 dotnet test tests/SheetGen.Tests -c Release --filter "FullyQualifiedName~DocumentTests"` writes it anew.
        For completion in an editor point its YAML support to `templates/sheetgen.schema.json`.

        ## Values

        | kind | forms |
        | --- | --- |
        | length | a number in the project's unit, or with its own: `3.5 ft`, `6 in`, `5'-6"`, `5 ft 6 1/2 in`, `2 us-ft`, `1.2 m`, `15 cm`, `150 mm`. In projects in `ft` or `us-ft` an inch is a twelfth of that foot and `'` is that foot. Elevations, offsets and coordinates are lengths. Every conversion is exact: 1 ft = 0.3048 m, 1 in = 0.0254 m, 1 us-ft = 1200/3937 m |
        | station | a plain number, or `100+25.5` in feet (two digits behind the plus), `1+234.5` in metres (three digits) |
        | angle | degrees: `15`, `15 deg`, `89-30-15` (degrees, minutes, seconds) |
        | share | a ratio or a percentage: `0.05`, `5 %` |
        | force, strength, steel | a number in the unit named first (in projects in metres: in brackets), or with its own: `20 kip`, `90 kN`, `15 psi`, `100 kPa`, `60 ksi`, `0.12 in2/ft` |
        | text | one line of at most 400 characters, names of at most 100; in quotes where it has `#`, or a colon and a space |
        | point | `{station, offset}` or `{northing, easting}`, see [point](#point). The offset is positive into the retained side; where walls on one layout line retain different sides, the point names its `wall` |

        A key without a value is an error, never 0. Keys that the tables do not name are errors. Numbers have a decimal point, never a comma.
        Anchors, aliases and merge keys are refused.

        Below, **bold** keys are needed; all others may be left out.

        """;

    /// <summary>The document, lines ended by line feeds.</summary>
    public static string Text()
    {
        var page = new StringBuilder(Intro.ReplaceLineEndings("\n"));
        var shared = new SortedDictionary<string, Key>(StringComparer.Ordinal);
        Block(page, KeyTable.Root, "The file", shared);
        page.Append("\n## Shared blocks\n");
        foreach ((string name, Key key) in shared)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n### {name}\n\n");
            if (key.Short.Count > 0)
                page.Append(CultureInfo.InvariantCulture, $"Short form: `[{string.Join(", ", key.Short)}]`.\n\n");
            Table(page, key.Children);
            if (key.Sources.Count > 0)
                page.Append(CultureInfo.InvariantCulture, $"\nIn place of a list of these, or as one of its items: {string.Join(", ", key.Sources.Select(s => $"[{s.Name}](#{s.Shared!.Replace(' ', '-')})"))}.\n");
        }
        return page.ToString();
    }

    private static void Block(StringBuilder page, Key key, string path, SortedDictionary<string, Key> shared)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n{(path == "The file" ? "##" : "###")} {path}\n\n{key.Meaning}\n");
        if (key.ExactlyOne)
            page.Append("Exactly one of these keys.\n");
        page.Append('\n');
        Table(page, key.Children);
        string start = path == "The file" ? "" : path + ": ";
        foreach (Key child in key.Children)
            Inner(page, child, start, shared);
        foreach (IGrouping<IReadOnlyList<Key>, KeyValuePair<string, IReadOnlyList<Key>>> same in Variants(key))
        {
            string names = string.Join(" or ", same.Select(v => v.Key));
            page.Append(CultureInfo.InvariantCulture, $"\n### {path}: {key.VariantKey} {names}\n\nFurther keys of a {names}.\n\n");
            Table(page, same.First().Value);
            foreach (Key child in same.First().Value)
                Inner(page, child, start, shared);
        }
    }

    private static IEnumerable<IGrouping<IReadOnlyList<Key>, KeyValuePair<string, IReadOnlyList<Key>>>> Variants(Key key) =>
        key.Variants.GroupBy(v => v.Value, new SameNames());

    private static void Inner(StringBuilder page, Key key, string start, SortedDictionary<string, Key> shared)
    {
        Key block = key.Kind == ValueKind.List ? key.Item! : key;
        foreach (Key source in block.Sources)
            shared[source.Shared!] = source;
        foreach (Key child in block.Sources.SelectMany(s => s.Children))
            Inner(page, child, start, shared);
        if (block.Shared is { } name)
        {
            shared[name] = block;
        }
        else if (block.Kind == ValueKind.Map)
        {
            Block(page, block with { Meaning = key.Meaning }, start + key.Name, shared);
        }
    }

    private static void Table(StringBuilder page, IReadOnlyList<Key> keys)
    {
        page.Append("| key | takes | meaning | default | example |\n| --- | --- | --- | --- | --- |\n");
        foreach (Key key in keys)
        {
            string from = string.Join(", ", Sources(key).Select(s => $"[{s.Name}](#{s.Shared!.Replace(' ', '-')})"));
            string name = key.Required ? $"**{key.Name}**" : key.Name;
            string example = key.Example.Length == 0 ? "" : $"`{key.Example}`";
            page.Append(CultureInfo.InvariantCulture, $"| {name} | {Takes(key)}{(from.Length == 0 ? "" : ", or " + from)} | {key.Meaning} | {Default(key)} | {example} |\n");
        }
    }

    private static IReadOnlyList<Key> Sources(Key key) => key.Kind == ValueKind.List ? key.Item!.Sources : key.Sources;

    private static string Takes(Key key) => key.Kind switch
    {
        ValueKind.Choice => string.Join(", ", key.Choices.Select(c => $"`{c}`")),
        ValueKind.Flag => "`true` or `false`",
        ValueKind.Integer => "whole number" + Range(key),
        ValueKind.Map when key.Shared is { } shared => $"[{shared}](#{shared.Replace(' ', '-')})",
        ValueKind.Map => "block",
        ValueKind.Names => "block of names, each with a " + Takes(key.Item!),
        ValueKind.List when key.MinCount == key.MaxCount => $"list of {key.MinCount}: {Takes(key.Item!)}",
        ValueKind.List => (key.OneAllowed ? "one or a list: " : key.MinCount > 1 ? $"list of at least {key.MinCount}: " : "list: ") + Takes(key.Item!),
        ValueKind.Measure => $"{key.Measure!.Foot} ({key.Measure.Metre})" + Range(key),
        _ => key.Kind.ToString().ToLowerInvariant() + Range(key) + string.Concat(key.Choices.Select(c => $", or `{c}`")),
    };

    private static string Range(Key key)
    {
        string feet = Words(key, LengthUnit.Foot), metres = Words(key, LengthUnit.Metre);
        if (feet is "" or "any number")
            return "";
        return key.RangeMetric is null ? $", {feet}" : $", {feet} ft ({metres} m)";
    }

    private static string Words(Key key, LengthUnit unit) => key.RangeFor(unit)?.InWords("") ?? "";

    private static string Default(Key key) =>
        key.Default is null ? "" : key.DefaultMetric is null ? key.Default : $"{key.Default} ({key.DefaultMetric})";

    /// <summary>Variants with the same keys are described once.</summary>
    private sealed class SameNames : IEqualityComparer<IReadOnlyList<Key>>
    {
        public bool Equals(IReadOnlyList<Key>? x, IReadOnlyList<Key>? y) => x!.Select(k => k.Name).SequenceEqual(y!.Select(k => k.Name));

        public int GetHashCode(IReadOnlyList<Key> keys) => keys.Count;
    }
}
