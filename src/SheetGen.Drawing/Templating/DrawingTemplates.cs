using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Templating;

/// <summary>Everything about the sheets' looks that can be changed without code.</summary>
public sealed record DrawingTemplates
{
    public required IReadOnlyDictionary<LayerRole, LayerDefinition> Layers { get; init; }

    public required IReadOnlyList<LinetypeDefinition> Linetypes { get; init; }

    public required IReadOnlyDictionary<TextRole, TextStyle> Texts { get; init; }

    public required IReadOnlyList<SheetSize> Sizes { get; init; }

    /// <summary>Customary scales in feet per inch, largest picture first.</summary>
    public required IReadOnlyList<double> FootScales { get; init; }

    /// <summary>Customary ratios in metres, largest picture first.</summary>
    public required IReadOnlyList<double> MetreScales { get; init; }

    public required IReadOnlyList<NoteBlock> Notes { get; init; }

    /// <summary>The user's own title block; null for the program's.</summary>
    public TitleBlock? TitleBlock { get; init; }

    public SheetSize? SizeNamed(string name) =>
        Sizes.FirstOrDefault(s => string.Equals(s.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}
