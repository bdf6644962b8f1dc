using SheetGen.Drawing.Composing;
using SheetGen.Drawing.Sheets;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Json;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Workbook;

namespace SheetGen.Cli;

/// <summary>Measures and draws a checked layout, and makes all output files in memory.</summary>
public static class OutputSet
{
    private const string Sheets = "sheets.dxf", Plan = "plan.dxf", Pdf = "sheets.pdf", Workbook = "quantities.xlsx", Nails = "nails.csv",
        Findings = "findings.json", Tables = "tables.zip";

    /// <summary>Every file name that this program writes.</summary>
    public static IReadOnlyList<string> Names { get; } = [Sheets, Plan, Pdf, Workbook, Nails, Findings, Tables];

    /// <returns>The layout with the findings of the sheets added, and the files in the order of <see cref="Names"/>.</returns>
    public static (CheckedLayout Laid, IReadOnlyList<OutputFile> Files) Make(Input input, CheckedLayout laid, StageDisplay display)
    {
        WallProject project = input.Project;
        display.Stage("measuring quantities");
        QuantityTable quantities = TakeOff.Measure(project, laid.Layout);
        BidTable bid = BidQuantities.Make(quantities, input.Named.PayItems!, project.Rates);
        var run = new RunInfo(ProgramVersion.Text);
        display.Stage("drawing sheets");
        SheetSet sheets = SheetComposer.Compose(
            project, laid.Layout, laid.Report, quantities, [SummaryTables.Bid(bid)], run, input.Named.Templates!);
        ClearanceReport report = laid.Report with { Findings = [.. laid.Report.Findings, .. sheets.Findings] };
        display.Stage("writing files");
        OutputFile drawing = Write(Sheets, s => DxfSheetWriter.Write(sheets, s));
        quantities = DrawingRecount.AddTo(quantities, drawing.Content);
        (string Name, Action<Stream> Write)[] writers =
        [
            (Plan, s => DxfPlanWriter.Write(sheets, s)),
            (Pdf, s => PdfSheetWriter.Write(sheets, s)),
            (Workbook, s => WorkbookWriter.Write(project, laid.Layout, report, quantities, bid, run, s)),
            (Nails, s => NailCsv.Write(project, laid.Layout, report, s)),
            (Findings, s => FindingsJson.Write(project, laid.Layout, report, s)),
            (Tables, s => TableCsv.WriteZip(project, laid.Layout, report, quantities, bid, run, s)),
        ];
        var files = new OutputFile[writers.Length];
        Parallel.For(0, writers.Length, i => files[i] = Write(writers[i].Name, writers[i].Write));
        return (laid with { Report = report }, [drawing, .. files]);
    }

    private static OutputFile Write(string name, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new OutputFile(name, stream.ToArray());
    }
}
