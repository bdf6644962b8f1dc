using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SheetGen.Writers.Json;

/// <summary>What the JSON documents of the commands share: an indented text with line feeds, lists of objects, figures that may be missing.</summary>
internal static class JsonText
{
    /// <summary>A document whose root is an object.</summary>
    public static string Of(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>A named list with an object an item.</summary>
    public static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>As <see cref="Objects"/>, with an object a line, so that a list of many nails stays readable.</summary>
    public static void Lines<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            var line = new ArrayBufferWriter<byte>();
            using (var inner = new Utf8JsonWriter(line, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            {
                inner.WriteStartObject();
                write(inner, item);
                inner.WriteEndObject();
            }
            json.WriteRawValue(line.WrittenSpan);
        }
        json.WriteEndArray();
    }

    /// <summary>A named list of texts.</summary>
    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    /// <summary>A figure; absent where there is none.</summary>
    public static void NumberIfKnown(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
            json.WriteNumber(name, number);
    }

    /// <summary>A text; absent where it is empty.</summary>
    public static void TextIfAny(this Utf8JsonWriter json, string name, string text)
    {
        if (text.Length > 0)
            json.WriteString(name, text);
    }
}
