using System.CommandLine;
using System.Text;
using SheetGen.Drawing.Review;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Records;
using SheetGen.Writers.Json;
using SheetGen.Writers.Pdf;

namespace SheetGen.Cli.Commands;

/// <summary><c>asbuilt</c>: the record of drilled nails against the plan.</summary>
public static class AsBuiltCommand
{
    private const string Pdf = "asbuilt.pdf", Record = AsBuiltRecord.FileName;

    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var record = new Argument<string?>("RECORD") { Description = $"Record (CSV) with {string.Join(", ", AsBuiltRecord.Columns)}; partial and in any order. Left out: an empty one is written.", Arity = ArgumentArity.ZeroOrOne };
        var head = new Option<double?>("--head") { Description = "How far a head may stand from its place, in project units; left out: 6 in (150 mm), from memory of guide specifications.", HelpName = "LENGTH" };
        var angle = new Option<double?>("--angle") { Description = "How far an angle may be off, in degrees; left out: 3, from memory of guide specifications.", HelpName = "DEGREES" };
        var options = new ToolOptions("asbuilt.pdf; without a record asbuilt.csv, an empty one");
        var asBuilt = new ExampledCommand(
            "asbuilt", "What has been drilled against the plan: tolerances, clearances, cover, nails in trouble, quantities so far.",
            "sheetgen asbuilt my-wall -o field               an empty record, a line a nail",
            "sheetgen asbuilt my-wall field/asbuilt.csv      what the holes drilled so far mean for the rest")
        { file, record, head, angle };
        options.AddTo(asBuilt);
        asBuilt.SetAction(p => Run(p.GetRequiredValue(file), p.GetValue(record), p.GetValue(head), p.GetValue(angle), options.Of(p), screen, interruption));
        return asBuilt;
    }

    private static int Run(string argument, string? record, double? head, double? angle, ToolRun run, Screen screen, Interruption interruption)
    {
        string? fault = record is null && run.Folder is null ? "asbuilt needs a record, or --out for an empty one" : IsWrong(head) || IsWrong(angle) ? "--head and --angle are numbers of 0 or more" : null;
        if (fault is null)
            return run.RunOn(argument, [record is null ? Record : Pdf], screen, interruption, wall => record is null
                ? (ExitCode.Clean, [new OutputFile(Record, Encoding.UTF8.GetBytes(AsBuiltRecord.Empty(wall.Laid.Layout)))])
                : Held(wall, record, head, angle, run, screen));
        screen.Tell(fault);
        return ExitCode.WrongInput;
    }

    /// <summary>A value that is no number of 0 or more; nothing would be beyond a tolerance of NaN.</summary>
    private static bool IsWrong(double? tolerance) => tolerance is { } value && !(value >= 0 && double.IsFinite(value));

    /// <summary>The record held against the plan.</summary>
    private static (int, IReadOnlyList<OutputFile>) Held(LaidWall wall, string record, double? head, double? angle, ToolRun run, Screen screen)
    {
        WallProject project = wall.Input.Project;
        var problems = new List<Problem>();
        if (InputFile.Read(record, InputFile.MostText).Text(out string why) is not { } text)
        {
            ProblemScreen.Print([new Problem(Severity.Error, "D02", "the record cannot be read: " + why, new SourceSpot(record, 1, 1), "name a CSV file; a spreadsheet saves one as CSV UTF-8")], run.Json, screen);
            return ToolRun.Wrong;
        }
        IReadOnlyList<AsBuiltNail>? drilled = AsBuiltRecord.Read(text, record, project, wall.Laid.Layout, problems);
        ProblemScreen.Print(problems, run.Json, screen);
        if (drilled is null)
            return ToolRun.Wrong;
        wall.Display.Stage("checking what has been drilled");
        AsBuilt.Tolerances usual = AsBuilt.Tolerances.Default(project.Unit), tolerances = usual with { Head = head ?? usual.Head, Angle = angle ?? usual.Angle };
        AsBuiltReport report = AsBuilt.Of(project, wall.Laid.Layout, drilled, tolerances);
        string told = Told(tolerances, head is null || angle is null, project.Unit);
        if (run.Json)
            screen.Out.Write(AsBuiltJson.Text(report, project.Unit));
        else
            Print(report, told, project.Unit, screen);
        int code = report.NewFindings.Any(f => f.Severity == Severity.Error) || report.Misses.Count > 0 ? ExitCode.Findings : ExitCode.Clean;
        if (run.Folder is null)
            return (code, []);
        ReviewInfo info = ReviewInfo.Of(project, ProgramVersion.Text, wall.Input.Named.Templates?.Language);
        return (code, [OutputFile.Of(Pdf, s => PdfSheetWriter.Write(AsBuiltPages.Compose(report, info, told), s))]);
    }

    private static string Told(AsBuilt.Tolerances t, bool isDefault, LengthUnit unit) => FormattableString.Invariant(
        $"Head {t.Head:0.###} {Lengths.Symbol(unit)} along the wall and in height, angles {t.Angle:0.##} deg, no shortfall of length{(isDefault ? " (DEFAULT where not given by --head and --angle; the project's specification governs)" : "")}.");

    private static void Print(AsBuiltReport report, string tolerances, LengthUnit unit, Screen screen)
    {
        foreach (string line in AsBuiltPages.Progress(report, unit))
            screen.Out.WriteLine(line);
        screen.Out.WriteLine("Tolerances: " + tolerances);
        foreach (ToleranceMiss miss in report.Misses)
            screen.Out.WriteLine($"  {miss.Mark}: {miss.What}");
        screen.Out.WriteLine(FormattableString.Invariant($"Findings with what has been drilled: {report.NewFindings.Count}"));
        foreach (Finding finding in report.NewFindings)
            screen.Out.WriteLine($"  {ResultWords.Of(finding.Severity)} {finding.Code}: {finding.Message}");
        foreach (OpenTrouble open in report.Open)
            screen.Out.WriteLine($"In trouble: {open.Mark}; {(open.Could.Length > 0 ? "could go to " + open.Could : "no place found: the engineer decides")}");
    }
}
