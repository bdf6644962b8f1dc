using System.Text;
using SheetGen.Drawing.Sheets;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Writers.Json;

namespace SheetGen.Cli;

/// <summary>What each command does, from its arguments to its exit code.</summary>
public static class Runs
{
    /// <summary>Lays out the wall and writes all results into the folder, or nothing.</summary>
    public static int Build(string argument, string folder, RunOptions options, Screen screen)
    {
        using var interruption = new Interruption();
        var output = new OutputFolder(folder, OutputSet.Names);
        try
        {
            output.CheckPossible();
            if (Measured(argument, options, screen) is not { } run)
                return ExitCode.WrongInput;
            (CheckedLayout laid, SheetSet sheets, IReadOnlyList<OutputFile> files) = run.Display.While(() => OutputSet.Make(run.Input, run.Measured, run.Display));
            LastBuild.Results? last = LastBuild.Read(folder);
            if (!interruption.WhileWriting(() => output.Write(files, () => interruption.Requested)))
                return ExitCode.Interrupted;
            if (options.Picture is { } picture)
                PictureFile.Write(picture, sheets);
            FindingScreen.PrintErrors(laid.Report, screen.Out);
            int code = Finish(run.Input.Project, laid, folder, [.. files.Select(f => f.Name)], last is null ? null : (last, LastBuild.Of(files)), screen);
            if (options.Open)
                Opening.Open(options.Picture ?? Path.Combine(folder, OutputSet.ToOpen), screen);
            return code;
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }

    /// <summary>Lays out the wall and prints the findings.</summary>
    public static int Check(string argument, RunOptions options, Screen screen)
    {
        try
        {
            if (options.Open && options.Picture is null)
                throw new OutputException("check writes no files: --open needs --picture");
            if (Measured(argument, options, screen) is not { } run)
                return ExitCode.WrongInput;
            CheckedLayout laid = run.Measured.Laid;
            if (options.Picture is { } picture)
            {
                PictureFile.Write(picture, run.Display.While(() => OutputSet.Compose(run.Input, run.Measured, run.Display)));
                if (options.Open)
                    Opening.Open(picture, screen);
            }
            if (!options.Json)
            {
                FindingScreen.PrintAll(laid.Report, screen.Out);
                return Finish(run.Input.Project, laid, null, [], null, screen);
            }
            using var stream = new MemoryStream();
            FindingsJson.Write(run.Input.Project, laid.Layout, laid.Report, stream);
            screen.Out.Write(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
            return CodeOf(laid.Report);
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }

    /// <summary>Writes a commented project file, and beside it the schema that it names, for completion in an editor.</summary>
    public static int Start(string folder, string kind, Screen screen)
    {
        string path = Path.Combine(folder, StarterProject.FileName), schema = Path.Combine(folder, StarterProject.SchemaName);
        try
        {
            Directory.CreateDirectory(folder);
            WriteNew(path, StarterProject.TextOf(kind));
            if (!File.Exists(schema))
                WriteNew(schema, StarterProject.Schema);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string reason = File.Exists(path) ? "it is there already, and start never overwrites" : e.Message;
            screen.Tell($"cannot write {path}: {reason}");
            return ExitCode.WrongInput;
        }
        screen.Out.WriteLine($"wrote {path}");
        screen.Out.WriteLine($"next: sheetgen check {path}");
        screen.Out.WriteLine($"then: sheetgen build {path} --out {Path.Combine(folder, "sheets")}");
        return ExitCode.Clean;
    }

    /// <summary>Reads, lays out and measures; null where the input is wrong, which is printed.</summary>
    private static (Input Input, MeasuredLayout Measured, StageDisplay Display)? Measured(string argument, RunOptions options, Screen screen)
    {
        if (options.Picture is { } picture && PictureFile.Fault(picture) is { } fault)
            throw new OutputException(fault);
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, options.Json, screen) is not { } input)
            return null;
        var display = new StageDisplay(screen);
        return display.While(() => OnePass.Measure(input, OnePass.LayOut(input.Project, options.Prove, display), options.Json, display, screen)) is { } measured
            ? (input, measured, display)
            : null;
    }

    private static void WriteNew(string path, string text)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private static int Finish(
        WallProject project, CheckedLayout laid, string? folder, IReadOnlyList<string> files,
        (LastBuild.Results Before, LastBuild.Results After)? last, Screen screen)
    {
        foreach (string line in Summary.Lines(project, laid.Layout, laid.Report, folder, files, last))
            screen.Out.WriteLine(line);
        return CodeOf(laid.Report);
    }

    private static int CodeOf(ClearanceReport report) => report.HasErrors ? ExitCode.Findings : ExitCode.Clean;
}
