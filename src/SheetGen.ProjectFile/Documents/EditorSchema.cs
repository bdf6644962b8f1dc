using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Documents;

/// <summary>templates/sheetgen.schema.json, made from the key table: JSON Schema (draft 7) for completion and first checks in editors.</summary>
public static class EditorSchema
{
    private static readonly string[] Units =
    [
        "us survey ft", "us survey feet", "us survey foot", "us-ft", "usft", "us ft", "survey feet", "feet", "foot", "ft", "inches", "inch", "in",
        "millimeters", "millimetres", "centimeters", "centimetres", "meters", "metres", "meter", "metre", "mm", "cm", "m",
    ];

    /// <summary>The schema, lines ended by line feeds.</summary>
    public static string Text()
    {
        JsonObject root = Of(KeyTable.Root);
        root.Insert(0, "$schema", "http://json-schema.org/draft-07/schema#");
        root.Insert(1, "title", "SheetGen project file");
        using var stream = new MemoryStream();
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(stream, options))
            root.WriteTo(writer);
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static JsonObject Of(Key key)
    {
        JsonObject schema = key.Kind switch
        {
            ValueKind.Text => new JsonObject { ["type"] = new JsonArray("string", "number", "boolean") },
            ValueKind.Flag => new JsonObject { ["type"] = "boolean" },
            ValueKind.Integer => Number(key, "integer"),
            ValueKind.Number => Number(key, "number"),
            ValueKind.Choice => new JsonObject { ["enum"] = new JsonArray([.. key.Choices.Select(c => (JsonNode)c)]) },
            ValueKind.List => List(key),
            ValueKind.Names => new JsonObject { ["type"] = "object", ["additionalProperties"] = Of(key.Item!) },
            ValueKind.Map => Map(key),
            _ when key.Choices.Count > 0 => new JsonObject { ["anyOf"] = new JsonArray(new JsonObject { ["enum"] = new JsonArray([.. key.Choices.Select(c => (JsonNode)c)]) }, NumberOrText(key)) },
            _ => NumberOrText(key),
        };
        schema["description"] = key.Default is null ? key.Meaning : $"{key.Meaning} Default: {key.Default}{(key.DefaultMetric is null ? "" : $" ({key.DefaultMetric})")}.";
        if (key.Kind is not (ValueKind.Map or ValueKind.List or ValueKind.Names) && key.Example.Length > 0)
            schema["examples"] = new JsonArray(Plain(key.Example, key.Kind));
        if (DefaultOf(key) is { } usual)
            schema["default"] = usual;
        return schema;
    }

    /// <summary>The default as a value; null where it is only told in words.</summary>
    private static JsonNode? DefaultOf(Key key) => key.Kind switch
    {
        _ when key.Default is { } word && key.Choices.Contains(word) => JsonValue.Create(key.Default),
        ValueKind.Flag when key.Default is "true" or "false" => JsonValue.Create(key.Default == "true"),
        ValueKind.Length or ValueKind.Angle or ValueKind.Share or ValueKind.Integer when key.Default is { } text && char.IsAsciiDigit(text[0]) => Plain(text, key.Kind),
        _ => null,
    };

    private static JsonNode Plain(string text, ValueKind kind)
    {
        string bare = text.Trim('"');
        return kind is not (ValueKind.Text or ValueKind.Choice) && double.TryParse(bare, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            ? JsonValue.Create(number)
            : kind == ValueKind.Flag ? JsonValue.Create(bare == "true") : JsonValue.Create(bare);
    }

    private static JsonObject Number(Key key, string type)
    {
        var number = new JsonObject { ["type"] = type };
        if (key.Range is { } range && key.RangeMetric is null)
        {
            if (range.Least > -1e5)
                number[range.LeastIncluded ? "minimum" : "exclusiveMinimum"] = range.Least;
            if (range.Most < 1e5)
                number[range.MostIncluded ? "maximum" : "exclusiveMaximum"] = range.Most;
        }
        return number;
    }

    /// <summary>A pattern that takes a word in large and small letters.</summary>
    private static string AnyCase(string word) => string.Concat(word.Select(c => char.IsLetter(c) ? $"[{c}{char.ToUpperInvariant(c)}]" : c.ToString()));

    /// <summary>A number in its range, or a text: the program reads more spellings than a pattern should name.</summary>
    private static JsonObject NumberOrText(Key key)
    {
        JsonObject number = Number(key, "number");
        number["type"] = new JsonArray("number", "string");
        string? pattern = key.Kind switch
        {
            ValueKind.Length => $"^[^A-Za-z]*[0-9][^A-Za-z]*((?:{string.Join('|', Units.Select(AnyCase))})\\.?[^A-Za-z]*){{0,2}}$",
            ValueKind.Station => $"^({AnyCase("sta")}({AnyCase("tion")})?\\.?\\s*)?[-+]?[0-9]+(\\s*\\+\\s*[0-9]{{2,3}})?(\\.[0-9]*)?$",
            ValueKind.Angle or ValueKind.Lean or ValueKind.Share or ValueKind.Slope or ValueKind.Scale or ValueKind.Grade or ValueKind.Measure => "[0-9]",
            _ => null,
        };
        if (pattern is not null)
            number["pattern"] = pattern;
        return number;
    }

    private static JsonObject List(Key key)
    {
        bool taken = key.Item!.Sources.Count > 0 && key.Item.FromSource.Count == 0;
        JsonObject items = taken ? new JsonObject { ["anyOf"] = new JsonArray([Of(key.Item), .. key.Item.Sources.Select(From)]) } : Of(key.Item);
        var list = new JsonObject { ["type"] = "array", ["items"] = items, ["minItems"] = key.MinCount, ["maxItems"] = key.MaxCount };
        if (taken)
            return new JsonObject { ["anyOf"] = new JsonArray([list, .. key.Item.Sources.Select(From)]) };
        return key.OneAllowed ? new JsonObject { ["anyOf"] = new JsonArray(Of(key.Item!), list) } : list;
    }

    private static JsonObject Map(Key key)
    {
        if (key.VariantKey is not null)
            return Variants(key);
        JsonObject block = Block([.. key.Children.Select(c => key.FromSource.Contains(c.Name) ? c with { Required = false } : c), .. key.FromSource.Count > 0 ? key.Sources : []]);
        if (key.ExactlyOne)
            (block["minProperties"], block["maxProperties"]) = (1, 1);
        if (key.Short.Count == 0)
            return block;
        var items = new JsonArray([.. key.Short.Select(s => (JsonNode)Of(key.Children.First(c => c.Name == s)))]);
        var shortForm = new JsonObject { ["type"] = "array", ["items"] = items, ["minItems"] = key.Short.Count, ["maxItems"] = key.Short.Count };
        var forms = new JsonArray(shortForm, block);
        if (key.Name == "bar")
            forms.Add(new JsonObject { ["type"] = "string", ["examples"] = new JsonArray("#8 Gr 75") });
        return new JsonObject { ["anyOf"] = forms };
    }

    /// <summary>A block that is nothing but a source.</summary>
    private static JsonObject From(Key source) => Block([source with { Required = true }]);

    /// <summary>The keys that all variants have, and by the value of the variant key those that belong to it alone.</summary>
    private static JsonObject Variants(Key key)
    {
        JsonObject block = Block(key.Children);
        block.Remove("additionalProperties");
        block["allOf"] = new JsonArray([.. key.Variants.Select(v => (JsonNode)new JsonObject
        {
            ["if"] = new JsonObject
            {
                ["properties"] = new JsonObject { [key.VariantKey!] = new JsonObject { ["const"] = v.Key } },
                ["required"] = new JsonArray(key.VariantKey!),
            },
            ["then"] = Variant(key, v.Value),
        })]);
        return block;
    }

    private static JsonObject Variant(Key key, IReadOnlyList<Key> more)
    {
        JsonObject block = Block([.. key.Children, .. more]);
        block.Remove("type");
        return block;
    }

    private static JsonObject Block(IReadOnlyList<Key> keys)
    {
        var properties = new JsonObject();
        foreach (Key key in keys)
            properties[key.Name] = Of(key);
        var required = new JsonArray([.. keys.Where(k => k.Required).Select(k => (JsonNode)k.Name)]);
        return new JsonObject { ["type"] = "object", ["properties"] = properties, ["required"] = required, ["additionalProperties"] = false };
    }
}
