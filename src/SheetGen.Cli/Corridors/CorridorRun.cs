using SheetGen.Model.Corridors;
using SheetGen.Writers.Register;

namespace SheetGen.Cli.Corridors;

/// <summary>What is asked of a run over a corridor.</summary>
/// <param name="Lists">The list, a folder, a pattern, or project files.</param>
/// <param name="Only">Names of the walls to build, without a register; empty for all.</param>
/// <param name="Gather">Make the register alone.</param>
/// <param name="Jobs">Processes at the same time.</param>
internal sealed record CorridorOptions(IReadOnlyList<string> Lists, string Folder, IReadOnlyList<string> Only, bool Gather, int Jobs, bool Json);

/// <summary>Builds the walls of a corridor, several at a time, and gathers what they gave.</summary>
internal sealed class CorridorRun(Corridor corridor, CorridorOptions options, Screen screen, Interruption interruption)
{
    private const int MostClashesShown = 10;
    private readonly StateFolder _folder = new(options.Folder, corridor);

    public int Run()
    {
        var output = new OutputFolder(options.Folder, Gathering.Names);
        output.CheckPossible();
        interruption.WhatStands = "the walls that are done stay, and the same command goes on from there";
        if (options.Only.Count > 0)
            return OnlyNamed();
        if (!options.Gather)
            BuildAll();
        CorridorRegister register = new Gathering(corridor, _folder).Make();
        IReadOnlyList<OutputFile> files = new Gathering(corridor, _folder).Files(register);
        if (!interruption.WhileWritingPart(() => output.Write(files, () => interruption.Requested)))
            return ExitCode.Of(System.Runtime.InteropServices.PosixSignal.SIGINT);
        Tell(register);
        return register.Exit;
    }

    private int OnlyNamed()
    {
        CorridorWall?[] walls = [.. options.Only.Select(n => corridor.Walls.FirstOrDefault(w => w.Name == n))];
        string[] unknown = [.. options.Only.Where(n => corridor.Walls.All(w => w.Name != n))];
        foreach (string name in unknown)
        {
            screen.Tell($"the corridor has no wall named \"{name}\"" + (ProjectFile.Tree.Suggestion.Nearest(name, corridor.Walls.Select(w => w.Name)) is { } near
                ? $": did you mean {near}?" : "; --names prints all names"));
        }
        if (unknown.Length > 0)
            return ExitCode.WrongInput;
        var work = new WallWork(_folder, screen, interruption);
        int worst = ExitCode.Clean;
        foreach (CorridorWall wall in walls.OfType<CorridorWall>())
        {
            (WallState state, bool isNew) = work.Do(wall);
            screen.Out.WriteLine(Line(wall, state, isNew));
            screen.Out.Flush();
            worst = Math.Max(worst, state.Exit);
        }
        return worst;
    }

    private void BuildAll()
    {
        CorridorWall[] pending = [.. corridor.Walls.Where(w => _folder.Read(w) is not { } state || !_folder.IsCurrent(w, state, wholly: true))];
        if (pending.Length < corridor.Walls.Count)
            screen.Out.WriteLine(FormattableString.Invariant($"{corridor.Walls.Count - pending.Length} of {corridor.Walls.Count} walls are unchanged and stay"));
        var progress = new Progress("walls", pending.Length, screen, options.Json);
        progress.While(() =>
        {
            if (options.Jobs == 1 || pending.Length < 2)
                OneByOne(pending, progress);
            else
                InProcesses(pending, progress);
        });
    }

    private void OneByOne(CorridorWall[] pending, Progress progress)
    {
        var work = new WallWork(_folder, new Screen(new ProgressLines(progress, false), new ProgressLines(progress, true), live: false), interruption);
        foreach (CorridorWall wall in pending)
        {
            (WallState state, bool isNew) = work.Do(wall);
            progress.Print(Line(wall, state, isNew));
            progress.Done();
        }
    }

    private void InProcesses(CorridorWall[] pending, Progress progress)
    {
        Dictionary<string, CorridorWall> byName = pending.ToDictionary(w => w.Name);
        new Workers(["corridor", .. options.Lists, "--out", options.Folder], Math.Min(options.Jobs, pending.Length), progress).Do([.. byName.Keys], (name, code) =>
        {
            string why = FormattableString.Invariant($"the process that built it ended with code {code}");
            progress.Print($"sheetgen: {name}: {why}", isError: true);
            _folder.Keep(byName[name], WallWork.Failed(byName[name], WallOutcome.ProgramFault, ExitCode.Fault, why));
        });
    }

    private static string Line(CorridorWall wall, WallState state, bool isNew) => state.Figures is { } figures && state.Outcome == WallOutcome.Built
        ? FormattableString.Invariant($"{wall.Name}: {(isNew ? "built" : "unchanged")}, {figures.Production} nails, {figures.Statuses["unresolved"]} unresolved, {figures.Statuses["noted"]} noted, {figures.Findings["error"]} errors, {figures.Sheets.Count} sheets")
        : $"{wall.Name}: {CorridorRegister.InOneWord(state.Outcome)}, nothing built" + (state.Problems.Count == 0 ? "" : FormattableString.Invariant($" ({state.Problems.Count} problems)"));

    private void Tell(CorridorRegister register)
    {
        RegisterTable clashes = register.Tables.First(t => t.Name == "Clashes");
        foreach (IReadOnlyList<RegisterCell> row in clashes.Rows.Take(MostClashesShown))
            screen.Out.WriteLine($"error {row[4].Shown}: {row[^1].Shown}");
        if (clashes.Rows.Count > MostClashesShown)
            screen.Out.WriteLine(FormattableString.Invariant($"and {clashes.Rows.Count - MostClashesShown} more clashes, all in the register"));
        screen.Out.WriteLine("");
        screen.Out.WriteLine(register.Title);
        screen.Out.WriteLine("  " + register.InWords);
        screen.Out.WriteLine($"  register    {options.Folder}: {string.Join(", ", Gathering.Names)}");
    }

    /// <summary>Lines of a wall's own screen, which wait while a bar is shown.</summary>
    private sealed class ProgressLines(Progress progress, bool isError) : StringWriter
    {
        public override void Write(string? value) => progress.Print((value ?? "").TrimEnd('\r', '\n'), isError);

        public override void WriteLine(string? value) => Write(value);
    }
}
