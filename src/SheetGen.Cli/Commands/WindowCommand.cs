using System.CommandLine;
using SheetGen.Drawing.Review;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Revisions;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile.Tree;
using SheetGen.Writers.Json;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Picture;

namespace SheetGen.Cli.Commands;

/// <summary><c>window</c>: the room that a nail has to turn, as text, picture and page.</summary>
public static class WindowCommand
{
    private const string Pdf = "window.pdf", Svg = "window.svg";

    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var marks = new Argument<string[]>("MARK") { Description = "Marks of nails, as on the sheets.", Arity = ArgumentArity.ZeroOrMore };
        var noted = new Option<bool>("--noted") { Description = "All nails that are noted or unresolved." };
        var all = new Option<bool>("--all") { Description = "All nails: a field booklet with a page a nail." };
        var options = new ToolOptions("window.pdf (a page a nail), and of a single nail window.svg");
        var window = new ExampledCommand(
            "window", "The room that a nail has to turn: free, near and blocked directions, and by what.",
            "sheetgen window my-wall A-3-07                  as text; -o DIR also as PDF and SVG",
            "sheetgen window my-wall --all -o booklet        a field booklet, a page a nail")
        { file, marks, noted, all };
        options.AddTo(window);
        window.SetAction(p => Run(p.GetRequiredValue(file), p.GetValue(marks) ?? [], p.GetValue(noted), p.GetValue(all), options.Of(p), screen, interruption));
        return window;
    }

    private static int Run(string argument, string[] marks, bool noted, bool all, ToolRun run, Screen screen, Interruption interruption)
    {
        if (marks.Length > 0 || noted || all)
            return run.RunOn(argument, [Pdf, Svg], screen, interruption, wall => Turn(wall, marks, noted, all, run, screen));
        screen.Tell("window needs the mark of a nail, --noted or --all");
        return ExitCode.WrongInput;
    }

    private static (int, IReadOnlyList<OutputFile>) Turn(LaidWall wall, string[] marks, bool noted, bool all, ToolRun run, Screen screen)
    {
        (Input input, CheckedLayout laid, StageDisplay display) = wall;
        string[] unknown = [.. marks.Where(m => !laid.Layout.Nails.Any(n => n.Mark == m))];
        foreach (string mark in unknown)
            screen.Tell($"there is no nail {mark}" + (Suggestion.Nearest(mark, [.. laid.Layout.Nails.Select(n => n.Mark)]) is { } near ? $": did you mean {near}?" : ""));
        if (unknown.Length > 0)
            return ToolRun.Wrong;
        Nail[] nails = [.. laid.Layout.Nails.Where(n => all || marks.Contains(n.Mark) || (noted && n.Status is NailStatus.Noted or NailStatus.Unresolved))];
        display.Stage("turning nails");
        var windows = new TurnWindows(input.Project, laid.Layout);
        TurnWindow[] found = new TurnWindow[nails.Length];
        Parallel.For(0, nails.Length, i => found[i] = windows.Of(nails[i]));
        Tell(found, laid, input, run, screen);
        int code = found.Any(w => w.Now.State != TurnState.Free) ? ExitCode.Findings : ExitCode.Clean;
        if (run.Folder is null)
            return (code, []);
        display.Stage("drawing pages");
        SheetSet pages = WindowPages.Compose(found, ReviewInfo.Of(input.Project, ProgramVersion.Text, input.Named.Templates?.Language), laid.Report);
        return (code, [OutputFile.Of(Pdf, s => PdfSheetWriter.Write(pages, s)), .. nails.Length == 1 ? new[] { OutputFile.Of(Svg, s => SvgPicture.Write(pages, s)) } : []]);
    }

    private static void Tell(TurnWindow[] found, CheckedLayout laid, Input input, ToolRun run, Screen screen)
    {
        if (run.Json)
        {
            screen.Out.Write(WindowJson.Text(found, input.Project.Unit));
            return;
        }
        foreach (TurnWindow window in found)
        {
            foreach (string line in WindowPages.Lines(window, laid.Report.Nails.GetValueOrDefault(window.Nail.Mark), input.Project.Unit))
                screen.Out.WriteLine(line);
            foreach (string line in found.Length == 1 ? WindowPages.Map(window) : [])
                screen.Out.WriteLine(line);
            if (found.Length > 1)
                screen.Out.WriteLine();
        }
        if (found.Length == 0)
            screen.Out.WriteLine("no nail is noted or unresolved");
    }
}
