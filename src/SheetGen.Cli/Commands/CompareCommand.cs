using System.CommandLine;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile.Records;
using SheetGen.Writers.Json;

namespace SheetGen.Cli.Commands;

/// <summary><c>compare</c>: what changed between two project files, nail tables or result folders.</summary>
public static class CompareCommand
{
    private const string Nails = "nails.csv";

    public static Command Make(Screen screen, Interruption interruption)
    {
        const string What = "a project file or its folder, a nails.csv, or the folder of a build";
        var old = new Argument<string>("OLD") { Description = $"The state before: {What}." };
        var @new = new Argument<string>("NEW") { Description = $"The state after: {What}." };
        var options = new ToolOptions("changes.xlsx and changes.pdf (clouded elevations, revision table)");
        var compare = new ExampledCommand(
            "compare", "Old against new: nails, findings, quantities and bid items that are not the same.",
            "sheetgen compare issued/nails.csv sheets        two results: what changed since the set was issued",
            "sheetgen compare old.yaml new.yaml -o addendum  two project files; changes.xlsx and changes.pdf for the addendum")
        { old, @new };
        options.AddTo(compare);
        compare.SetAction(p => Run(p.GetRequiredValue(old), p.GetRequiredValue(@new), options.Of(p), screen, interruption));
        return compare;
    }

    private static int Run(string old, string @new, ToolRun run, Screen screen, Interruption interruption) => run.Run(RevisionFiles.Names, screen, interruption, () =>
    {
        var display = new StageDisplay(screen, run.Json);
        return display.While(() =>
        {
            // Both are read, so that all faults of both are told in one run.
            (RevisionState State, WallProject? Project)? before = Read(old, run, display, screen), after = Read(@new, run, display, screen);
            if (before is not { } a || after is not { } b)
                return ToolRun.Wrong;
            RevisionDifference difference = Comparison.Of(a.State, b.State);
            if (run.Json)
                screen.Out.Write(RevisionJson.Text(difference));
            else
            {
                foreach (string line in RevisionScreen.Lines(difference))
                    screen.Out.WriteLine(line);
            }
            int code = RevisionScreen.HasNewErrors(difference) ? ExitCode.Findings : ExitCode.Clean;
            return (code, run.Folder is null ? [] : RevisionFiles.Make(difference, b.Project));
        });
    });

    /// <summary>A state by what its argument names; null where that is wrong, which is printed.</summary>
    private static (RevisionState, WallProject?)? Read(string argument, ToolRun run, StageDisplay display, Screen screen)
    {
        string table = Path.Combine(argument, Nails);
        bool isTable = argument.EndsWith(".csv", StringComparison.OrdinalIgnoreCase);
        if (isTable || (Directory.Exists(argument) && File.Exists(table)))
        {
            var problems = new List<Problem>();
            RevisionState? results = ResultFolder.Read(isTable ? argument : table, argument, isTable, problems);
            ProblemScreen.Print(problems, run.Json, screen);
            return results is null ? null : (results, null);
        }
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, run.Json, screen) is not { } input
            || OnePass.Measure(input, OnePass.LayOut(input.Project, false, display), run.Json, display, screen) is not { } measured)
            return null;
        return (StateOf.Layout(argument, input.Project, measured.Laid.Layout, OutputSet.WithSheets(measured.Laid.Report, OutputSet.Compose(input, measured)), measured.Quantities, measured.Bid), input.Project);
    }
}
