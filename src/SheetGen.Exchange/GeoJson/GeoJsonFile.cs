using System.Text.Encodings.Web;
using System.Text.Json;
using NetTopologySuite.Features;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO.Converters;
using SheetGen.Exchange.Common;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.GeoJson;

/// <summary>
/// nails.geojson: a feature collection with each head as a point and each hole as a line, in project coordinates (easting, northing,
/// elevation in the project's unit) and not in longitude and latitude; RFC 7946, section 4, lets two sides agree on that. The members
/// before the features say the unit, and the zone where the project names it.
/// </summary>
internal static class GeoJsonFile
{
    public const string FileName = "nails.geojson";

    public static byte[] Make(ExchangeInput input)
    {
        var factory = new GeometryFactory();
        var options = new JsonSerializerOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        options.Converters.Add(new GeoJsonConverterFactory(factory, writeGeometryBBox: false, "_id"));
        var frame = new PlanFrame(input.Project);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            json.WriteString("name", input.Project.Info.Title);
            json.WriteString("units", Lengths.Symbol(input.Project.Unit));
            json.WriteString("coordinates_are", "easting, northing, elevation of the project");
            json.WriteString("coordinate_zone", frame.Zone ?? "not given");
            if (frame.Epsg is { } code)
                json.WriteString("coordinate_code", code);
            json.WriteStartArray("features");
            Write(json, NailFeatures.Heads(input, factory), "head", options);
            Write(json, NailFeatures.Traces(input, factory), "trace", options);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Write(Utf8JsonWriter json, IEnumerable<Feature> features, string part, JsonSerializerOptions options)
    {
        foreach (Feature feature in features)
        {
            feature.Attributes.Add("part", part);
            JsonSerializer.Serialize(json, feature, options);
        }
    }
}
