using System.CommandLine;
using System.Text;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Revisions;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.ProjectFile;
using SheetGen.Writers.Dxf.Edited;
using SheetGen.Writers.Json;

namespace SheetGen.Cli.Commands;

/// <summary><c>recheck</c>: reads an edited drawing back, says what changed nail by nail, and checks and measures what stands there now.</summary>
public static class RecheckCommand
{
    private const string Copy = "edited.yaml";

    private static IReadOnlyList<string> Names { get; } = [.. OutputSet.AllNames, Copy, .. RevisionFiles.Names];

    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var drawing = new Argument<string>("DRAWING") { Description = "sheets.dxf or plan.dxf of this project, edited and saved by any program (DXF R12 to R2018, text or binary). It is never written to." };
        var options = new ToolOptions("the new set, the changes as workbook and PDF, and edited.yaml, a copy of the project file with the changed nails fixed");
        var recheck = new ExampledCommand(
            "recheck", "Read an edited drawing back: what changed nail by nail, checked and measured anew.",
            "sheetgen recheck my-wall sheets/sheets.dxf      what was moved, turned, added or deleted, and what that does",
            "sheetgen recheck my-wall edited.dxf -o revised  and a new set that agrees with the drawing")
        { file, drawing };
        options.AddTo(recheck);
        recheck.SetAction(p => Run(p.GetRequiredValue(file), p.GetRequiredValue(drawing), options.Of(p), screen, interruption));
        return recheck;
    }

    private static int Run(string argument, string drawing, ToolRun run, Screen screen, Interruption interruption) => run.Run(Names, screen, interruption, () =>
    {
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, run.Json, screen) is not { } input)
            return ToolRun.Wrong;
        InputFile bytes = InputFile.Read(drawing, InputFile.MostDrawing);
        if (bytes.Bytes is null)
        {
            Tell(new Problem(Severity.Error, "D01", "the drawing cannot be read: " + bytes.Why, new SourceSpot(drawing, 1, 1), "name a DXF file"), run, screen);
            return ToolRun.Wrong;
        }
        var display = new StageDisplay(screen, run.Json);
        return display.While(() => Recheck(file, input, drawing, bytes.Bytes, run, display, screen));
    });

    private static (int, IReadOnlyList<OutputFile>) Recheck(string file, Input input, string drawing, byte[] bytes, ToolRun run, StageDisplay display, Screen screen)
    {
        if (OnePass.Measure(input, OnePass.LayOut(input.Project, false, display), run.Json, display, screen) is not { } before)
            return ToolRun.Wrong;
        display.Stage("reading the drawing");
        SheetSet built = OutputSet.Compose(input, before);
        var problems = new List<Problem>();
        DrawingReading? reading = EditedDrawing.Read(bytes, drawing, input.Project, before.Laid.Layout, built, problems);
        ProblemScreen.Print(problems, run.Json, screen);
        if (reading is null)
            return ToolRun.Wrong;
        string where = "on the drawing " + Path.GetFileName(drawing);
        EditedLayout edited = EditedLayout.Of(input.Project, before.Laid.Layout, reading.Nails, where);
        if (OnePass.Measure(input, OnePass.Check(input.Project, edited.Layout, display), run.Json, display, screen) is not { } after)
            return ToolRun.Wrong;
        RevisionDifference difference = Comparison.Of(State(file, input, before), State(drawing, input, after));
        if (run.Json)
            screen.Out.Write(RevisionJson.Text(difference, reading));
        else
            Print(difference, reading, after, screen);
        if (run.Folder is null)
            return (CodeOf(after.Laid.Report, reading), []);
        if (RevisedProject.Make(file, input, before.Laid.Layout, edited, where, display) is not { } revised)
            throw new OutputException($"{file} cannot be copied with fixed nails: its text is not in lines of keys; add the changed nails to its block fixed by hand");
        foreach (string note in revised.Notes)
            screen.Tell(note);
        if (input.Named.FilesNamed)
            screen.Tell($"{Copy} names files by their place beside {file}: keep it in the same folder, or mend their paths");
        if (OnePass.Measure(revised.Input, OnePass.Check(revised.Input.Project, revised.Layout, display), run.Json, display, screen) is not { } written)
            return ToolRun.Wrong;
        (CheckedLayout laid, _, IReadOnlyList<OutputFile> files) = OutputSet.Make(revised.Input, written, [], display);
        return (CodeOf(laid.Report, reading), [.. files, new OutputFile(Copy, Encoding.UTF8.GetBytes(revised.Text)), .. RevisionFiles.Make(difference, revised.Input.Project, revised.Input.Named.Templates?.Language)]);
    }

    /// <summary>What somebody typed at a nail and was not taken needs a look as an error does.</summary>
    private static int CodeOf(ClearanceReport report, DrawingReading reading) => reading.NotRead.Count > 0 ? ExitCode.Findings : Ending.CodeOf(report);

    private static RevisionState State(string name, Input input, MeasuredLayout measured) =>
        RevisionState.Of(name, input.Project, measured.Laid.Layout, measured.Laid.Report, measured.Quantities, measured.Bid);

    private static void Print(RevisionDifference difference, DrawingReading reading, MeasuredLayout after, Screen screen)
    {
        foreach (string note in reading.Notes)
            screen.Out.WriteLine("note: " + note);
        foreach (string line in RevisionScreen.Lines(difference, "nails on the drawing"))
            screen.Out.WriteLine(line);
        foreach (string thing in reading.NotRead.Concat(reading.LeftOut))
            screen.Out.WriteLine("not read: " + thing);
        screen.Out.WriteLine("now:");
        FindingScreen.PrintErrors(after.Laid.Report, screen.Out);
        int errors = after.Laid.Report.Findings.Count(f => f.Severity == Severity.Error);
        screen.Out.WriteLine(FormattableString.Invariant($"  {after.Laid.Layout.Nails.Count} nails, {errors} {(errors == 1 ? "error" : "errors")}"));
    }

    private static void Tell(Problem problem, ToolRun run, Screen screen) => ProblemScreen.Print([problem], run.Json, screen);
}
