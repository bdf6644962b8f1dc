using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Writers.Json;

namespace SheetGen.Cli;

/// <summary>What each command does, from its arguments to its exit code.</summary>
public static class Runs
{
    /// <summary>Lays out the wall and writes all results into the folder, or nothing.</summary>
    public static int Build(string file, string folder, bool prove, bool json, Screen screen)
    {
        using var interruption = new Interruption();
        var output = new OutputFolder(folder, OutputSet.Names);
        try
        {
            output.CheckPossible();
            var display = new StageDisplay(screen.Live);
            ReadResult read = ProjectReader.Read(file);
            ProblemScreen.Print(read, json, screen);
            if (read.Project is not { } project)
                return ExitCode.WrongInput;
            (PassResult pass, IReadOnlyList<OutputFile> files) = display.While(() =>
            {
                PassResult laidOut = OnePass.LayOut(project, prove, display);
                return OutputSet.Make(project, laidOut, display);
            });
            if (!interruption.WhileWriting(() => output.Write(files, () => interruption.Requested)))
                return ExitCode.Interrupted;
            FindingScreen.PrintErrors(pass.Report, screen.Out);
            return Finish(project, pass, folder, [.. files.Select(f => f.Name)], screen);
        }
        catch (OutputException e)
        {
            screen.Error.WriteLine("sheetgen: " + e.Message);
            return ExitCode.WrongInput;
        }
    }

    /// <summary>Lays out the wall and prints the findings.</summary>
    public static int Check(string file, bool prove, bool json, Screen screen)
    {
        var display = new StageDisplay(screen.Live);
        ReadResult read = ProjectReader.Read(file);
        ProblemScreen.Print(read, json, screen);
        if (read.Project is not { } project)
            return ExitCode.WrongInput;
        PassResult pass = display.While(() => OnePass.LayOut(project, prove, display));
        if (!json)
        {
            FindingScreen.PrintAll(pass.Report, screen.Out);
            return Finish(project, pass, null, [], screen);
        }
        using var stream = new MemoryStream();
        FindingsJson.Write(project, pass.Layout, pass.Report, stream);
        screen.Out.Write(System.Text.Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
        return CodeOf(pass.Report);
    }

    /// <summary>Writes a commented project file.</summary>
    public static int Start(string folder, Screen screen)
    {
        string path = Path.Combine(folder, "wall.yaml");
        try
        {
            Directory.CreateDirectory(folder);
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
            stream.Write(System.Text.Encoding.UTF8.GetBytes(StarterProject.Text));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string reason = File.Exists(path) ? "it is there already, and start never overwrites" : e.Message;
            screen.Error.WriteLine($"sheetgen: cannot write {path}: {reason}");
            return ExitCode.WrongInput;
        }
        screen.Out.WriteLine($"wrote {path}");
        screen.Out.WriteLine($"next: sheetgen build {path} --out {Path.Combine(folder, "sheets")}");
        return ExitCode.Clean;
    }

    private static int Finish(
        Model.WallProject project, PassResult pass, string? folder, IReadOnlyList<string> files, Screen screen)
    {
        foreach (string line in Summary.Lines(project, pass.Layout, pass.Report, folder, files))
            screen.Out.WriteLine(line);
        return CodeOf(pass.Report);
    }

    private static int CodeOf(ClearanceReport report) => report.HasErrors ? ExitCode.Findings : ExitCode.Clean;
}
