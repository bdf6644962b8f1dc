using System.Runtime.InteropServices;
using System.Text;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Writers.Json;

namespace SheetGen.Cli;

/// <summary>What each command does, from its arguments to its exit code.</summary>
public static class Runs
{
    /// <summary>Lays out the wall and writes all results into the folder, or nothing.</summary>
    public static int Build(string file, string folder, bool prove, bool json, Screen screen, Interruption interruption)
    {
        try
        {
            var output = new OutputFolder(folder, OutputSet.Names);
            output.CheckPossible();
            if (OnePass.Read(file, json, screen) is not { } input)
                return ExitCode.WrongInput;
            var display = new StageDisplay(screen, json);
            (CheckedLayout laid, IReadOnlyList<OutputFile> files) = LayOutAndDraw(input, prove, json, display, screen);
            if (laid is null)
                return ExitCode.WrongInput;
            if (!interruption.WhileWriting(() => output.Write(files, () => interruption.Requested)))
                return ExitCode.Of(PosixSignal.SIGINT); // The signal's own handler ends the process with its code first.
            FindingScreen.PrintErrors(laid.Report, screen.Out);
            return Finish(input.Project, laid, folder, [.. files.Select(f => f.Name)], screen);
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }

    /// <summary>Lays out the wall and prints the findings.</summary>
    public static int Check(string file, bool prove, bool json, Screen screen)
    {
        if (OnePass.Read(file, json, screen) is not { } input)
            return ExitCode.WrongInput;
        var display = new StageDisplay(screen, json);
        // The files are made as for a build, so that nothing shows there that did not show here.
        (CheckedLayout laid, _) = LayOutAndDraw(input, prove, json, display, screen);
        if (laid is null)
            return ExitCode.WrongInput;
        if (!json)
        {
            FindingScreen.PrintAll(laid.Report, screen.Out);
            return Finish(input.Project, laid, null, [], screen);
        }
        using var stream = new MemoryStream();
        FindingsJson.Write(input.Project, laid.Layout, laid.Report, stream);
        screen.Out.Write(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
        return CodeOf(laid.Report);
    }

    /// <summary>Writes a commented project file.</summary>
    public static int Start(string folder, Screen screen)
    {
        string path = Path.Combine(folder, StarterProject.FileName);
        try
        {
            Directory.CreateDirectory(folder);
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
            stream.Write(Encoding.UTF8.GetBytes(StarterProject.Text));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string reason = File.Exists(path) ? "it is there already, and start never overwrites" : e.Message;
            screen.Tell($"cannot write {path}: {reason}");
            return ExitCode.WrongInput;
        }
        screen.Out.WriteLine($"wrote {path}");
        screen.Out.WriteLine($"next: sheetgen build {path} --out {Path.Combine(folder, "sheets")}");
        return ExitCode.Clean;
    }

    /// <summary>Everything short of writing; the layout is null where problems were printed.</summary>
    private static (CheckedLayout Laid, IReadOnlyList<OutputFile> Files) LayOutAndDraw(Input input, bool prove, bool json, StageDisplay display, Screen screen) =>
        display.While(() => OnePass.Measure(input, OnePass.LayOut(input.Project, prove, display), json, display, screen) is { } measured
            ? OutputSet.Make(input, measured, display)
            : (null!, []));

    private static int Finish(
        WallProject project, CheckedLayout laid, string? folder, IReadOnlyList<string> files, Screen screen)
    {
        foreach (string line in Summary.Lines(project, laid.Layout, laid.Report, folder, files))
            screen.Out.WriteLine(line);
        return CodeOf(laid.Report);
    }

    private static int CodeOf(ClearanceReport report) => report.HasErrors ? ExitCode.Findings : ExitCode.Clean;
}
