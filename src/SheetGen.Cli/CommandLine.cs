using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace SheetGen.Cli;

/// <summary>The commands, their options and their help.</summary>
public static class CommandLine
{
    private const string Examples = """
        Examples:
          sheetgen start my-wall                          a commented project file to begin with
          sheetgen check my-wall/wall.yaml                findings only, writes nothing
          sheetgen build my-wall/wall.yaml --out sheets   sheets, workbook, nails and findings
          sheetgen build my-wall/wall.yaml --out sheets --prove

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
        Option<bool> prove = Prove(), json = Json();
        var folder = new Option<string>("--out")
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
        var build = new Command("build", "Lay out the wall and write sheets, workbook, nails and findings, all or nothing.") { file, folder, prove, json };
        build.SetAction(p => Runs.Build(p.GetRequiredValue(file), p.GetRequiredValue(folder), p.GetValue(prove), p.GetValue(json), screen, interruption));
        return build;
    }

    private static Command MakeCheck(Screen screen)
    {
        Argument<string> file = ProjectFile();
        Option<bool> prove = Prove(), json = Json();
        var check = new Command("check", "Lay out the wall and print the findings; write nothing.") { file, prove, json };
        check.SetAction(p => Runs.Check(p.GetRequiredValue(file), p.GetValue(prove), p.GetValue(json), screen));
        return check;
    }

    private static Command MakeStart(Screen screen)
    {
        var folder = new Argument<string>("DIR") { Description = "Folder for the new wall.yaml; an existing file is never overwritten." };
        var start = new Command("start", "Write a commented project file to begin with.") { folder };
        start.SetAction(p => Runs.Start(p.GetRequiredValue(folder), screen));
        return start;
    }

    private static Argument<string> ProjectFile() => new("FILE") { Description = "Project file (YAML)." };

    private static Option<bool> Prove() => new("--prove")
    {
        Description = "Tighten the proof of how good the layout is; may take a minute.",
    };

    private static Option<bool> Json() => new("--json")
    {
        Description = "Problems of the project file as JSON on the error stream; check prints its findings as JSON.",
    };

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
