using System.Text.Json;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Writers.Json;

/// <summary>
/// What the layout does to the design, as "effect" of findings.json: every production nail as drawn, and on its grid place where it is
/// changed. What is not given is absent. Forces in kip or kN, areas and lengths in project units.
/// </summary>
internal static class EffectJson
{
    public static void Write(Utf8JsonWriter json, LayoutEffect effect)
    {
        json.WriteStartObject("effect");
        json.WriteString("caution", LayoutEffect.Caution);
        if (effect.LayersFrom.Length > 0)
            json.WriteString("layers", effect.LayersFrom);
        if (effect.AreaWithoutNails > 0)
            Number(json, "area_without_nails", effect.AreaWithoutNails);
        json.Lines("sections", effect.Sections, WriteSection);
        json.Lines("nails", effect.Nails, WriteNail);
        json.Lines("left_out", effect.LeftOut, WriteShared);
        json.Lines("tests", effect.Tests, WriteTest);
        json.WriteEndObject();
    }

    private static void WriteSection(Utf8JsonWriter json, SectionEffect effect)
    {
        json.WriteString("wall", effect.Wall.Name);
        json.WriteString("section", effect.Section.Name);
        Number(json, "design_area", effect.DesignArea);
        if (effect.Section.Design is { } design)
        {
            json.WriteString("method", design.Method switch { DesignMethod.Lrfd => "LRFD", DesignMethod.Asd => "ASD", _ => "nominal" });
            Number(json, "least_ratio", design.LeastRatio);
            Number(json, "area_share", design.AreaShare);
            json.Texts("missing", effect.Missing);
        }
    }

    private static void WriteNail(Utf8JsonWriter json, NailEffect effect)
    {
        json.WriteString("nail", effect.Nail.Mark);
        json.WriteString("zone", ResultWords.Of(effect.Zone));
        json.WriteBoolean("changed", effect.IsChanged);
        Number(json, "area_of_design", effect.AreaShare);
        WritePlace(json, "drawn", effect.Drawn);
        if (effect.IsChanged && effect.Grid is { } grid)
            WritePlace(json, "grid", grid);
    }

    private static void WritePlace(Utf8JsonWriter json, string name, PlaceEffect place)
    {
        json.WriteStartObject(name);
        Number(json, "area", place.Area);
        Number(json, "square", place.Square);
        Number(json, "across", place.Across);
        Number(json, "load_share", place.LoadShare);
        Number(json, "max_load", place.MaximumLoad);
        Number(json, "head_load", place.HeadLoad);
        Number(json, "ratio", place.Lowest?.Ratio);
        if (place.Layers.Count > 0)
        {
            json.Objects("layers", place.Layers, layer =>
            {
                json.WriteString("layer", layer.Layer);
                Number(json, "from", layer.From);
                Number(json, "to", layer.To);
            });
        }
        if (place.Cuts.Count > 0)
        {
            json.Objects("slip_surfaces", place.Cuts, cut =>
            {
                json.WriteString("surface", cut.Surface.Name);
                Number(json, "front", cut.At);
                Number(json, "behind", place.Length - cut.At);
                Number(json, "pullout_front", cut.Front);
                Number(json, "pullout_behind", cut.Behind);
            });
        }
        if (place.Checks.Count > 0)
        {
            json.Objects("checks", place.Checks, check =>
            {
                json.WriteString("limit_state", ResultWords.Of(check.State));
                if (check.Surface is not null)
                    json.WriteString("surface", check.Surface);
                Number(json, "resistance", check.Resistance);
                Number(json, "load", check.Load);
                Number(json, "ratio", check.Ratio);
            });
        }
        json.WriteEndObject();
    }

    private static void WriteShared(Utf8JsonWriter json, SharedArea shared)
    {
        json.WriteString("place", shared.Place.Mark);
        Number(json, "area", shared.Area);
        json.Objects("carried_by", shared.Carriers, carrier =>
        {
            json.WriteString("nail", carrier.Mark);
            Number(json, "growth", carrier.Growth);
        });
    }

    private static void WriteTest(Utf8JsonWriter json, SoilTest test)
    {
        json.WriteString("wall", test.Wall.Name);
        json.WriteString("section", test.Section.Name);
        json.WriteString("kind", test.IsProof ? "proof" : "verification");
        if (test.Soil.Length > 0)
            json.WriteString("soil", test.Soil);
        Number(json, "pullout_per_length", test.Pullout);
        Number(json, "bar_limit", test.BarLimit);
        Number(json, "bonded_length", test.Bonded);
        Number(json, "test_load", test.Load);
        Number(json, "free_length", test.Free);
        Number(json, "stretch", test.Stretch);
        Number(json, "least_stretch", test.LeastStretch);
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (FiniteNumber.OrNone(value) is not { } number)
            return;
        json.WritePropertyName(name);
        json.WriteRawValue(PlainNumber.Format(number, 0, 6));
    }
}
