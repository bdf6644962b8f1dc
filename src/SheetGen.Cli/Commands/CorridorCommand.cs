using System.CommandLine;
using System.Text.Json;
using SheetGen.Cli.Corridors;
using SheetGen.ProjectFile.Corridors;

namespace SheetGen.Cli.Commands;

/// <summary><c>corridor</c>: builds many walls, each as its own set, and a register of them all.</summary>
public static class CorridorCommand
{
    public static Command Make(Screen screen, Interruption interruption)
    {
        var list = new Argument<string[]>("LIST")
        {
            Description = "A list of project files (YAML), a folder with a corridor.yaml or with project files, a pattern such as 'walls/*.yaml', or project files.",
            Arity = ArgumentArity.OneOrMore,
        };
        var folder = new Option<string>("--out", "-o") { Description = "Folder for the results: walls/NAME with each set, state/NAME.json, and the register.", HelpName = "DIR" };
        var only = new Option<string[]>("--only") { Description = "Build this wall alone, and no register; may be given several times.", HelpName = "NAME", Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
        var gather = new Option<bool>("--gather") { Description = "Build no wall; make the register from what is there." };
        var names = new Option<bool>("--names") { Description = "Print the names of the walls, a line each, and end; with --json, names and project files." };
        var jobs = new Option<int>("--jobs", "-j") { Description = "Processes at the same time; left out: one a processor.", HelpName = "N", DefaultValueFactory = _ => Environment.ProcessorCount };
        jobs.Validators.Add(r =>
        {
            if (r.Tokens.Count == 1 && int.TryParse(r.Tokens[0].Value, out int n) && n is < 1 or > 1024)
                r.AddError("Option '--jobs' takes a number from 1 to 1024.");
        });
        var json = new Option<bool>("--json") { Description = "Problems of the list as JSON on the error stream, and no progress lines; the results are in register.json." };
        var worker = new Option<bool>(Workers.EndsWithParent) { Hidden = true };
        var command = new ExampledCommand(
            "corridor", "Build many walls, each as its own set, check them against each other, and write a register of them all.",
            "sheetgen corridor corridor.yaml --out results   all walls of a list, and a register; run again, it goes on where it ended",
            "sheetgen corridor 'walls/*.yaml' --out results",
            "sheetgen corridor corridor.yaml --out results --only \"Ramp A\"   one piece of work, for a cluster; then --gather")
        { list, folder, only, gather, names, jobs, json, worker };
        command.SetAction(p =>
        {
            string[] lists = p.GetRequiredValue(list);
            CorridorResult read = CorridorReader.Read(lists);
            ProblemScreen.Print(read.Problems, p.GetValue(json), screen);
            if (read.Corridor is not { } corridor)
                return ExitCode.WrongInput;
            foreach (string note in corridor.Notes)
                screen.Tell(note);
            if (p.GetValue(names))
            {
                screen.Out.WriteLine(p.GetValue(json)
                    ? "[" + string.Join(",\n ", corridor.Walls.Select(w => $"{{\"name\": {Quoted(w.Name)}, \"file\": {Quoted(StateFolder.ProjectOf(w))}}}")) + "]"
                    : string.Join('\n', corridor.Walls.Select(w => w.Name)));
                return ExitCode.Clean;
            }
            if (p.GetValue(folder) is not { Length: > 0 } to)
            {
                screen.Tell("corridor needs --out DIR, the folder for the results");
                return ExitCode.WrongInput;
            }
            if (IsPieceAndWhole(p.GetValue(only) is { Length: > 0 }, p.GetValue(gather) ? "--gather" : null, screen))
                return ExitCode.WrongInput;
            if (p.GetValue(worker))
                ParentWatch.Start(interruption);
            return Guarded(() => new CorridorRun(corridor, new CorridorOptions(lists, to, p.GetValue(only) ?? [], p.GetValue(gather), p.GetValue(jobs), p.GetValue(json)), screen, interruption).Run(), screen);
        });
        return command;
    }

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text) + "\"";

    /// <summary>True where a single piece of work is asked for beside what comes after all of them, which is told.</summary>
    /// <param name="after">The option that asks for the latter; null for none.</param>
    internal static bool IsPieceAndWhole(bool isPiece, string? after, Screen screen)
    {
        if (!isPiece || after is null)
            return false;
        screen.Tell($"--only does single pieces of the work, {after} what comes after all of them: give one of the two");
        return true;
    }

    internal static int Guarded(Func<int> run, Screen screen)
    {
        try
        {
            return run();
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }
}
