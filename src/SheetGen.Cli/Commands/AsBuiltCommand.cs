using System.CommandLine;
using System.Text;
using System.Text.Json;
using SheetGen.Drawing.Review;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Revisions;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Records;
using SheetGen.Writers.Pdf;

namespace SheetGen.Cli.Commands;

/// <summary><c>asbuilt</c>: the record of drilled nails against the plan.</summary>
public static class AsBuiltCommand
{
    private const string Pdf = "asbuilt.pdf", Record = "asbuilt.csv";

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

    private static int Run(string argument, string? record, double? head, double? angle, ToolRun run, Screen screen, Interruption interruption) => run.Run([record is null ? Record : Pdf], screen, interruption, () =>
    {
        if (record is null && run.Folder is null)
            throw new OutputException("asbuilt needs a record, or --out for an empty one");
        if (head is < 0 || angle is < 0)
            throw new OutputException("--head and --angle are not negative");
        if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, run.Json, screen) is not { } input)
            return ToolRun.Wrong;
        var display = new StageDisplay(screen, run.Json);
        return display.While<(int, IReadOnlyList<OutputFile>)>(() =>
        {
            CheckedLayout laid = OnePass.LayOut(input.Project, false, display);
            if (record is null)
                return (ExitCode.Clean, [new OutputFile(Record, Encoding.UTF8.GetBytes(AsBuiltRecord.Empty(laid.Layout)))]);
            var problems = new List<Problem>();
            if (InputFile.Read(record, InputFile.MostText).Text(out string why) is not { } text)
            {
                ProblemScreen.Print([new Problem(Severity.Error, "D02", "the record cannot be read: " + why, new SourceSpot(record, 1, 1), "name a CSV file")], run.Json, screen);
                return ToolRun.Wrong;
            }
            IReadOnlyList<AsBuiltNail>? drilled = AsBuiltRecord.Read(text, record, input.Project, laid.Layout, problems);
            ProblemScreen.Print(problems, run.Json, screen);
            if (drilled is null)
                return ToolRun.Wrong;
            display.Stage("checking what has been drilled");
            AsBuilt.Tolerances usual = AsBuilt.Tolerances.Default(input.Project.Unit), tolerances = usual with { Head = head ?? usual.Head, Angle = angle ?? usual.Angle };
            AsBuiltReport report = AsBuilt.Of(input.Project, laid.Layout, drilled, tolerances);
            string told = Told(tolerances, head is null || angle is null, input.Project.Unit);
            if (run.Json)
                screen.Out.Write(Json(report));
            else
                Print(report, told, input.Project.Unit, screen);
            int code = report.NewFindings.Any(f => f.Severity == Severity.Error) || report.Misses.Count > 0 ? ExitCode.Findings : ExitCode.Clean;
            if (run.Folder is null)
                return (code, []);
            ReviewInfo info = ReviewInfo.Of(input.Project, ProgramVersion.Text, TemplateReader.Default());
            return (code, [OutputFile.Of(Pdf, s => PdfSheetWriter.Write(AsBuiltPages.Compose(report, info, told), s))]);
        });
    });

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

    private static string Json(AsBuiltReport r)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("format", 1);
            json.WriteNumber("drilled", r.DrilledProduction);
            json.WriteNumber("planned", r.PlannedProduction);
            json.WriteNumber("drilled_length", r.DrilledLength);
            json.WriteNumber("planned_length_of_drilled", r.PlannedLengthOfDrilled);
            json.WriteNumber("planned_length", r.PlannedLength);
            json.WriteNumber("grout", r.Grout);
            json.WriteStartArray("tolerances_not_kept");
            foreach (ToleranceMiss miss in r.Misses)
            {
                json.WriteStartObject();
                json.WriteString("mark", miss.Mark);
                json.WriteString("what", miss.What);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("findings");
            foreach (Finding f in r.NewFindings)
            {
                json.WriteStartObject();
                json.WriteString("code", f.Code);
                json.WriteString("severity", ResultWords.Of(f.Severity));
                json.WriteString("message", f.Message);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("in_trouble");
            foreach (OpenTrouble o in r.Open)
            {
                json.WriteStartObject();
                json.WriteString("mark", o.Mark);
                json.WriteString("because", o.Because);
                if (o.Could.Length > 0)
                    json.WriteString("could_go_to", o.Could);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
