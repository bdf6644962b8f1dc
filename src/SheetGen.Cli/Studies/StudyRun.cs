using System.Globalization;
using SheetGen.Cli.Corridors;
using SheetGen.Model.Corridors;
using SheetGen.Model.Studies;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Studies;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Register;
using SheetGen.Writers.Studies;

namespace SheetGen.Cli.Studies;

/// <summary>What is asked of a study.</summary>
/// <param name="Only">Numbers of the variants to lay out, without tables; empty for all.</param>
/// <param name="Gather">Make the tables alone.</param>
/// <param name="Build">How many of the best are built in full.</param>
internal sealed record StudyOptions(string Project, string StudyFile, string Folder, IReadOnlyList<int> Only, bool Gather, int Build, int Jobs, bool Json);

/// <summary>Lays out and measures the variants of a study, several at a time, and gathers what they gave.</summary>
internal sealed class StudyRun(Study study, StudyOptions options, Screen screen, Interruption interruption)
{
    private const string Workbook = "study.xlsx", Csv = "study.csv", Pdf = "study.pdf", Html = "study.html", Json = "study.json", TradeOff = "trade-off.svg", Multiples = "small-multiples.svg";

    public static IReadOnlyList<string> Names { get; } = [Workbook, Csv, Pdf, Html, Json, TradeOff, Multiples];

    private readonly VariantWork _work = new(study, options.Folder, screen, interruption);

    public int Run()
    {
        var output = new OutputFolder(options.Folder, Names);
        output.CheckPossible();
        interruption.WhatStands = "the variants that are done stay, and the same command goes on from there";
        if (options.Only.Count > 0)
            return OnlyNumbered();
        if (!options.Gather)
            LayOutAll();
        StudyTables tables = Gathered();
        if (!interruption.WhileWritingPart(() => output.Write(Files(tables), () => interruption.Requested)))
            return ExitCode.Of(System.Runtime.InteropServices.PosixSignal.SIGINT);
        Tell(tables);
        int built = ExitCode.Clean;
        foreach (VariantState best in tables.Best.Take(options.Build))
            built = Math.Max(built, _work.Build(best.Number));
        return Math.Max(built, tables.States.Any(s => s.Outcome == WallOutcome.ProgramFault) ? ExitCode.Fault : tables.States.Any(s => s.Figures is null) ? ExitCode.Findings : ExitCode.Clean);
    }

    private int OnlyNumbered()
    {
        int[] unknown = [.. options.Only.Where(n => n < 0 || n > study.Count)];
        foreach (int number in unknown)
            screen.Tell(FormattableString.Invariant($"the study has no variant {number}; it has 0 (the project file as it is) to {study.Count}"));
        if (unknown.Length > 0)
            return ExitCode.WrongInput;
        int worst = ExitCode.Clean;
        foreach (int number in options.Only)
        {
            (VariantState state, bool isNew) = _work.Do(number);
            screen.Out.WriteLine(Line(state, isNew));
            screen.Out.Flush();
            worst = Math.Max(worst, state.Outcome switch { WallOutcome.Built => ExitCode.Clean, WallOutcome.ProgramFault => ExitCode.Fault, _ => ExitCode.Findings });
        }
        return worst;
    }

    private void LayOutAll()
    {
        int[] pending = [.. Enumerable.Range(0, study.Count + 1).Where(n => _work.Read(n) is not { Outcome: WallOutcome.Built } state || !_work.IsCurrent(n, state))];
        if (pending.Length < study.Count + 1)
            screen.Out.WriteLine(FormattableString.Invariant($"{study.Count + 1 - pending.Length} of {study.Count + 1} variants are unchanged and stay"));
        var progress = new Progress("variants", pending.Length, screen, options.Json);
        progress.While(() =>
        {
            if (options.Jobs > 1 && pending.Length > 1)
            {
                new Workers(["study", options.Project, options.StudyFile, "--out", options.Folder], Math.Min(options.Jobs, pending.Length), progress).Do(
                    [.. pending.Select(n => n.ToString(CultureInfo.InvariantCulture))],
                    (name, code) => _work.Keep(_work.Failed(int.Parse(name, CultureInfo.InvariantCulture), WallOutcome.ProgramFault, FormattableString.Invariant($"the process that laid it out ended with code {code}"))));
                return;
            }
            foreach (int number in pending)
            {
                (VariantState state, bool isNew) = _work.Do(number);
                progress.Print(Line(state, isNew));
                progress.Done();
            }
        });
    }

    private StudyTables Gathered()
    {
        VariantState[] states = [.. Enumerable.Range(0, study.Count + 1).AsParallel().AsOrdered().Select(n => _work.Read(n) switch
        {
            null => _work.Failed(n, WallOutcome.NotBuilt, "no run has come to it; run the same command again, or with --only"),
            { Outcome: WallOutcome.Built } state when !_work.IsCurrent(n, state) => _work.Failed(n, WallOutcome.OutOfDate, "it stands for an earlier input, program or option; run the same command again, or with --only"),
            { } state => state,
        })];
        return new StudyTables(study.Title, Lengths.Symbol(study.Read(0).Project!.Unit), study.Keys, states, ProgramVersion.Text);
    }

    private IReadOnlyList<OutputFile> Files(StudyTables tables)
    {
        OutputFile File(string name, Action<Stream> write)
        {
            using var stream = new MemoryStream();
            write(stream);
            return new OutputFile(name, stream.ToArray());
        }
        string title = tables.Title, caution = StudyTables.Caution;
        var pictures = new StudyPictures(tables);
        IReadOnlyList<string>[] choices = [.. Enumerable.Range(0, study.Keys.Count).Select(study.ChoicesOf)];
        byte[] tradeOff = StudyPictures.Svg(title, pictures.TradeOff, tables.IsMetric, 260, 170), multiples = StudyPictures.Svg(title, b => pictures.SmallMultiples(b, choices), tables.IsMetric, Math.Max(180, 60 * study.Keys.Count), 220);
        return
        [
            File(Workbook, s => RegisterWorkbook.Write(title, caution, tables.Tables, tables.IsMetric, tables.Version, s)),
            File(Csv, s => RegisterCsv.Write(tables.Tables[0], s)),
            File(Pdf, s => PdfSheetWriter.Write(RegisterPages.Make(title, tables.InWords, caution, tables.Tables, tables.IsMetric, tables.Version, [pictures.TradeOff, b => pictures.SmallMultiples(b, choices)]), s)),
            new OutputFile(Html, RegisterHtml.Bytes(title, tables.InWords, caution, tables.Tables, tables.Version,
                [(StudyPictures.TradeOffCaption(tables), Text(tradeOff)), (StudyPictures.SmallMultiplesCaption, Text(multiples))])),
            new OutputFile(Json, CorridorJson.Bytes(tables.ToFile())),
            new OutputFile(TradeOff, tradeOff),
            new OutputFile(Multiples, multiples),
        ];

        static string Text(byte[] bytes) => System.Text.Encoding.UTF8.GetString(bytes);
    }

    private static string Line(VariantState state, bool isNew)
    {
        string number = state.Number.ToString(CultureInfo.InvariantCulture), values = state.Values.Count == 0 ? "as given" : string.Join(" ", state.Values);
        return state.Figures is { } f
            ? FormattableString.Invariant($"{number}: {(isNew ? "laid out" : "unchanged")}, {values}: {f.Nails} nails, {f.PayLength ?? f.NailLength:0.##} long, {f.Noted} noted, {f.Unresolved} unresolved")
            : $"{number}: {CorridorRegister.InOneWord(state.Outcome)}, {values}: not laid out";
    }

    private void Tell(StudyTables tables)
    {
        screen.Out.WriteLine("");
        screen.Out.WriteLine(tables.Title);
        screen.Out.WriteLine("  " + tables.InWords);
        screen.Out.WriteLine("  the design is the engineer's; a study only counts and measures layouts");
        screen.Out.WriteLine($"  files       {options.Folder}: {string.Join(", ", Names)}");
    }
}
