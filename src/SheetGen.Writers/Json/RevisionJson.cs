using System.Text.Json;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Json;

/// <summary>A difference of two states as JSON: nails, findings, quantities, bid items, and what could not be read or compared.</summary>
public static class RevisionJson
{
    public static string Text(RevisionDifference d, DrawingReading? drawing = null) => JsonText.Of(json =>
    {
        json.WriteNumber("format", 1);
        json.WriteString("units", Lengths.Symbol(d.Unit));
        json.WriteString("old", d.Old.Name);
        json.WriteString("new", d.New.Name);
        json.WriteBoolean("equal", d.IsEmpty);
        json.Objects("nails", d.Nails, n =>
        {
            json.WriteString("mark", n.Mark);
            json.WriteString("wall", n.Wall);
            json.WriteString("change", n.Kind.ToString().ToLowerInvariant());
            json.WriteString("what", n.What);
            Nail(json, d, "before", n.Before, Lengths.MetresPer(d.Old.Unit ?? d.Unit) / Lengths.MetresPer(d.Unit));
            Nail(json, d, "after", n.After, 1);
        });
        json.Objects("findings", d.Findings, f =>
        {
            RevisionFinding shown = (f.After ?? f.Before)!;
            json.WriteString("change", f.Before is null ? "new" : f.After is null ? "gone" : "changed");
            json.WriteString("code", shown.Code);
            json.WriteString("severity", ResultWords.Of(shown.Severity));
            json.Texts("nails", shown.Nails);
            json.WriteString("message", shown.Message);
        });
        json.Objects("quantities", d.Amounts, a =>
        {
            json.WriteString("name", a.Name);
            json.WriteString("text", a.Text);
            json.WriteString("unit", a.Unit);
            json.TextIfAny("wall", a.Wall);
            json.TextIfAny("stage", a.Stage);
            json.NumberIfKnown("old", a.Before);
            json.NumberIfKnown("new", a.After);
        });
        json.Objects("items", d.Items, i =>
        {
            json.WriteString("number", i.Number);
            json.WriteString("description", i.Description);
            json.WriteString("unit", i.Unit);
            json.NumberIfKnown("old", i.Before);
            json.NumberIfKnown("new", i.After);
        });
        json.Texts("not_compared", d.NotCompared);
        if (drawing is not null)
        {
            json.Texts("not_read", [.. drawing.NotRead, .. drawing.LeftOut]);
            json.Texts("notes", drawing.Notes);
        }
    });

    /// <param name="factor">From the nail's unit to that of the difference, for the printed station alone: the figures are as their state gives them.</param>
    private static void Nail(Utf8JsonWriter json, RevisionDifference d, string name, RevisionNail? n, double factor)
    {
        if (n is null)
            return;
        json.WriteStartObject(name);
        json.WriteNumber("station", n.Station);
        if (d.HasStationEquations)
            json.WriteString("station_printed", d.PrintedStation(n.Wall, n.Station * factor));
        json.WriteNumber("elevation", n.Elevation);
        json.WriteNumber("splay_deg", n.Splay);
        json.WriteNumber("inclination_deg", n.Inclination);
        json.WriteNumber("length", n.Length);
        json.WriteEndObject();
    }
}
