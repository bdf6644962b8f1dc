using System.Runtime.InteropServices;
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
    public static int Build(string argument, string folder, RunOptions options, Screen screen, Interruption interruption)
    {
        try
        {
            var output = new OutputFolder(folder, OutputSet.Names);
            output.CheckPossible();
            if (LaidOutAndDrawn(argument, options, screen) is not { } run)
                return ExitCode.WrongInput;
            LastBuild.Results? last = LastBuild.Read(folder);
            if (!interruption.WhileWriting(() => output.Write(run.Files, () => interruption.Requested)))
                return ExitCode.Of(PosixSignal.SIGINT); // The signal's own handler ends the process with its code first.
            if (options.Picture is { } picture)
                PictureFile.Write(picture, run.Sheets);
            FindingScreen.PrintErrors(run.Laid.Report, screen.Out);
            int code = Finish(run.Project, run.Laid, folder, [.. run.Files.Select(f => f.Name)], last is null ? null : (last, LastBuild.Of(run.Files)), screen);
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
            // The files are made as for a build, so that nothing shows there that did not show here.
            if (LaidOutAndDrawn(argument, options, screen) is not { } run)
                return ExitCode.WrongInput;
            if (options.Picture is { } picture)
            {
                PictureFile.Write(picture, run.Sheets);
                if (options.Open)
                    Opening.Open(picture, screen);
            }
            if (!options.Json)
            {
                FindingScreen.PrintAll(run.Laid.Report, screen.Out);
                return Finish(run.Project, run.Laid, null, [], null, screen);
            }
            using var stream = new MemoryStream();
            FindingsJson.Write(run.Project, run.Laid.Layout, run.Laid.Report, stream);
            screen.Out.Write(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
            return CodeOf(run.Laid.Report);
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

    /// <summary>Everything short of writing; null where the input is wrong, which is printed.</summary>
    private static Drawn? LaidOutAndDrawn(string argument, RunOptions options, Screen screen)
    {
        if (options.Picture is { } picture && PictureFile.Fault(picture) is { } fault)
            throw new OutputException(fault);
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, options.Json, screen) is not { } input)
            return null;
        var display = new StageDisplay(screen, options.Json);
        return display.While(() =>
        {
            if (OnePass.Measure(input, OnePass.LayOut(input.Project, options.Prove, display), options.Json, display, screen) is not { } measured)
                return null;
            (CheckedLayout laid, SheetSet sheets, IReadOnlyList<OutputFile> files) = OutputSet.Make(input, measured, display);
            return new Drawn(input.Project, laid, sheets, files);
        });
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

    /// <summary>A wall laid out, drawn and made into files.</summary>
    private sealed record Drawn(WallProject Project, CheckedLayout Laid, SheetSet Sheets, IReadOnlyList<OutputFile> Files);

    private static int CodeOf(ClearanceReport report) => report.HasErrors ? ExitCode.Findings : ExitCode.Clean;
}
