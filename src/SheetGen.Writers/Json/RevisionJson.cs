using System.Text;
using System.Text.Json;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Json;

/// <summary>A difference of two states as JSON: nails, findings, quantities, bid items, and what could not be read or compared.</summary>
public static class RevisionJson
{
    public static string Text(RevisionDifference d, DrawingReading? drawing = null)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("format", 1);
            json.WriteString("units", Lengths.Symbol(d.Unit));
            json.WriteString("old", d.Old.Name);
            json.WriteString("new", d.New.Name);
            json.WriteBoolean("equal", d.IsEmpty);
            json.WriteStartArray("nails");
            foreach (NailChange n in d.Nails)
            {
                json.WriteStartObject();
                json.WriteString("mark", n.Mark);
                json.WriteString("wall", n.Wall);
                json.WriteString("change", n.Kind.ToString().ToLowerInvariant());
                json.WriteString("what", n.What);
                Nail(json, "before", n.Before);
                Nail(json, "after", n.After);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("findings");
            foreach (FindingChange f in d.Findings)
            {
                RevisionFinding shown = (f.After ?? f.Before)!;
                json.WriteStartObject();
                json.WriteString("change", f.Before is null ? "new" : f.After is null ? "gone" : "changed");
                json.WriteString("code", shown.Code);
                json.WriteString("severity", ResultWords.Of(shown.Severity));
                Texts(json, "nails", shown.Nails);
                json.WriteString("message", shown.Message);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("quantities");
            foreach (AmountChange a in d.Amounts)
            {
                json.WriteStartObject();
                json.WriteString("name", a.Name);
                json.WriteString("text", a.Text);
                json.WriteString("unit", a.Unit);
                if (a.Wall.Length > 0)
                    json.WriteString("wall", a.Wall);
                if (a.Stage.Length > 0)
                    json.WriteString("stage", a.Stage);
                Number(json, "old", a.Before);
                Number(json, "new", a.After);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("items");
            foreach (ItemChange i in d.Items)
            {
                json.WriteStartObject();
                json.WriteString("number", i.Number);
                json.WriteString("description", i.Description);
                json.WriteString("unit", i.Unit);
                Number(json, "old", i.Before);
                Number(json, "new", i.After);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            Texts(json, "not_compared", d.NotCompared);
            if (drawing is not null)
            {
                Texts(json, "not_read", drawing.NotRead);
                Texts(json, "notes", drawing.Notes);
            }
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Nail(Utf8JsonWriter json, string name, RevisionNail? n)
    {
        if (n is null)
            return;
        json.WriteStartObject(name);
        json.WriteNumber("station", n.Station);
        json.WriteNumber("elevation", n.Elevation);
        json.WriteNumber("splay_deg", n.Splay);
        json.WriteNumber("inclination_deg", n.Inclination);
        json.WriteNumber("length", n.Length);
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
            json.WriteNumber(name, number);
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
