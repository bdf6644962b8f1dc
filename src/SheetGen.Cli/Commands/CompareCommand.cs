using System.CommandLine;
using System.Text;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Records;
using SheetGen.Review;
using SheetGen.Writers.Json;

namespace SheetGen.Cli.Commands;

/// <summary><c>compare</c>: what changed between two project files, nail tables or result folders.</summary>
public static class CompareCommand
{
    private const string Nails = "nails.csv";

    private static IReadOnlyList<string> Names { get; } = [.. RevisionFiles.Names, OutputSet.Review];

    public static Command Make(Screen screen, Interruption interruption)
    {
        const string What = "a project file or its folder, a nails.csv, or the folder of a build";
        var old = new Argument<string>("OLD") { Description = $"The state before: {What}." };
        var @new = new Argument<string>("NEW") { Description = $"The state after: {What}." };
        var options = new ToolOptions("changes.xlsx, changes.pdf (clouded elevations, revision table) and review.html (old and new on one page)");
        var compare = new ExampledCommand(
            "compare", "Old against new: nails, findings, quantities and bid items that are not the same.",
            "sheetgen compare issued/nails.csv sheets        two results: what changed since the set was issued",
            "sheetgen compare old.yaml new.yaml -o addendum  two project files; changes.xlsx, changes.pdf and the page")
        { old, @new };
        options.AddTo(compare);
        compare.SetAction(p => Run(p.GetRequiredValue(old), p.GetRequiredValue(@new), options.Of(p), screen, interruption));
        return compare;
    }

    private static int Run(string old, string @new, ToolRun run, Screen screen, Interruption interruption) => run.Run(Names, screen, interruption, () =>
    {
        var display = new StageDisplay(screen, run.Json);
        return display.While(() =>
        {
            // Both are read, so that all faults of both are told in one run.
            Side? before = Read(old, run, display, screen), after = Read(@new, run, display, screen);
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
            return (code, run.Folder is null ? [] : [.. RevisionFiles.Make(difference, b.Project, b.Language), .. Page(a, b, screen)]);
        });
    });

    /// <summary>The new state's review page with the old one in it; none where either has no page, which is said.</summary>
    private static IEnumerable<OutputFile> Page(Side old, Side @new, Screen screen)
    {
        string[] without = [.. new[] { old, @new }.Where(s => s.Page is null).Select(s => s.State.Name).Distinct()];
        if (without.Length == 0)
            return [new OutputFile(OutputSet.Review, ReviewPage.Against(@new.Page, old.State.Name, Encoding.UTF8.GetString(old.Page!)))];
        screen.Tell($"{OutputSet.Review} is not written: {string.Join(" and ", without)} {(without.Length == 1 ? "has" : "have")} no review page (name a project file, or the folder of a build)");
        return [];
    }

    /// <summary>A state by what its argument names; null where that is wrong, which is printed.</summary>
    private static Side? Read(string argument, ToolRun run, StageDisplay display, Screen screen)
    {
        string table = Path.Combine(argument, Nails);
        bool isTable = argument.EndsWith(".csv", StringComparison.OrdinalIgnoreCase);
        if (isTable || (Directory.Exists(argument) && File.Exists(table)))
        {
            var problems = new List<Problem>();
            RevisionState? results = ResultFolder.Read(isTable ? argument : table, argument, isTable, problems);
            ProblemScreen.Print(problems, run.Json, screen);
            byte[]? page = isTable ? null : InputFile.Read(Path.Combine(argument, OutputSet.Review), InputFile.MostDrawing).Bytes;
            return results is null ? null : new Side(results, null, null, ReviewPage.IsPage(page) ? page : null);
        }
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, run.Json, screen) is not { } input
            || OnePass.Measure(input, OnePass.LayOut(input.Project, false, display), run.Json, display, screen) is not { } measured)
            return null;
        MeasuredLayout told = measured with { Laid = measured.Laid with { Report = OutputSet.WithSheets(measured.Laid.Report, OutputSet.Compose(input, measured), input) } };
        return new Side(
            RevisionState.Of(argument, input.Project, told.Laid.Layout, told.Laid.Report, measured.Quantities, measured.Bid), input.Project, input.Named.Templates?.Language,
            run.Folder is null ? null : OutputSet.PageOf(input.Project, told, OutputSet.FindingsOf(input.Project, told)));
    }

    /// <param name="Project">Null where only results are known.</param>
    /// <param name="Language">That of its sheets; null where only results are known.</param>
    /// <param name="Page">Its review page; null where it has none or nothing is written.</param>
    private sealed record Side(RevisionState State, WallProject? Project, Language? Language, byte[]? Page);
}
