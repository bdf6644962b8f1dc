using System.Globalization;
using System.Text;
using SheetGen.Cli.Corridors;
using SheetGen.Model.Corridors;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Studies;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Studies;
using SheetGen.Writers.Register;

namespace SheetGen.Cli.Studies;

/// <summary>The unit of work of a study: one variant laid out, checked and measured; its state out. Doing it again changes nothing.</summary>
internal sealed class VariantWork(Study study, string folder, Screen screen, Interruption interruption)
{
    private const string States = "variants", Bests = "best", ProjectName = "variant.yaml";
    private readonly string _projectFolder = Path.GetDirectoryName(Path.GetFullPath(study.ProjectPath))!;

    public VariantState? Read(int number) => InputFile.Read(PathOf(number), InputFile.MostText).Bytes is { } bytes ? CorridorJson.Variant(bytes) : null;

    /// <summary>True where a state stands for the variant, the program and the options as they are now.</summary>
    public bool IsCurrent(int number, VariantState state) =>
        state.Program == ProgramVersion.Code && state.Options == Options && state.Number == number && state.InputHash == HashOf(number) && state.Values.SequenceEqual(study.ValuesOf(number))
        && state.Inputs.All(i => InputFile.Read(Path.Combine(_projectFolder, i.Name), InputFile.MostDrawing).Bytes is { } bytes && StateFolder.HashOf(i.Name, bytes) == i);

    /// <summary>Lays out a variant unless its state stands; keeps its state.</summary>
    public (VariantState State, bool IsNew) Do(int number)
    {
        if (Read(number) is { Outcome: WallOutcome.Built } before && IsCurrent(number, before))
            return (before, false);
        VariantState state = LayOut(number);
        Keep(state);
        return (state, true);
    }

    public VariantState Failed(int number, WallOutcome outcome, params string[] problems) => new()
    {
        Number = number,
        Values = study.ValuesOf(number),
        Outcome = outcome,
        Program = ProgramVersion.Code,
        Options = Options,
        InputHash = HashOf(number),
        Problems = problems,
    };

    /// <exception cref="OutputException">The folder cannot be written.</exception>
    public void Keep(VariantState state) => interruption.WhileWritingPart(() =>
    {
        StateFolder.WriteWhole(PathOf(state.Number), CorridorJson.Bytes(state));
        return true;
    });

    /// <summary>Builds a variant in full: the set, and the project file that it stands for.</summary>
    /// <returns>The exit code of a single build.</returns>
    public int Build(int number)
    {
        string to = Path.Combine(folder, Bests, Name(number));
        if (InputOf(number, out _, out IReadOnlyList<Problem> problems) is not { } input || FinishedWall.Make(input, new RunOptions(study.Prove, false, null, false), screen) is not { } run)
        {
            ProblemScreen.Print([.. InputOf(number, out _, out problems) is null ? problems : []], false, screen);
            return ExitCode.WrongInput;
        }
        string text = FormattableString.Invariant($"# Variant {number} of {Path.GetFileName(study.ProjectPath)}: {string.Join(", ", study.Keys.Zip(study.ValuesOf(number), (k, v) => k + " " + v))}\n# Put it beside that file: names of other files in it start from there.\n");
        IReadOnlyList<OutputFile> files = [.. run.Files, new OutputFile(ProjectName, Encoding.UTF8.GetBytes(text + study.TextOf(number)))];
        if (!interruption.WhileWritingPart(() => new OutputFolder(to, [.. OutputSet.Names, ProjectName]).Write(files, () => interruption.Requested)))
            return ExitCode.Of(System.Runtime.InteropServices.PosixSignal.SIGINT);
        screen.Out.WriteLine($"  built       {to}: {string.Join(", ", files.Select(f => f.Name))}");
        return Ending.CodeOf(run.Laid.Report);
    }

    private string Options => study.Prove ? "prove" : "";

    private static string Name(int number) => number.ToString("0000", CultureInfo.InvariantCulture);

    private string PathOf(int number) => Path.Combine(folder, States, Name(number) + ".json");

    private string HashOf(int number) => StateFolder.HashOf("", Encoding.UTF8.GetBytes(study.TextOf(number))).Sha256;

    private VariantState LayOut(int number)
    {
        try
        {
            if (InputOf(number, out IReadOnlyList<FileHash> files, out IReadOnlyList<Problem> problems) is not { } input)
                return Failed(number, WallOutcome.Faulty, [.. problems.Select(Plain)]);
            var quiet = new Screen(TextWriter.Null, new StringWriter(), live: false);
            CheckedLayout laid = OnePass.LayOut(input.Project, study.Prove, new StageDisplay(quiet, json: true));
            var told = new StringWriter { NewLine = "\n" };
            if (OnePass.Measure(input, laid, false, new StageDisplay(quiet, json: true), new Screen(TextWriter.Null, told, live: false)) is not { } measured)
                return Failed(number, WallOutcome.Faulty, [.. told.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => !l.StartsWith("sheetgen: ", StringComparison.Ordinal))]);
            return Failed(number, WallOutcome.Built, [.. problems.Where(p => p.Spot.File != study.ProjectPath).Select(Plain)]) with { Inputs = files, Figures = FiguresOf(measured) };
        }
        catch (Exception e) when (e is not (OutOfMemoryException or OutputException))
        {
            screen.Tell(FormattableString.Invariant($"variant {number}: the program is at fault; please report project file, study and these lines (version {ProgramVersion.Text}):"));
            screen.Error.WriteLine(e);
            return Failed(number, WallOutcome.ProgramFault, $"the program is at fault: {e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")}");
        }
    }

    private Input? InputOf(int number, out IReadOnlyList<FileHash> files, out IReadOnlyList<Problem> problems)
    {
        var read = new SortedDictionary<string, FileHash>(StringComparer.Ordinal);
        List<Problem> found = [];
        Input? input = InputFile.Watching<Input?>(
            (path, bytes) => read[Shown(path)] = StateFolder.HashOf(Shown(path), bytes),
            () =>
            {
                ReadResult result = study.Read(number);
                NamedFiles? named = result.Project is null ? null : NamedFiles.Read(result, study.ProjectPath);
                found.AddRange(result.Problems);
                found.AddRange(named?.Problems ?? []);
                return named is { PayItems: not null, Templates: not null } ? new Input(result.Project!, named, result.SpotOfSign) : null;
            });
        (files, problems) = ([.. read.Values], found);
        return input;
    }

    private string Shown(string path) => Path.GetRelativePath(_projectFolder, Path.GetFullPath(path)).Replace('\\', '/');

    private static string Plain(Problem problem) => ProblemPrinter.Plain(problem);

    private static VariantFigures FiguresOf(MeasuredLayout measured)
    {
        (NailLayout layout, ClearanceReport report) = measured.Laid;
        Nail[] production = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        int Count(NailStatus status) => production.Count(n => n.Status == status);
        Quantity pay = measured.Quantities.Totals[QuantityName.PayLength], area = measured.Quantities.Totals[QuantityName.FaceArea];
        double[] clear = [.. report.Nails.Values.Select(c => c.LeastClear).Where(double.IsFinite)];
        LayoutScore score = layout.Score;
        return new VariantFigures(
            production.Length, production.Sum(n => n.Length), pay.State == QuantityState.Complete ? pay.Amount : null, score.Cover.Found, Count(NailStatus.Unresolved), score.Unresolved.Bound,
            Count(NailStatus.Noted), score.Noted.Bound, Count(NailStatus.Redirected), Count(NailStatus.Moved), layout.LeftOut.Count, score.Effort.Found, score.IsProvenBest,
            clear.Length == 0 ? null : clear.Min(), production.Length == 0 ? null : area.Amount / production.Length,
            report.Findings.Count(f => f.Severity == Severity.Error), report.Findings.Count(f => f.Severity == Severity.Warning), measured.Bid.IsComplete ? measured.Bid.Sum : null);
    }
}
