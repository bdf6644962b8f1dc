using System.Text.Json;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Json;

/// <summary>Rooms to turn as JSON: every direction with its state, and what is in the way.</summary>
public static class WindowJson
{
    public static string Text(IReadOnlyList<TurnWindow> windows, LengthUnit unit) => JsonText.Of(json =>
    {
        json.WriteNumber("format", 1);
        json.WriteString("units", Lengths.Symbol(unit));
        json.Objects("nails", windows, w =>
        {
            json.WriteString("mark", w.Nail.Mark);
            json.WriteString("wall", w.Nail.Wall.Name);
            json.WriteNumber("station", w.Nail.Station);
            json.WriteString("station_printed", w.Nail.Wall.TextOf(w.Nail.Station, unit));
            json.WriteNumber("elevation", w.Nail.Elevation);
            json.WriteNumber("length", w.Nail.Length);
            json.WriteNumber("field_tolerance_deg", w.FieldTolerance);
            Cell(json, "now", w.Now);
            Cell(json, "up_station", w.UpStation);
            Cell(json, "down_station", w.DownStation);
            Cell(json, "flatter", w.Flatter);
            Cell(json, "steeper", w.Steeper);
            json.Objects("shorter", w.Shorter, s =>
            {
                json.WriteNumber("length", s.Length);
                json.WriteNumber("free", s.Free);
                json.WriteBoolean("present_free", s.IsStandingFree);
            });
            json.Objects("directions", w.Cells, c => Write(json, c));
        });
    });

    private static void Cell(Utf8JsonWriter json, string name, TurnCell? cell)
    {
        if (cell is not { } c)
            return;
        json.WriteStartObject(name);
        Write(json, c);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, TurnCell c)
    {
        json.WriteNumber("splay_deg", c.Splay);
        json.WriteNumber("inclination_deg", c.Inclination);
        json.WriteString("state", c.State.ToString().ToLowerInvariant());
        if (c.State != TurnState.Free)
        {
            json.WriteString("other", c.Other);
            json.WriteNumber("clear", Math.Round(c.Clear, 6));
        }
    }
}
