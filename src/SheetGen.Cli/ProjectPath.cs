using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Forms;

namespace SheetGen.Cli;

/// <summary>The project file that an argument means: a file, or a folder with one in it.</summary>
public static class ProjectPath
{
    /// <summary>The path of the file; null where a folder does not say which, and the user is told.</summary>
    public static string? Of(string argument, Screen screen)
    {
        if (!Directory.Exists(argument))
            return argument;
        string usual = Path.Combine(argument, StarterProject.FileName);
        if (File.Exists(usual))
            return usual;
        string form = Path.Combine(argument, FormSheets.FileName);
        if (File.Exists(form))
            return form;
        string[] files = [.. Directory.EnumerateFiles(argument).Where(f => Path.GetExtension(f) is ".yaml" or ".yml").Order(StringComparer.Ordinal)];
        if (files.Length == 1)
            return files[0];
        screen.Tell(files.Length == 0
            ? $"{argument} is a folder without a project file; \"sheetgen start {argument}\" writes one"
            : $"{argument} is a folder without {StarterProject.FileName}; name one of {string.Join(", ", files.Take(8).Select(Path.GetFileName))}");
        return null;
    }
}
