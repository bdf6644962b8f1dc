using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Templating;

/// <summary>A layer list as its file has it: linetypes, and the layer of each role by the role's name.</summary>
internal sealed record LayerList(List<LinetypeDefinition> Linetypes, Dictionary<string, LayerDefinition> Layers)
{
    public Dictionary<LayerRole, LayerDefinition> ByRole() =>
        Enum.GetValues<LayerRole>().ToDictionary(r => r, r => TemplateReader.Required(Layers, NameOf(r), "layer role"));

    /// <summary>The role's own layer, or that of the role from which it was parted later, so that older lists go on working.</summary>
    private string NameOf(LayerRole role) =>
        role == LayerRole.NailLimit && !Layers.ContainsKey(role.ToString()) ? nameof(LayerRole.NailTrace) : role.ToString();
}
