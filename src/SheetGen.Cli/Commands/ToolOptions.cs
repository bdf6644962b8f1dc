using System.CommandLine;
using SheetGen.Exchange;

namespace SheetGen.Cli.Commands;

/// <summary>What the checker's tools share: where results go, and whether they are told as JSON.</summary>
public sealed class ToolOptions
{
    private readonly Option<string?> _folder;

    private readonly Option<bool> _json = new("--json")
    {
        Description = "What was found as JSON on the output stream, problems of the input as JSON on the error stream.",
    };

    /// <param name="files">What is written there, as the help says it.</param>
    public ToolOptions(string files)
    {
        _folder = new("--out", "-o")
        {
            Description = $"Folder for {files}; made where it is missing. Only files of this program's own names are replaced in it.",
            HelpName = "DIR",
        };
        _folder.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && result.Tokens[0].Value.Length == 0)
                result.AddError("Option '--out' needs the name of a folder.");
        });
    }

    public void AddTo(Command command)
    {
        command.Options.Add(_folder);
        command.Options.Add(_json);
    }

    public ToolRun Of(ParseResult parsed) => new(parsed.GetValue(_folder), parsed.GetValue(_json));
}

/// <summary>Where the results of a tool go.</summary>
/// <param name="Folder">Null where nothing is written.</param>
public sealed record ToolRun(string? Folder, bool Json)
{
    /// <summary>Runs a tool: what keeps its results from being written is said first, and all of its files are written or none.</summary>
    /// <param name="names">All file names that the tool may write.</param>
    /// <param name="work">Gives the exit code and the files; no files where none are asked for.</param>
    public int Run(IReadOnlyList<string> names, Screen screen, Interruption interruption, Func<(int Code, IReadOnlyList<OutputFile> Files)> work)
    {
        try
        {
            OutputFolder? output = Folder is null ? null : new OutputFolder(Folder, names);
            output?.CheckPossible();
            bool replacesBuild = Folder is not null && ExchangeFormat.AllFileNames.All(names.Contains);
            if (replacesBuild)
                AlsoFiles.CheckOwn(Folder!);
            (int code, IReadOnlyList<OutputFile> files) = work();
            if (output is null || files.Count == 0)
                return code;
            IReadOnlyList<string> stale = replacesBuild ? AlsoFiles.Stale(Folder!, files) : [];
            if (!interruption.WhileWriting(() => output.Write(files, () => interruption.Requested)))
                return ExitCode.Of(System.Runtime.InteropServices.PosixSignal.SIGINT);
            if (!Json)
            {
                screen.Out.WriteLine($"wrote {Folder}: {string.Join(", ", files.Select(f => f.Name))}");
                AlsoFiles.TellRemoved(stale, screen);
            }
            return code;
        }
        catch (OutputException e)
        {
            screen.Tell(e.Message);
            return ExitCode.WrongInput;
        }
    }

    /// <summary>Reads a project file, lays it out and runs a tool on it, as <see cref="Run"/> does.</summary>
    public int RunOn(string argument, IReadOnlyList<string> names, Screen screen, Interruption interruption, Func<LaidWall, (int Code, IReadOnlyList<OutputFile> Files)> work) =>
        Run(names, screen, interruption, () =>
        {
            if (ProjectPath.Of(argument, screen) is not { } file || OnePass.Read(file, Json, screen) is not { } input)
                return Wrong;
            var display = new StageDisplay(screen, Json);
            return display.While(() => work(new LaidWall(input, OnePass.LayOut(input.Project, false, display), display)));
        });

    public static (int, IReadOnlyList<OutputFile>) Wrong { get; } = (ExitCode.WrongInput, []);
}

/// <summary>A wall that was read and laid out for a tool.</summary>
public sealed record LaidWall(Input Input, CheckedLayout Laid, StageDisplay Display);
