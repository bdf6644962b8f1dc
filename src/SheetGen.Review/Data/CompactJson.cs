using System.Text.Json;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;

namespace SheetGen.Review.Data;

/// <summary>
/// Short ways to write the page's data: lengths and coordinates to a hundred thousandth of the unit, no spaces. Every sign beyond plain ASCII, and every one
/// that means something in markup, is written as an escape, so that no name can end the script element that holds the data.
/// </summary>
internal static class CompactJson
{
    private const int Decimals = 5;

    public static void Number(this Utf8JsonWriter json, double value)
    {
        double rounded = Math.Round(value, Decimals, MidpointRounding.AwayFromZero);
        json.WriteNumberValue(rounded == 0 ? 0 : rounded);
    }

    /// <summary>Null where there is no value, or nothing to measure to (plus infinity).</summary>
    public static void NumberOrNull(this Utf8JsonWriter json, double? value)
    {
        if (FiniteNumber.OrNone(value) is { } number)
            json.Number(number);
        else
            json.WriteNullValue();
    }

    public static void Number(this Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.Number(value);
    }

    public static void NumberOrNull(this Utf8JsonWriter json, string name, double? value)
    {
        json.WritePropertyName(name);
        json.NumberOrNull(value);
    }

    public static void Array(this Utf8JsonWriter json, params ReadOnlySpan<double> values)
    {
        json.WriteStartArray();
        foreach (double value in values)
            json.Number(value);
        json.WriteEndArray();
    }

    public static void Array(this Utf8JsonWriter json, string name, params ReadOnlySpan<double> values)
    {
        json.WritePropertyName(name);
        json.Array(values);
    }

    public static void Point(this Utf8JsonWriter json, Vector3D point) => json.Array(point.N, point.E, point.Z);

    public static void Point(this Utf8JsonWriter json, string name, Vector3D point)
    {
        json.WritePropertyName(name);
        json.Point(point);
    }

    public static void List<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
            write(item);
        json.WriteEndArray();
    }

    public static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write) => json.List(name, items, item =>
    {
        json.WriteStartObject();
        write(item);
        json.WriteEndObject();
    });
}
