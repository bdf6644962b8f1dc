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

    /// <summary>Customary scales of cross sections in feet per inch, largest picture first.</summary>
    public required IReadOnlyList<double> SectionFootScales { get; init; }

    /// <summary>Customary ratios of cross sections in metres, largest picture first.</summary>
    public required IReadOnlyList<double> SectionMetreScales { get; init; }

    /// <summary>Customary scales of details in inches of paper to a foot, largest picture first.</summary>
    public required IReadOnlyList<double> DetailFootScales { get; init; }

    /// <summary>Customary ratios of details in metres, largest picture first.</summary>
    public required IReadOnlyList<double> DetailMetreScales { get; init; }

    public required IReadOnlyList<NoteBlock> Notes { get; init; }

    /// <summary>The words of the sheets.</summary>
    public required Language Language { get; init; }

    /// <summary>The user's own title block; null for the program's.</summary>
    public TitleBlock? TitleBlock { get; init; }

    /// <summary>The templates with the texts of the drawing made larger; the title block and its texts stay.</summary>
    public DrawingTemplates WithTextsTimes(double factor) => this with
    {
        Texts = Texts.ToDictionary(
            t => t.Key, t => t.Key is TextRole.TitleBlock or TextRole.SheetTitle ? t.Value : t.Value with { Height = t.Value.Height * factor }),
    };

    public SheetSize? SizeNamed(string name) =>
        Sizes.FirstOrDefault(s => string.Equals(s.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}
