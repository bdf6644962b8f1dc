using SheetGen.Exchange;

namespace SheetGen.Cli;

/// <summary>
/// Files of open formats in an output folder. A folder holds one set: a build without a format removes the file that an earlier build made of it,
/// and says so; but a file under such a name in a folder without a build is someone else's, and stops the run.
/// </summary>
public static class AlsoFiles
{
    private const string MarkOfABuild = "findings.json";

    /// <summary>The files in the folder that a new set removes, in order.</summary>
    public static IReadOnlyList<string> Stale(string folder, IReadOnlyList<OutputFile> files) =>
        [.. ExchangeFormat.AllFileNames.Where(n => files.All(f => f.Name != n) && File.Exists(Path.Combine(folder, n)))];

    /// <summary>Names the files that a new set has removed, with the word that asks for each.</summary>
    public static void TellRemoved(IReadOnlyList<string> stale, Screen screen)
    {
        foreach (string name in stale)
            screen.Out.WriteLine($"  removed    {name}: made by an earlier build, not asked for now (--also {ExchangeFormat.All.First(f => f.FileNames.Contains(name)).Word})");
    }

    /// <exception cref="OutputException">A file that no build made stands under one of the names.</exception>
    public static void CheckOwn(string folder)
    {
        if (File.Exists(Path.Combine(folder, MarkOfABuild)) || Directory.Exists(Path.Combine(folder, OutputFolder.StagingName)))
            return;
        foreach (string name in ExchangeFormat.AllFileNames)
        {
            if (File.Exists(Path.Combine(folder, name)))
                throw new OutputException($"{Path.Combine(folder, name)} is not of a build of this program, which keeps that name for itself; move it away");
        }
    }
}
