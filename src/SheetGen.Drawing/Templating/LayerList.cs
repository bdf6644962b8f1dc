using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Templating;

/// <summary>A layer list as its file has it: linetypes, and the layer of each role by the role's name.</summary>
internal sealed record LayerList(List<LinetypeDefinition> Linetypes, Dictionary<string, LayerDefinition> Layers)
{
    /// <exception cref="FormatException">Roles are missing; the message names all of them.</exception>
    public Dictionary<LayerRole, LayerDefinition> ByRole()
    {
        if (Linetypes is null || Layers is null)
            throw new FormatException($"the template lacks \"{(Linetypes is null ? "linetypes" : "layers")}\"");
        if (Linetypes.Exists(t => t is null))
            throw new FormatException("a line type of the list is null");
        string[] missing = [.. Enum.GetValues<LayerRole>().Select(NameOf).Where(r => Layers.GetValueOrDefault(r) is null).Distinct()];
        return missing.Length == 0
            ? Enum.GetValues<LayerRole>().ToDictionary(r => r, r => TemplateReader.Required(Layers, NameOf(r), "layer role"))
            : throw new FormatException($"the template lacks the layer role{(missing.Length > 1 ? "s" : "")} {string.Join(", ", missing.Select(m => $"\"{m}\""))}");
    }

    /// <summary>The role's own layer, or that of the role from which it was parted later, so that older lists go on working.</summary>
    private string NameOf(LayerRole role) =>
        role == LayerRole.NailLimit && !Layers.ContainsKey(role.ToString()) ? nameof(LayerRole.NailTrace) : role.ToString();
}
