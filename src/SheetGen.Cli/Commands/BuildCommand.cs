using System.CommandLine;
using System.Runtime.InteropServices;

namespace SheetGen.Cli.Commands;

/// <summary><c>build</c>: lays out the wall and writes all results into a folder, or nothing.</summary>
public static class BuildCommand
{
    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var options = new LayoutOptions();
        var folder = new Option<string>("--out", "-o")
        {
            Description = "Folder for the results; made where it is missing. Only files of this program's own names are replaced in it.",
            HelpName = "DIR",
            Required = true,
        };
        folder.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && result.Tokens[0].Value.Length == 0)
                result.AddError("Option '--out' needs the name of a folder.");
        });
        var build = new ExampledCommand(
            "build", "Lay out the wall and write sheets, workbook, nails and findings, all or nothing.",
            "sheetgen build my-wall/wall.yaml --out sheets   sheets, workbook, nails and findings",
            "sheetgen build my-wall/wall.yaml -o sheets --open",
            "sheetgen build my-wall -o sheets --also ifc,bcf   and open formats: " + AlsoOption.Words)
        { file, folder };
        var also = new AlsoOption();
        options.AddTo(build);
        build.Options.Add(also.Option);
        build.SetAction(p => Run(p.GetRequiredValue(file), p.GetRequiredValue(folder), options.Of(p) with { Also = also.Of(p) }, screen, interruption));
        return build;
    }

    private static int Run(string argument, string folder, RunOptions options, Screen screen, Interruption interruption)
    {
        try
        {
            var output = new OutputFolder(folder, OutputSet.AllNames);
            output.CheckPossible();
            AlsoFiles.CheckOwn(folder);
            if (FinishedWall.Make(argument, options, screen) is not { } run)
                return ExitCode.WrongInput;
            LastBuild.Results? last = LastBuild.Read(folder);
            IReadOnlyList<string> stale = AlsoFiles.Stale(folder, run.Files);
            if (!interruption.WhileWriting(() => output.Write(run.Files, () => interruption.Requested)))
                return ExitCode.Of(PosixSignal.SIGINT); // The signal's own handler ends the process with its code first.
            if (options.Picture is { } picture)
                PictureFile.Write(picture, run.Sheets);
            FindingScreen.PrintErrors(run.Laid.Report, screen.Out);
            int code = Ending.Print(run.Input.Project, run.Laid, folder, [.. run.Files.Select(f => f.Name)], last is null ? null : (last, LastBuild.Of(run.Files)), screen);
            AlsoFiles.TellRemoved(stale, screen);
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
}
