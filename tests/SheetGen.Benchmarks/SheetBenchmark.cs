using System.Diagnostics;
using System.Globalization;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Tests.Drawing;
using SheetGen.Tests.Walls;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Pdf;

namespace SheetGen.Benchmarks;

/// <summary>
/// How the time of drawing grows with the wall: composing the sheets and writing sheets.dxf, plan.dxf and sheets.pdf, without the search. The layout is the
/// drawing tests' own, with nails of every state: 2 in 23 called out as noted, 1 as unresolved.
/// </summary>
internal static class SheetBenchmark
{
    private const int Rounds = 3;

    public static int Run(ulong seed)
    {
        Console.WriteLine("| nails asked | nails | sheets | compose, CPU s | DXF, CPU s | PDF, CPU s | whole, CPU s | wall-clock s | MB of files |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        double small = 0, large = 0;
        foreach (int nails in (int[])[300, 1000, 3000])
        {
            string text = RandomWall.Yaml(seed, new RandomWallOptions { Nails = nails * 3 / 2 });
            WallProject project = SampleLayout.Read(text);
            NailLayout layout = SampleLayout.Make(project);
            ClearanceReport report = Checker.Check(project, layout);
            QuantityTable quantities = TakeOff.Measure(project, layout);
            double[] best = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity];
            SheetSet set = null!;
            long bytes = 0;
            double elapsed = double.PositiveInfinity;
            for (int round = 0; round < Rounds; round++)
            {
                TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
                double Spent() => (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds;
                var clock = Stopwatch.StartNew();
                set = SheetComposer.Compose(project, layout, report, quantities, [], new RunInfo("0"), TemplateReader.Default());
                double composed = Spent();
                using var dxf = new MemoryStream();
                DxfSheetWriter.Write(set, dxf);
                DxfPlanWriter.Write(set, dxf);
                double drawn = Spent();
                using var pdf = new MemoryStream();
                PdfSheetWriter.Write(set, pdf);
                double whole = Spent();
                elapsed = Math.Min(elapsed, clock.Elapsed.TotalSeconds);
                bytes = dxf.Length + pdf.Length;
                best = [Math.Min(best[0], composed), Math.Min(best[1], drawn - composed), Math.Min(best[2], whole - drawn)];
            }
            (small, large) = (nails == 300 ? best.Sum() : small, best.Sum());
            double?[] figures = [layout.Nails.Count, set.Sheets.Count, best[0], best[1], best[2], best.Sum(), elapsed, bytes / 1e6];
            Console.WriteLine("| " + nails.ToString(CultureInfo.InvariantCulture) + " | " + string.Join(" | ", figures.Select(f => f?.ToString("#,0.##", CultureInfo.InvariantCulture))) + " |");
        }
        Console.WriteLine();
        Console.WriteLine(FormattableString.Invariant($"3,000 nails take {large / small:0.0} times as long as 300; peak of the process {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB"));
        return 0;
    }
}
