using SheetGen.ProjectFile.Keys;
using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Studies;

/// <summary>The keys of a study, a file of its own; the names under <c>vary</c> are keys of the project file.</summary>
internal static class StudyKeys
{
    public const string Vary = "vary";

    /// <summary>Everything but <see cref="Vary"/>.</summary>
    public static Key Root { get; } = Map("study", "Variants of one project file that are laid out and measured.",
        Integer("format", "Format of the file.", new ValueRange(1, true, 1), "1") with { Required = true },
        Text("title", "Title of the study.", "Spacing and inclination of ramp A") with { Required = true },
        Text("wall", "Wall whose keys are varied; left out: all walls.", "Wall 1"),
        Text("section", "Section whose keys are varied; left out: all sections.", "A"),
        Flag("prove", "Whether each layout's proof is tightened.", "true") with { Default = "false" });
}
