using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.Cli;

/// <summary>The commands, their options and their help.</summary>
public static class CommandLine
{
    private const string Examples = """
        Examples:
          sheetgen start my-wall                          a commented project file to begin with
          sheetgen start my-bridge --kind bridge          one near the job: bridge, pipe, curve or metric
          sheetgen check my-wall                          findings only, writes nothing (uses my-wall/wall.yaml)
          sheetgen check my-wall --picture wall.svg       and a picture of plan and elevation
          sheetgen build my-wall/wall.yaml --out sheets   sheets, workbook, nails and findings
          sheetgen build my-wall/wall.yaml -o sheets --open

        Exit codes:
          0  done, no finding of severity error
          1  done, and at least one finding needs the engineer
          2  the input or the output folder is wrong, nothing written
          3  the program is at fault, nothing written
          129, 130, 143  stopped by a signal, nothing written

        """;

    /// <summary>Parses the arguments and runs what they ask for.</summary>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    public static int Run(IReadOnlyList<string> args, Screen screen, Interruption interruption)
    {
        Command root = MakeRoot(screen, interruption);
        if (Misread(args, root) is { } hint)
        {
            screen.Tell(hint);
            screen.Tell("see sheetgen --help");
            return ExitCode.WrongInput;
        }
        if (args is ["help", ..])
            args = [.. args.Skip(1), "--help"];
        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        if (parsed.Errors.Count > 0)
        {
            foreach (string message in parsed.Errors.Select(e => e.Message).Distinct())
                screen.Tell(message);
            screen.Tell("see sheetgen --help");
            return ExitCode.WrongInput;
        }
        return parsed.Invoke(new InvocationConfiguration
        {
            Output = screen.Out,
            Error = screen.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = null,
        });
    }

    /// <summary>What was probably meant where the first word is no command; null where it is one, or an option.</summary>
    private static string? Misread(IReadOnlyList<string> args, Command root)
    {
        string[] commands = [.. root.Subcommands.Select(c => c.Name)];
        if (args.Count == 0 || args[0].StartsWith('-') || args[0] == "help" || commands.Contains(args[0]))
            return null;
        if (File.Exists(args[0]) || Directory.Exists(args[0]))
            return $"say what to do with {args[0]}: \"sheetgen check {args[0]}\", or \"sheetgen build {args[0]} --out sheets\"";
        return Suggestion.Nearest(args[0], commands) is { } near
            ? $"there is no command \"{args[0]}\": did you mean {near}?"
            : $"there is no command \"{args[0]}\"; the commands are {string.Join(", ", commands)}";
    }

    private static Command MakeRoot(Screen screen, Interruption interruption)
    {
        var help = new HelpOption();
        help.Action = new HelpWithExamples((HelpAction)help.Action!);
        var version = new VersionOption();
        version.Action = new VersionLine();
        return new Command(
            "sheetgen",
            "Lays out a soil nail wall from a project file and writes plan sheets (DXF, PDF), a quantity workbook, a nail table and findings.")
        {
            MakeBuild(screen, interruption),
            MakeCheck(screen),
            MakeStart(screen),
            help,
            version,
        };
    }

    private static Command MakeBuild(Screen screen, Interruption interruption)
    {
        Argument<string> file = ProjectFile();
        Options options = new();
        var folder = new Option<string>("--out", "-o")
        {
            Description = "Folder for the results; made where it is missing. Only files of this program's own names are replaced in it.",
            HelpName = "DIR",
            Required = true,
        };
        folder.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && result.Tokens[0].Value.Length == 0)
                result.AddError("Option '--out' needs the name of a folder.");
        });
        var build = new Command("build", "Lay out the wall and write sheets, workbook, nails and findings, all or nothing.") { file, folder };
        options.AddTo(build);
        build.SetAction(p => Runs.Build(p.GetRequiredValue(file), p.GetRequiredValue(folder), options.Of(p), screen, interruption));
        return build;
    }

    private static Command MakeCheck(Screen screen)
    {
        Argument<string> file = ProjectFile();
        Options options = new();
        var check = new Command("check", "Lay out the wall and print the findings; write nothing.") { file };
        options.AddTo(check);
        check.SetAction(p => Runs.Check(p.GetRequiredValue(file), options.Of(p), screen));
        return check;
    }

    private static Command MakeStart(Screen screen)
    {
        var folder = new Argument<string>("DIR") { Description = "Folder for the new wall.yaml; an existing file is never overwritten." };
        var kind = new Option<string>("--kind")
        {
            Description = "What the file is near to: " + string.Join(", ", StarterProject.Kinds) + ".",
            HelpName = "KIND",
            DefaultValueFactory = _ => StarterProject.Kinds[0],
        };
        kind.AcceptOnlyFromAmong([.. StarterProject.Kinds]);
        var start = new Command("start", "Write a commented project file to begin with, and the schema for completion in an editor.") { folder, kind };
        start.SetAction(p => Runs.Start(p.GetRequiredValue(folder), p.GetRequiredValue(kind), screen));
        return start;
    }

    private static Argument<string> ProjectFile() => new("FILE") { Description = "Project file (YAML), or a folder with a wall.yaml." };

    /// <summary>The options that build and check share.</summary>
    private sealed class Options
    {
        private readonly Option<bool> _prove = new("--prove")
        {
            Description = "Tighten the proof of how good the layout is; may take a minute.",
        };

        private readonly Option<bool> _json = new("--json")
        {
            Description = "Problems of the project file as JSON on the error stream; check prints its findings as JSON.",
        };

        private readonly Option<string?> _picture = new("--picture")
        {
            Description = "Also write a picture of plan and elevation, .svg or .png.",
            HelpName = "FILE",
        };

        private readonly Option<bool> _open = new("--open")
        {
            Description = "Open the picture, or else the PDF sheets, when done.",
        };

        public void AddTo(Command command)
        {
            foreach (Option option in new Option[] { _prove, _json, _picture, _open })
                command.Options.Add(option);
        }

        public RunOptions Of(ParseResult parsed) => new(parsed.GetValue(_prove), parsed.GetValue(_json), parsed.GetValue(_picture), parsed.GetValue(_open));
    }

    private sealed class HelpWithExamples(HelpAction plain) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            plain.Invoke(parseResult);
            parseResult.InvocationConfiguration.Output.Write(Examples.ReplaceLineEndings("\n"));
            return ExitCode.Clean;
        }
    }

    private sealed class VersionLine : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            parseResult.InvocationConfiguration.Output.WriteLine(ProgramVersion.Text);
            return ExitCode.Clean;
        }
    }
}
