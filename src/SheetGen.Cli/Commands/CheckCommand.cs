using System.CommandLine;
using System.Text;

namespace SheetGen.Cli.Commands;

/// <summary><c>check</c>: lays out the wall and prints the findings.</summary>
public static class CheckCommand
{
    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var options = new LayoutOptions();
        var check = new ExampledCommand(
            "check", "Lay out the wall and print the findings; write nothing.",
            "sheetgen check my-wall                          findings only, writes nothing (uses my-wall/wall.yaml)",
            "sheetgen check my-wall --picture wall.svg       and a picture of plan and elevation")
        { file };
        options.AddTo(check);
        check.SetAction(p => Run(p.GetRequiredValue(file), options.Of(p), screen, interruption));
        return check;
    }

    private static int Run(string argument, RunOptions options, Screen screen, Interruption interruption)
    {
        try
        {
            if (options.Open && options.Picture is null)
                throw new OutputException("check writes no files: --open needs --picture");
            // The sheets are composed as for a build, so that nothing shows there that did not show here; no file is made but the one to print.
            if (FinishedWall.Make(argument, options with { Only = options.Json ? [OutputSet.Findings] : [] }, screen) is not { } run)
                return ExitCode.WrongInput;
            if (options.Picture is { } picture)
            {
                interruption.WhileWriting(() =>
                {
                    PictureFile.Write(picture, run.Sheets);
                    return true;
                });
                if (options.Open)
                    Opening.Open(picture, screen);
            }
            if (!options.Json)
            {
                FindingScreen.PrintAll(run.Laid.Report, screen.Out);
                return Ending.Print(run.Input.Project, run.Laid, null, [], null, screen);
            }
            screen.Out.Write(Encoding.UTF8.GetString(run.Files.Single(f => f.Name == OutputSet.Findings).Content));
            return Ending.CodeOf(run.Laid.Report);
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }
}
