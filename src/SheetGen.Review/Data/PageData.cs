using System.Text.Json;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Review.Data;

/// <summary>Everything that the page shows, as one compact JSON document; findings, reasons, proof and help are findings.json itself.</summary>
public static class PageData
{
    /// <summary>Number of the document's form; a page reads older saved reviews of the same form.</summary>
    public const int Format = 1;

    /// <param name="findings">findings.json of the same run.</param>
    public static byte[] Make(ReviewInput input, ReadOnlyMemory<byte> findings)
    {
        WallProject project = input.Project;
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteNumber("format", Format);
            json.WriteString("program", input.Run.Version);
            json.WriteStartObject("project");
            json.WriteString("title", project.Info.Title);
            json.WriteString("number", project.Info.Number);
            json.WriteString("revision", project.Sheets.Revision);
            json.WriteString("date", project.Sheets.Date);
            json.WriteEndObject();
            json.WriteString("units", Lengths.Symbol(project.Unit));
            json.WriteNumber("metres", Lengths.MetresPer(project.Unit));
            json.WriteNumber("decimals", Lengths.Decimals(project.Unit));
            json.WriteStartArray("origin");
            json.WriteNumberValue(project.Origin.N);
            json.WriteNumberValue(project.Origin.E);
            json.WriteEndArray();
            json.WriteStartArray("world");
            json.WriteNumberValue(project.ModelShift.N);
            json.WriteNumberValue(project.ModelShift.E);
            json.WriteEndArray();
            json.Number("reach", NailData.Reach(project.Unit));
            WriteRules(json, project);
            Dictionary<string, WallData> walls = project.Walls.ToDictionary(w => w.Name, w => new WallData(w, project));
            json.Objects("walls", project.Walls, w => walls[w.Name].Write(json, project.Obstructions, project.Borings));
            json.Objects("obstructions", project.Obstructions, o => ThingData.Write(json, o, project.Rules.ClearanceTo(o.Kind)));
            json.Objects("borings", project.Borings, b => ThingData.Write(json, b));
            new NailData(project, input.Layout).Write(json, input.Report, walls);
            json.List("notes", input.Layout.Notes, json.WriteStringValue);
            json.List("tables", input.Tables, t => WriteTable(json, t));
            using (var checker = JsonDocument.Parse(findings))
            {
                json.WritePropertyName("checked");
                checker.RootElement.WriteTo(json);
            }
            json.WriteEndObject();
        }
        return stream.ToArray();
    }

    private static void WriteRules(Utf8JsonWriter json, WallProject project)
    {
        Rules rules = project.Rules;
        json.WriteStartObject("rules");
        json.Number("nail", rules.NailClearance);
        json.Number("obstruction", rules.ObstructionClearance);
        json.Number("boundary", rules.BoundaryClearance);
        json.Number("drift", rules.Drift);
        json.Number("field", rules.Redirect.FieldTolerance);
        json.Number("step", rules.Redirect.Step);
        json.WriteBoolean("lengthen", rules.Redirect.Lengthen);
        json.Number("increment", rules.LengthIncrement);
        json.Number("maximum", rules.Redirect.Maximum);
        json.Array("inclination", rules.Redirect.LeastInclination, rules.Redirect.GreatestInclination);
        json.WriteEndObject();
        json.List("values", RuleList.Of(project), v =>
        {
            json.WriteStartArray();
            json.WriteStringValue(v.Key);
            json.WriteStringValue(v.Value);
            json.WriteBooleanValue(v.IsDefault);
            json.WriteEndArray();
        });
    }

    private static void WriteTable(Utf8JsonWriter json, TableData table)
    {
        json.WriteStartObject();
        json.WriteString("title", table.Title);
        json.List("heads", table.Columns, c => json.WriteStringValue(c.Head));
        json.List("numeric", table.Columns, c => json.WriteBooleanValue(c.IsNumeric));
        json.List("rows", table.Rows, row =>
        {
            json.WriteStartArray();
            foreach (string cell in row)
                json.WriteStringValue(cell);
            json.WriteEndArray();
        });
        json.WriteEndObject();
    }
}
