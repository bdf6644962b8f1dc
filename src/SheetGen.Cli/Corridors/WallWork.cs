using System.Runtime.InteropServices;
using SheetGen.Model.Corridors;
using SheetGen.ProjectFile;

namespace SheetGen.Cli.Corridors;

/// <summary>The unit of work of a corridor: one project file in, its set and its state out. Doing it again changes nothing.</summary>
internal sealed class WallWork(StateFolder folder, Screen screen, Interruption interruption)
{
    private const int MostTries = 50;
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(200);

    /// <summary>Builds a wall unless its set stands; keeps its state. Problems are printed.</summary>
    /// <returns>The state, and whether it was built now.</returns>
    public (WallState State, bool IsNew) Do(CorridorWall wall)
    {
        if (folder.Read(wall) is { } before && folder.IsCurrent(wall, before, wholly: true))
            return (before, false);
        WallState state = Build(wall);
        interruption.WhileWritingPart(() =>
        {
            folder.Keep(wall, state);
            return true;
        });
        return (state, true);
    }

    /// <summary>The state of a wall whose building came to no end of its own.</summary>
    public static WallState Failed(CorridorWall wall, WallOutcome outcome, int exit, params string[] problems) => new()
    {
        Name = wall.Name,
        Outcome = outcome,
        Exit = exit,
        Version = ProgramVersion.Text,
        Program = ProgramVersion.Code,
        Options = StateFolder.OptionsOf(wall),
        Problems = problems,
    };

    private WallState Build(CorridorWall wall)
    {
        string project = StateFolder.ProjectOf(wall);
        if (InputFile.Read(project, InputFile.MostText) is { Bytes: null } unread)
        {
            string problem = $"{folder.Shown(wall.Spot.File)}:{FormattableString.Invariant($"{wall.Spot.Line}:{wall.Spot.Column}")}: error R01: project file \"{wall.Shown}\" cannot be read: {unread.Why}";
            screen.Error.WriteLine($"{wall.Spot}: error R01: project file \"{wall.File}\" cannot be read: {unread.Why} (check the path in the list)");
            return Failed(wall, WallOutcome.Missing, ExitCode.WrongInput, problem + " (check the path in the list)");
        }
        var told = new StringWriter { NewLine = "\n" };
        var inputs = new SortedDictionary<string, FileHash>(StringComparer.Ordinal);
        try
        {
            FinishedWall? run = InputFile.Watching(
                (path, bytes) => inputs[folder.Shown(path)] = StateFolder.HashOf(folder.Shown(path), bytes),
                () => FinishedWall.Make(project, new RunOptions(wall.Prove, false, null, false), new Screen(TextWriter.Null, told, live: false)));
            IReadOnlyList<string> problems = Problems(told.ToString(), project);
            return run is null ? Failed(wall, WallOutcome.Faulty, ExitCode.WrongInput, [.. problems]) : Write(wall, run, [.. inputs.Values], problems);
        }
        catch (OutputException e)
        {
            screen.Tell($"{wall.Name}: {e.Message}");
            return Failed(wall, WallOutcome.NotWritten, ExitCode.WrongInput, e.Message);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            screen.Tell($"{wall.Name}: the program is at fault, not your file; please report the project file and these lines (version {ProgramVersion.Text}):");
            screen.Error.WriteLine(e);
            return Failed(wall, WallOutcome.ProgramFault, ExitCode.Fault, $"the program is at fault: {e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")}");
        }
    }

    private WallState Write(CorridorWall wall, FinishedWall run, IReadOnlyList<FileHash> inputs, IReadOnlyList<string> problems)
    {
        var output = new OutputFolder(folder.SetOf(wall), OutputSet.Names);
        for (int tries = 1; ; tries++)
        {
            try
            {
                if (!interruption.WhileWritingPart(() => output.Write(run.Files, () => interruption.Requested)))
                    Environment.Exit(ExitCode.Of(PosixSignal.SIGTERM));
                break;
            }
            catch (OutputException e) when (tries < MostTries && e.Message.StartsWith("another run", StringComparison.Ordinal))
            {
                Thread.Sleep(BetweenTries); // A run that was killed may have left one that is still writing.
            }
        }
        return Failed(wall, WallOutcome.Built, Ending.CodeOf(run.Laid.Report), [.. problems]) with
        {
            Inputs = inputs,
            Files = [.. run.Files.Select(f => StateFolder.HashOf(f.Name, f.Content))],
            Figures = KeptFigures.Of(run),
            Reach = KeptFigures.Reach(run),
            Holes = KeptFigures.Holes(run),
        };
    }

    /// <summary>Prints what was told of the file; what is kept names the file from the list's folder.</summary>
    private List<string> Problems(string told, string project)
    {
        var kept = new List<string>();
        foreach (string line in told.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => !l.StartsWith("sheetgen: ", StringComparison.Ordinal)))
        {
            screen.Error.WriteLine(line);
            string dir = Path.GetDirectoryName(project) ?? "";
            kept.Add(dir.Length > 0 && line.StartsWith(dir, StringComparison.Ordinal) && line.IndexOf(':', dir.Length) is > 0 and int colon
                ? folder.Shown(line[..colon]) + line[colon..] : line);
        }
        return kept;
    }
}
