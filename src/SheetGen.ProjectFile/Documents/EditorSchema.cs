using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SheetGen.ProjectFile.Keys;

namespace SheetGen.ProjectFile.Documents;

/// <summary>templates/sheetgen.schema.json, made from the key table: JSON Schema (draft 7) for completion and first checks in editors.</summary>
public static class EditorSchema
{
    private const string LengthPattern = "^[-+]?[0-9.]+([eE][-+]?[0-9]+)?\\s*(ft|us-ft|in|m|cm|mm|'|\")$|^-?[0-9]+\\s*('|ft)\\s*-?\\s*[0-9.]+([ -][0-9]+/[0-9]+)?\\s*(\"|in)$";

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
            ValueKind.Length => NumberOr(key, LengthPattern),
            ValueKind.Station => NumberOr(key, "^[-+]?[0-9]+\\+[0-9]{2,3}(\\.[0-9]*)?$"),
            ValueKind.Angle or ValueKind.Azimuth or ValueKind.Lean or ValueKind.Slope or ValueKind.Grade => Either(key),
            ValueKind.Share => NumberOr(key, "^[-+]?[0-9.]+\\s*%$"),
            ValueKind.Scale => NumberOr(key, "^1:\\s*[0-9.]+$"),
            ValueKind.Choice => new JsonObject { ["enum"] = new JsonArray([.. key.Choices.Select(c => (JsonNode)c)]) },
            ValueKind.List => List(key),
            ValueKind.Names => new JsonObject { ["type"] = "object", ["additionalProperties"] = Of(key.Item!) },
            _ => Map(key),
        };
        schema["description"] = key.Default is null ? key.Meaning : $"{key.Meaning} Default: {key.Default}{(key.DefaultMetric is null ? "" : $" ({key.DefaultMetric})")}.";
        return schema;
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

    /// <summary>A number in its range, or a text: the program reads more spellings than a pattern should name.</summary>
    private static JsonObject Either(Key key) => new()
    {
        ["anyOf"] = new JsonArray(Number(key, "number"), new JsonObject { ["type"] = "string" }),
    };

    private static JsonObject NumberOr(Key key, string pattern) => new()
    {
        ["anyOf"] = new JsonArray(Number(key, "number"), new JsonObject { ["type"] = "string", ["pattern"] = pattern }),
    };

    private static JsonObject List(Key key)
    {
        var list = new JsonObject { ["type"] = "array", ["items"] = Of(key.Item!), ["minItems"] = key.MinCount, ["maxItems"] = key.MaxCount };
        return key.OneAllowed ? new JsonObject { ["anyOf"] = new JsonArray(Of(key.Item!), list) } : list;
    }

    private static JsonObject Map(Key key)
    {
        if (key.VariantKey is not null)
            return new JsonObject { ["oneOf"] = new JsonArray([.. key.Variants.Select(v => (JsonNode)Variant(key, v.Key, v.Value))]) };
        JsonObject block = Block(key.Children);
        if (key.ExactlyOne)
            (block["minProperties"], block["maxProperties"]) = (1, 1);
        if (key.Short.Count == 0)
            return block;
        var items = new JsonArray([.. key.Short.Select(s => (JsonNode)Of(key.Children.First(c => c.Name == s)))]);
        var shortForm = new JsonObject { ["type"] = "array", ["items"] = items, ["minItems"] = key.Short.Count, ["maxItems"] = key.Short.Count };
        return new JsonObject { ["anyOf"] = new JsonArray(shortForm, block) };
    }

    private static JsonObject Variant(Key key, string value, IReadOnlyList<Key> more)
    {
        JsonObject block = Block([.. key.Children, .. more]);
        block["properties"]![key.VariantKey!] = new JsonObject { ["enum"] = new JsonArray(value) };
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
