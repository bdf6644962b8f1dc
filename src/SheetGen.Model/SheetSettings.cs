namespace SheetGen.Model;

/// <summary>What the project file says of its sheets; null where the program chooses the largest that fits.</summary>
public sealed record SheetSettings
{
    /// <summary>Standard size, such as "ANSI D", "ARCH D", "ISO A1".</summary>
    public string? Size { get; init; }

    /// <summary>Feet on the ground per inch of paper, or the ratio (100 for 1:100) in metres.</summary>
    public double? Scale { get; init; }

    public string Revision { get; init; } = "";

    /// <summary>Date printed in the title block, as given; empty where not given.</summary>
    public string Date { get; init; } = "";

    /// <summary>True where the elevation is drawn as seen from behind the wall.</summary>
    public bool FromBehind { get; init; }

    /// <summary>True where sheets are issued at half size: lettering is then so large that it stays readable there.</summary>
    public bool IsForHalfSize { get; init; }

    /// <summary>Path of the user's own title block drawing, relative to the project file; null for the program's.</summary>
    public string? TitleBlock { get; init; }

    /// <summary>Name of the layer list in templates, or a file; null for the default.</summary>
    public string? Layers { get; init; }

    /// <summary>Name of the note set in templates, or a file; null for the default.</summary>
    public string? Notes { get; init; }

    /// <summary>Name of a language in templates/text, or a file; null for English.</summary>
    public string? Language { get; init; }

    /// <summary>What the sheets call a section of a wall's design, so that SECTION is left to the cuts; null for the language's own word.</summary>
    public string? SectionWord { get; init; }

    /// <summary>Number of the first sheet, where this set is part of a larger one that is numbered through.</summary>
    public int FirstNumber { get; init; } = 1;

    /// <summary>Revision table rows as given: number, date, text.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Revisions { get; init; } = [];
}
