using System.CommandLine;
using System.Runtime.InteropServices;
using SheetGen.Cli.Watching;
using SheetGen.ProjectFile;
using SheetGen.Review;

namespace SheetGen.Cli.Commands;

/// <summary><c>review</c>: builds the results and opens the review page; with <c>--watch</c> the open page follows each save of the project file.</summary>
public static class ReviewCommand
{
    private const string UsualFolder = "review";
    private const int MostOlder = 60_000_000;

    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var folder = new Option<string?>("--out", "-o")
        {
            Description = "Folder for all results; without it the page alone is written, into a folder \"review\" beside the project file.",
            HelpName = "DIR",
        };
        var watch = new Option<bool>("--watch")
        {
            Description = "Build again on each save; the page is served to this machine alone and follows. Nothing is written. Ends with Ctrl-C.",
        };
        var against = new Option<string?>("--against")
        {
            Description = "An older review.html or a saved review.json: its marks carry over, and the page opens with what changed since.",
            HelpName = "OLD",
        };
        var quiet = new Option<bool>("--no-open") { Description = "Do not open the page, only say where it is." };
        var review = new ExampledCommand(
            "review", "Build the results and open the page on which the wall is reviewed.",
            "sheetgen review my-wall                         look at the wall in the browser",
            "sheetgen review my-wall --watch                 edit, save, look: the page follows",
            "sheetgen review my-wall --against old.html      what changed since an older page or saved review")
        { file, folder, against, watch, quiet };
        review.SetAction(p => Run(p.GetRequiredValue(file), p.GetValue(folder), p.GetValue(against), p.GetValue(watch), !p.GetValue(quiet), screen, interruption));
        return review;
    }

    private static int Run(string argument, string? folder, string? against, bool watch, bool open, Screen screen, Interruption interruption)
    {
        try
        {
            if (watch && (folder ?? against) is not null)
                throw new OutputException("--watch writes nothing and compares nothing: leave --out and --against away");
            string? older = against is null ? null : ReadOlder(against);
            if (ProjectPath.Of(argument, screen) is not { } file)
                return ExitCode.WrongInput;
            return watch ? Watch(file, open, screen, interruption) : Write(file, folder, older is null ? null : (Path.GetFileName(against!), older), open, screen, interruption);
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }

    private static int Write(string file, string? folder, (string Name, string Text)? older, bool open, Screen screen, Interruption interruption)
    {
        string target = folder ?? Path.Combine(Path.GetDirectoryName(file) ?? "", UsualFolder);
        IReadOnlyList<string> names = folder is null ? [OutputSet.Review] : OutputSet.AllNames;
        var output = new OutputFolder(target, names);
        output.CheckPossible();
        if (folder is not null)
            AlsoFiles.CheckOwn(folder);
        if (FinishedWall.Make(file, new RunOptions(false, false, null, false) { Only = names }, screen) is not { } run)
            return ExitCode.WrongInput;
        OutputFile[] files = [.. run.Files.Select(f => f.Name == OutputSet.Review && older is { } o
            ? f with { Content = ReviewPage.Against(f.Content, o.Name, o.Text) } : f)];
        IReadOnlyList<string> stale = folder is null ? [] : AlsoFiles.Stale(folder, files);
        if (!interruption.WhileWriting(() => output.Write(files, () => interruption.Requested)))
            return ExitCode.Of(PosixSignal.SIGINT); // The signal's own handler ends the process with its code first.
        FindingScreen.PrintErrors(run.Laid.Report, screen.Out);
        int code = Ending.Print(run.Input.Project, run.Laid, target, [.. files.Select(f => f.Name)], null, screen);
        AlsoFiles.TellRemoved(stale, screen);
        if (open)
            Opening.Open(Path.Combine(target, OutputSet.Review), screen);
        return code;
    }

    private static string ReadOlder(string path)
    {
        string? text = InputFile.Read(path, MostOlder).Text(out string why);
        string? fault = text is null ? why : ReviewPage.WhyNotOlder(text);
        return fault is null ? text! : throw new OutputException($"{path} cannot be read as an older page or saved review: {fault}");
    }

    private static int Watch(string file, bool open, Screen screen, Interruption interruption)
    {
        // From here on a signal ends the watching, and that is how it ends well.
        interruption.WhileWriting(() => true);
        var wall = new WatchedWall(file);
        using var server = new WatchServer(wall);
        screen.Out.WriteLine($"watching {file}: {server.Address}");
        screen.Out.WriteLine("for this machine alone, while this runs; Ctrl-C ends it");
        screen.Out.Flush();
        wall.Build(screen);
        if (open)
            Opening.OpenAddress(server.Address, screen);
        while (!interruption.Requested)
        {
            Thread.Sleep(150);
            if (wall.HasChanged)
                wall.Build(screen);
        }
        screen.Out.WriteLine("no longer watching");
        return ExitCode.Clean;
    }
}
