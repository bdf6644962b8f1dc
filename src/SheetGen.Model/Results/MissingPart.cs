namespace SheetGen.Model.Results;

/// <summary>Something that a quantity lacks, or was not asked to have, and where.</summary>
/// <param name="Wall">The wall that lacks it; null where it is a value of the whole project.</param>
/// <param name="Section">The section that lacks it; null where the whole wall does.</param>
/// <param name="What">What is lacking, such as "shotcrete thickness".</param>
/// <param name="Key">Where the project file would give it, such as "facing: shotcrete".</param>
public sealed record MissingPart(Wall? Wall, Section? Section, string What, string Key)
{
    /// <summary>"wall South", "wall North, section B"; empty for the whole project.</summary>
    public string Place => Wall is null ? "" : Named(Wall.Name) + (Section is null ? "" : $", section {Section.Name}");

    /// <summary>A wall that is called Wall 1 says itself what it is; those so called in another language, that language knows.</summary>
    private static string Named(string wall) => wall.StartsWith("wall ", StringComparison.OrdinalIgnoreCase) ? wall : "wall " + wall;

    /// <summary>The parts in words, those of one kind together: "no shotcrete thickness (facing: shotcrete): wall South".</summary>
    public static string InWords(IEnumerable<MissingPart> parts) => string.Join("; ", parts.GroupBy(p => (p.What, p.Key)).Select(group =>
    {
        string where = string.Join(", ", group.Select(p => p.Place).Where(p => p.Length > 0).Distinct());
        return $"no {group.Key.What} ({group.Key.Key})" + (where.Length > 0 ? ": " + where : "");
    }));
}
