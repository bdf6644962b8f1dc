using System.Text.Json.Nodes;
using SheetGen.Drawing.Templating;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>A user's own layer list: all its faults in one run, and lists from before a role was parted from another go on working.</summary>
public sealed class LayerListTests
{
    private static JsonObject Standard() => JsonNode.Parse(Repository.Read("templates", "layers", "standard.json"))!.AsObject();

    private static string[] Faults(JsonObject list)
    {
        string json = list.ToJsonString();
        DrawingTemplates templates = TemplateReader.WithLayers(TemplateReader.Default(), json);
        return [.. TemplateCheck.OfLayers(templates, JsonPlaces.In(json)).Select(f => $"{f.Path}: {f.Message}")];
    }

    [Fact]
    public void The_programs_own_has_none() => Assert.Empty(Faults(Standard()));

    [Fact]
    public void What_one_layer_lacks_hides_no_fault_of_another()
    {
        JsonObject list = Standard();
        JsonObject layers = list["layers"]!.AsObject();
        layers["Fill"]!.AsObject()["color"] = 300;
        layers["Panel"]!.AsObject()["name"] = "S/WALL";
        layers["Title"]!.AsObject().Remove("screen");
        list["linetypes"]!.AsArray()[0]!.AsObject().Remove("description");
        list["linetypes"]!.AsArray()[1]!.AsObject()["pattern"] = new JsonArray(1);
        Assert.Equal(
        [
            "layers.Fill.color", "layers.Panel.name", "layers.Title", "linetypes[0]", "linetypes[1].pattern",
        ], Faults(list).Select(f => f[..f.IndexOf(':', StringComparison.Ordinal)]).Order(StringComparer.Ordinal));
        Assert.Contains("layers.Title: \"screen\" is missing in layers.Title", Faults(list));
    }

    [Fact]
    public void A_list_without_the_later_role_takes_the_layer_it_was_parted_from()
    {
        JsonObject list = Standard();
        Assert.True(list["layers"]!.AsObject().Remove("NailLimit"));
        Assert.Empty(Faults(list));
    }
}
