using System.CommandLine;
using SheetGen.Cli.Corridors;
using SheetGen.Cli.Studies;
using SheetGen.ProjectFile.Studies;

namespace SheetGen.Cli.Commands;

/// <summary><c>study</c>: lays out and measures many variants of one wall.</summary>
public static class StudyCommand
{
    public static Command Make(Screen screen, Interruption interruption)
    {
        Argument<string> file = LayoutOptions.ProjectFile();
        var studyFile = new Argument<string>("STUDY") { Description = "Study (YAML): keys of the project file, each with a list or a range of values." };
        var folder = new Option<string>("--out", "-o") { Description = "Folder for the results: study.xlsx and its like, pictures, variants/N.json.", HelpName = "DIR" };
        var only = new Option<int[]>("--only") { Description = "Lay out this variant alone, and no tables; 0 is the project file as it is; may be given several times.", HelpName = "N", Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
        var gather = new Option<bool>("--gather") { Description = "Lay out no variant; make tables and pictures from what is there." };
        var build = new Option<int>("--build") { Description = "Build the best K variants in full, each into best/N with its project file.", HelpName = "K" };
        var names = new Option<bool>("--names") { Description = "Print the numbers of the variants, a line each, and end." };
        var jobs = new Option<int>("--jobs", "-j") { Description = "Processes at the same time; left out: one a processor.", HelpName = "N", DefaultValueFactory = _ => Environment.ProcessorCount };
        jobs.Validators.Add(r => Range(r, "--jobs", 1, 1024));
        build.Validators.Add(r => Range(r, "--build", 0, 1000));
        var json = new Option<bool>("--json") { Description = "Problems as JSON on the error stream, and no progress lines; the results are in study.json." };
        var worker = new Option<bool>(Workers.EndsWithParent) { Hidden = true };
        var command = new ExampledCommand(
            "study", "Lay out and measure many variants of one wall, and compare them in a table and pictures.",
            "sheetgen study my-wall/wall.yaml spacing.yaml --out study             a table and pictures of all variants",
            "sheetgen study my-wall/wall.yaml spacing.yaml --out study --build 2   and the best two in full")
        { file, studyFile, folder, only, gather, build, names, jobs, json, worker };
        command.SetAction(p =>
        {
            if (ProjectPath.Of(p.GetRequiredValue(file), screen) is not { } project)
                return ExitCode.WrongInput;
            StudyResult read = StudyReader.Read(project, p.GetRequiredValue(studyFile));
            if (!p.GetValue(worker) || read.Study is null)
                ProblemScreen.Print(read.Problems, p.GetValue(json), screen);
            if (read.Study is not { } study)
                return ExitCode.WrongInput;
            if (p.GetValue(names))
            {
                for (int number = 0; number <= study.Count; number++)
                    screen.Out.WriteLine(FormattableString.Invariant($"{number}"));
                return ExitCode.Clean;
            }
            if (p.GetValue(folder) is not { Length: > 0 } to)
            {
                screen.Tell("study needs --out DIR, the folder for the results");
                return ExitCode.WrongInput;
            }
            if (CorridorCommand.IsPieceAndWhole(p.GetValue(only) is { Length: > 0 }, p.GetValue(gather) ? "--gather" : p.GetValue(build) > 0 ? "--build" : null, screen))
                return ExitCode.WrongInput;
            if (p.GetValue(worker))
                ParentWatch.Start(interruption);
            var options = new StudyOptions(project, p.GetRequiredValue(studyFile), to, p.GetValue(only) ?? [], p.GetValue(gather), p.GetValue(build), p.GetValue(jobs), p.GetValue(json));
            return CorridorCommand.Guarded(() => new StudyRun(study, options, screen, interruption).Run(), screen);
        });
        return command;
    }

    private static void Range(System.CommandLine.Parsing.OptionResult result, string name, int least, int most)
    {
        if (result.Tokens.Count == 1 && int.TryParse(result.Tokens[0].Value, out int n) && (n < least || n > most))
            result.AddError(FormattableString.Invariant($"Option '{name}' takes a number from {least} to {most}."));
    }
}
