using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Templating;

/// <summary>A layer list as its file has it: linetypes, and the layer of each role by the role's name.</summary>
internal sealed record LayerList(List<LinetypeDefinition> Linetypes, Dictionary<string, LayerDefinition> Layers)
{
    public Dictionary<LayerRole, LayerDefinition> ByRole() =>
        Enum.GetValues<LayerRole>().ToDictionary(r => r, r => TemplateReader.Required(Layers, r.ToString(), "layer role"));
}
