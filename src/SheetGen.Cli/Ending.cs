using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Cli;

/// <summary>How a run that laid out a wall ends.</summary>
public static class Ending
{
    /// <summary>Prints the summary.</summary>
    /// <returns>The exit code that the report asks for.</returns>
    public static int Print(
        WallProject project, CheckedLayout laid, string? folder, IReadOnlyList<string> files,
        (LastBuild.Results Before, LastBuild.Results After)? last, Screen screen)
    {
        foreach (string line in Summary.Lines(project, laid.Layout, laid.Report, folder, files, last, laid.Effect))
            screen.Out.WriteLine(line);
        return CodeOf(laid.Report);
    }

    /// <summary>The exit code that a report asks for.</summary>
    public static int CodeOf(ClearanceReport report) => report.HasErrors ? ExitCode.Findings : ExitCode.Clean;
}
