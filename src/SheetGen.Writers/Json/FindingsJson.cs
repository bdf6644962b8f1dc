using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Json;

/// <summary>
/// findings.json: the layout's figures with their bounds, all findings in the checker's order, and every changed nail with its full reason.
/// What does not apply is absent; only a bound may be null. Plan coordinates have the project's origin added back.
/// </summary>
public static class FindingsJson
{
    private const int LengthDecimals = 6;

    /// <summary>Writes the document as UTF-8 with line feeds to the stream and leaves it open.</summary>
    public static void Write(WallProject project, NailLayout layout, ClearanceReport report, Stream stream, LayoutEffect? effect = null)
    {
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var json = new Utf8JsonWriter(stream, options))
        {
            json.WriteStartObject();
            json.WriteNumber("format", 1);
            json.WriteString("units", Lengths.Symbol(project.Unit));
            json.WriteString("input_hash", project.InputHash);
            WriteScore(json, layout.Score);
            json.WriteStartArray("findings");
            for (int i = 0; i < report.Findings.Count; i++)
                WriteFinding(json, "F-" + (i + 1).ToString("0000", CultureInfo.InvariantCulture), report.Findings[i], project);
            json.WriteEndArray();
            json.WriteStartArray("help");
            foreach (NailHelp help in layout.Help)
                WriteHelp(json, help);
            json.WriteEndArray();
            json.WriteStartArray("changes");
            foreach (Nail nail in layout.Nails)
            {
                if (nail.Reason is not null)
                    WriteChange(json, nail, nail.Reason);
            }
            json.WriteEndArray();
            if (effect is not null)
                EffectJson.Write(json, effect);
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
    }

    private static void WriteScore(Utf8JsonWriter json, LayoutScore score)
    {
        json.WriteStartObject("layout");
        WritePair(json, "cover", score.Cover);
        WritePair(json, "unresolved", score.Unresolved);
        WritePair(json, "noted", score.Noted);
        WritePair(json, "effort", score.Effort);
        json.WriteEndObject();
    }

    private static void WriteHelp(Utf8JsonWriter json, NailHelp help)
    {
        json.WriteStartObject();
        json.WriteString("wall", help.Wall.Name);
        json.WriteStartArray("nails");
        foreach (string mark in help.Nails)
            json.WriteStringValue(mark);
        json.WriteEndArray();
        json.WritePropertyName("station");
        json.WriteRawValue(PlainNumber.Format(help.Station, 4, LengthDecimals));
        json.WritePropertyName("to_station");
        json.WriteRawValue(PlainNumber.Format(help.ToStation, 4, LengthDecimals));
        json.WriteString("relaxation", help.Relaxation);
        if (help.Value.Length > 0)
            json.WriteString("value", help.Value);
        json.WriteString("result", help.Result);
        json.WriteBoolean("needs_approval", help.NeedsApproval);
        json.WriteEndObject();
    }

    private static void WritePair(Utf8JsonWriter json, string name, FoundAndBound figure)
    {
        json.WriteStartArray(name);
        json.WriteRawValue(PlainNumber.Format(figure.Found, 0, 6));
        if (figure.Bound is { } bound && !double.IsPositiveInfinity(bound))
            json.WriteRawValue(PlainNumber.Format(bound, 0, 6));
        else
            json.WriteNullValue();
        json.WriteEndArray();
    }

    private static void WriteFinding(Utf8JsonWriter json, string id, Finding finding, WallProject project)
    {
        json.WriteStartObject();
        json.WriteString("id", id);
        json.WriteString("code", finding.Code);
        json.WriteString("severity", ResultWords.Of(finding.Severity));
        WriteText(json, "wall", finding.Wall?.Name);
        if (finding.Nails.Count > 0)
        {
            json.WriteStartArray("nails");
            foreach (string mark in finding.Nails)
                json.WriteStringValue(mark);
            json.WriteEndArray();
        }
        WriteText(json, "obstruction", finding.Obstruction);
        WriteLength(json, "station", finding.Station);
        WriteLength(json, "to_station", finding.ToStation);
        WriteLength(json, "elevation", finding.Elevation);
        WriteLength(json, "clear", finding.Clear);
        WriteLength(json, "required", finding.Required);
        if (finding.Points.Count > 0)
        {
            json.WriteStartArray("points");
            foreach (Vector3D point in finding.Points)
                WritePoint(json, point.N + project.Origin.N, point.E + project.Origin.E, point.Z);
            json.WriteEndArray();
        }
        List<double> depths = [.. finding.Depths.Where(double.IsFinite)];
        if (depths.Count > 0)
        {
            json.WriteStartArray("depths");
            foreach (double depth in depths)
                json.WriteRawValue(PlainNumber.Fixed(depth, LengthDecimals));
            json.WriteEndArray();
        }
        json.WriteString("message", finding.Message);
        json.WriteEndObject();
    }

    private static void WriteChange(Utf8JsonWriter json, Nail nail, NailReason reason)
    {
        json.WriteStartObject();
        json.WriteString("nail", nail.Mark);
        json.WriteString("status", ResultWords.Of(nail.Status));
        WriteText(json, "blocker", reason.Blocker);
        WriteLength(json, "clear_before", reason.ClearBefore);
        WriteLength(json, "clear_after", reason.ClearAfter);
        WriteLength(json, "required", reason.Required);
        json.WriteString("reason", reason.Text);
        if (reason.Failed.Count > 0)
        {
            json.WriteStartArray("failed");
            foreach (FailedChoice choice in reason.Failed)
            {
                json.WriteStartObject();
                WriteLength(json, "station", choice.Station);
                WriteAngle(json, "splay_deg", choice.Splay);
                WriteAngle(json, "inclination_deg", choice.Inclination);
                json.WriteString("blocker", choice.Blocker);
                WriteLength(json, "clear", choice.Clear);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }

    private static void WritePoint(Utf8JsonWriter json, params double[] coordinates)
    {
        json.WriteStartArray();
        foreach (double value in coordinates)
            json.WriteRawValue(PlainNumber.Fixed(value, LengthDecimals));
        json.WriteEndArray();
    }

    private static void WriteText(Utf8JsonWriter json, string name, string? text)
    {
        if (text is not null)
            json.WriteString(name, text);
    }

    private static void WriteLength(Utf8JsonWriter json, string name, double? value)
    {
        if (value is not { } number || double.IsPositiveInfinity(number))
            return;
        json.WritePropertyName(name);
        json.WriteRawValue(PlainNumber.Fixed(number, LengthDecimals));
    }

    private static void WriteAngle(Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(PlainNumber.Format(value, 0, 6));
    }
}
