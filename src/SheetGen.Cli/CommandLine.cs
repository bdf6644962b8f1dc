using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Text.RegularExpressions;
using SheetGen.Cli.Commands;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.Cli;

/// <summary>The commands, their options and their help.</summary>
public static partial class CommandLine
{
    private const string ExitCodes = """
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
            foreach (string message in parsed.Errors.Select(e => NoNumber().Replace(e.Message, "$2: '$1' is no number")).Distinct())
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

    /// <summary>What the parser says of a word in place of a number, all options with a type of their own being numbers.</summary>
    [GeneratedRegex(@"^Cannot parse argument '([\s\S]*)' for option '([^']*)' as expected type '[^']*'\.$")]
    private static partial Regex NoNumber();

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
            StartCommand.Make(screen, interruption),
            InspectCommand.Make(screen),
            CheckCommand.Make(screen, interruption),
            BuildCommand.Make(screen, interruption),
            RecheckCommand.Make(screen, interruption),
            CompareCommand.Make(screen, interruption),
            WindowCommand.Make(screen, interruption),
            AsBuiltCommand.Make(screen, interruption),
            CorridorCommand.Make(screen, interruption),
            StudyCommand.Make(screen, interruption),
            ReviewCommand.Make(screen, interruption),
            help,
            version,
        };
    }

    private sealed class HelpWithExamples(HelpAction plain) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            plain.Invoke(parseResult);
            Command asked = parseResult.CommandResult.Command;
            TextWriter output = parseResult.InvocationConfiguration.Output;
            output.Write("Examples:\n");
            foreach (ExampledCommand command in (asked is ExampledCommand one ? [one] : asked.Subcommands).OfType<ExampledCommand>())
            {
                foreach (string line in command.Examples)
                    output.Write($"  {line}\n");
            }
            output.Write("\n" + ExitCodes.ReplaceLineEndings("\n"));
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
