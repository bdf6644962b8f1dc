using System.Collections.Concurrent;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Exchange;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Review;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Json;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Workbook;

namespace SheetGen.Cli;

/// <summary>Draws a measured layout, and makes all output files in memory.</summary>
public static class OutputSet
{
    private const string Sheets = "sheets.dxf", Plan = "plan.dxf", Pdf = "sheets.pdf", Workbook = "quantities.xlsx", Nails = "nails.csv", Tables = "tables.zip";

    /// <summary>Every finding, for other programs.</summary>
    public const string Findings = "findings.json";

    /// <summary>The page for the checker.</summary>
    public const string Review = "review.html";

    /// <summary>The files of every build.</summary>
    public static IReadOnlyList<string> Names { get; } = [Sheets, Plan, Pdf, Workbook, Nails, Findings, Tables, Review, CheckerFiles.Clashes, CheckerFiles.PlanReview];

    /// <summary>Every file name that this program writes, open formats included.</summary>
    public static IReadOnlyList<string> AllNames { get; } = [.. Names, .. ExchangeFormat.AllFileNames];

    /// <summary>The file that a person looks at first.</summary>
    public const string ToOpen = Pdf;

    /// <summary>The sheets of a measured layout.</summary>
    public static SheetSet Compose(Input input, MeasuredLayout measured) => SheetComposer.Compose(
        input.Project, measured.Laid.Layout, measured.Laid.Report, measured.Quantities, [SummaryTables.Bid(measured.Bid)], new RunInfo(ProgramVersion.Text),
        input.Named.Templates!);

    /// <summary>A report with what the sheets add to it.</summary>
    public static ClearanceReport WithSheets(ClearanceReport report, SheetSet sheets, Input input) =>
        report with { Findings = [.. report.Findings, .. sheets.Findings, .. SheetSigns.Findings(sheets, input.SignSpot)] };

    /// <param name="also">Open formats asked for.</param>
    /// <param name="only">The files that are wanted; null for all.</param>
    /// <returns>The layout with the findings of the sheets added, the sheets, and the files in the order of <see cref="AllNames"/>.</returns>
    public static (CheckedLayout Laid, SheetSet Sheets, IReadOnlyList<OutputFile> Files) Make(
        Input input, MeasuredLayout measured, IReadOnlyList<ExchangeFormat> also, StageDisplay display, IReadOnlyList<string>? only = null)
    {
        WallProject project = input.Project;
        (CheckedLayout laid, QuantityTable quantities, BidTable bid) = measured;
        FiniteNumber.Of(laid.Layout);
        var run = new RunInfo(ProgramVersion.Text);
        display.Stage("drawing sheets");
        SheetSet sheets = Compose(input, measured);
        ClearanceReport report = WithSheets(laid.Report, sheets, input);
        if (only is null or { Count: > 0 })
            display.Stage("writing files");
        var files = new ConcurrentDictionary<string, byte[]>();
        var review = new Lazy<IReadOnlyList<ReviewItem>>(() => PlanReview.Of(project, laid.Layout, report, quantities));
        bool IsWanted(string name) => only is null || only.Contains(name);
        void Write(string name, Action<Stream> write)
        {
            if (IsWanted(name))
                files[name] = Bytes(write);
        }
        Parallel.Invoke(
            () => Write(Pdf, s => PdfSheetWriter.Write(sheets, s)),
            () =>
            {
                // The workbook and its tables count the nails in the finished drawing once more.
                if (!IsWanted(Sheets) && !IsWanted(Workbook) && !IsWanted(Tables))
                    return;
                byte[] drawing = files[Sheets] = Bytes(s => DxfSheetWriter.Write(sheets, s));
                QuantityTable recounted = DrawingRecount.AddTo(quantities, drawing);
                Parallel.Invoke(
                    () => Write(Workbook, s => WorkbookWriter.Write(project, laid.Layout, report, recounted, bid, run, s, review.Value)),
                    () => Write(Tables, s => TableCsv.WriteZip(project, laid.Layout, report, recounted, bid, run, s)));
            },
            () => Write(CheckerFiles.Clashes, s => CheckerFiles.WriteClashes(project, laid.Layout, report, quantities, run, sheets.Templates.Language, s)),
            () => Write(CheckerFiles.PlanReview, s => CheckerFiles.WritePlanReview(project, review.Value, run, sheets.Templates.Language, s)),
            () => Write(Plan, s => DxfPlanWriter.Write(sheets, s)),
            () => Write(Nails, s => NailCsv.Write(project, laid.Layout, report, s)),
            () =>
            {
                if (!IsWanted(Findings) && !IsWanted(Review))
                    return;
                MeasuredLayout told = measured with { Laid = laid with { Report = report } };
                files[Findings] = FindingsOf(project, told);
                if (IsWanted(Review))
                    files[Review] = PageOf(project, told, files[Findings]);
            },
            () =>
            {
                foreach (ExchangeFile file in also.SelectMany(f => f.Files(new ExchangeInput(project, laid.Layout, report, quantities, run))))
                    files[file.Name] = file.Content;
            });
        return (laid with { Report = report }, sheets, [.. AllNames.Where(n => files.ContainsKey(n) && (IsWanted(n) || !Names.Contains(n))).Select(name => new OutputFile(name, files[name]))]);
    }

    /// <summary>findings.json of a measured layout, whose report holds the findings of the sheets.</summary>
    public static byte[] FindingsOf(WallProject project, MeasuredLayout measured) =>
        Bytes(s => FindingsJson.Write(project, measured.Laid.Layout, measured.Laid.Report, s, measured.Quantities.Effect));

    /// <summary>The review page of the same layout.</summary>
    public static byte[] PageOf(WallProject project, MeasuredLayout measured, byte[] findings)
    {
        var tables = new[] { SummaryTables.BySection(measured.Quantities), SummaryTables.Bid(measured.Bid) };
        return ReviewPage.Make(new ReviewInput(project, measured.Laid.Layout, measured.Laid.Report, tables, new RunInfo(ProgramVersion.Text)), findings);
    }

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
