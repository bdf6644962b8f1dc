using SheetGen.ProjectFile.Keys;
using static SheetGen.ProjectFile.Keys.KeyForms;

namespace SheetGen.ProjectFile.Corridors;

/// <summary>The keys of a corridor's list, a file of its own.</summary>
internal static class CorridorKeys
{
    public static Key Root { get; } = Map("corridor list", "Walls that are built together, each from a project file of its own.",
    [
        Integer("format", "Format of the file.", new ValueRange(1, true, 1), "1") with { Required = true },
        Text("title", "Title of the register.", "Cedar Creek corridor, contract 3") with { Required = true },
        .. Shared("left out of a wall: this"),
        List("walls", "The project files, in the order of the register.", 1, Map("wall of the list", "A project file.",
        [
            Text("file", "Project file, or a folder with a wall.yaml; the path starts from the list's folder.", "walls/ramp-a.yaml") with { Required = true },
            Text("name", "Name in the register and of the folder of its set; left out: the name of the file.", "Ramp A"),
            .. Shared("left out: that of the list"),
        ])) with
        { Required = true },
    ]);

    private static Key[] Shared(string otherwise) =>
    [
        Text("stage", $"Construction stage, by which the register sums; {otherwise}.", "2"),
        Text("contract", $"Contract, by which the register sums; {otherwise}.", "C-3"),
        Text("coordinates", $"Name of the coordinate system: walls of one system are checked against each other; {otherwise}.", "project grid"),
        Flag("prove", $"Whether the proof of how good the layout is, is tightened; {otherwise}.", "true"),
    ];
}
