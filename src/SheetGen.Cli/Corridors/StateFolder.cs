using System.Security.Cryptography;
using SheetGen.Model.Corridors;
using SheetGen.ProjectFile;
using SheetGen.Writers.Register;

namespace SheetGen.Cli.Corridors;

/// <summary>The folder of a corridor's results: <c>walls/NAME</c> with each set, <c>state/NAME.json</c> with what is kept of it, and the register.</summary>
internal sealed class StateFolder(string folder, Corridor corridor)
{
    private const string Sets = "walls", States = "state";

    public string Root => folder;

    public string SetOf(CorridorWall wall) => Path.Combine(folder, Sets, wall.Name);

    public string StateOf(CorridorWall wall) => Path.Combine(folder, States, wall.Name + ".json");

    /// <summary>A path as it is kept: from the list's folder, the same wherever the program was started.</summary>
    public string Shown(string path) =>
        Path.GetRelativePath(Path.GetFullPath(corridor.Folder.Length == 0 ? "." : corridor.Folder), Path.GetFullPath(path)).Replace('\\', '/');

    public WallState? Read(CorridorWall wall) => InputFile.Read(StateOf(wall), InputFile.MostText).Bytes is { } bytes ? CorridorJson.State(bytes) : null;

    /// <summary>Keeps a state.</summary>
    /// <exception cref="OutputException">The folder cannot be written.</exception>
    public void Keep(CorridorWall wall, WallState state) => WriteWhole(StateOf(wall), CorridorJson.Bytes(state));

    /// <summary>Writes a file beside its name and renames it, so that a reader sees a whole one.</summary>
    /// <exception cref="OutputException">It cannot be written.</exception>
    public static void WriteWhole(string path, byte[] bytes)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new OutputException($"cannot write {path}: {e.Message}");
        }
        WholeFile.Replace(path, bytes);
    }

    public static FileHash HashOf(string name, byte[] bytes) => new(name, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)));

    public static string OptionsOf(CorridorWall wall) => wall.Prove ? "prove" : "";

    /// <summary>True where a set stands for the input, the program and the options as they are now.</summary>
    /// <param name="wholly">True to compare the files of the set by content too, and not by size alone.</param>
    public bool IsCurrent(CorridorWall wall, WallState state, bool wholly) =>
        state.Outcome == WallOutcome.Built && state.Program == ProgramVersion.Code && state.Options == OptionsOf(wall)
        && state.Inputs.Any(i => i.Name == Shown(ProjectOf(wall)))
        && state.Inputs.All(i => IsSame(Path.Combine(corridor.Folder, i.Name), i))
        && state.Files.All(f => Path.Combine(SetOf(wall), f.Name) is var path && (wholly ? IsSame(path, f) : new FileInfo(path) is { Exists: true } info && info.Length == f.Bytes));

    /// <summary>The project file that an entry means.</summary>
    public static string ProjectOf(CorridorWall wall) =>
        Directory.Exists(wall.File) && Path.Combine(wall.File, StarterProject.FileName) is var usual && File.Exists(usual) ? usual : wall.File;

    private static bool IsSame(string path, FileHash kept) =>
        new FileInfo(path) is { Exists: true } info && info.Length == kept.Bytes && InputFile.Read(path, kept.Bytes).Bytes is { } bytes && HashOf(kept.Name, bytes) == kept;
}
