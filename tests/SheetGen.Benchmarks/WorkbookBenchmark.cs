using System.Diagnostics;
using System.IO.Compression;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Quantities;
using SheetGen.Writers.Workbook;

namespace SheetGen.Benchmarks;

/// <summary>
/// Time and memory of the workbook of a wall with ten thousand nails in twenty sections, beside the time that deflating the same parts takes alone:
/// no writer of such a file can be faster than that.
/// </summary>
internal static class WorkbookBenchmark
{
    private const int Rounds = 7;

    public static int Run()
    {
        (WallProject project, NailLayout layout) = new TestWall
        {
            End = 12500,
            Elements = [new LayoutElement.Tangent(12500)],
            Limits = [.. Enumerable.Range(1, 19).Select(i => i * 625.0)],
        }.Make();
        Console.WriteLine($"nails {layout.Nails.Count}");
        Console.WriteLine($"peak memory before, the layout in it: {Peak()} MB");
        Console.WriteLine("| | take-off, ms | workbook, ms | of this the processor, ms | deflate alone, ms | ratio | tables as CSV, ms | peak memory, MB |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        for (int round = 0; round <= Rounds; round++)
        {
            var (table, measure) = Timed(() => TakeOff.Measure(project, layout));
            PayItemSet items = PayItemFile.Read(PayItemFile.BuiltIn("generic")!, "generic", project.Unit, new List<Problem>())!;
            BidTable bid = BidQuantities.Make(table, items, project.Rates);
            ClearanceReport report = TestWall.Report(layout);
            var run = new RunInfo("0");
            double before = Processor();
            var (book, write) = Timed(() =>
            {
                using var stream = new MemoryStream();
                WorkbookWriter.Write(project, layout, report, table, bid, run, stream);
                return stream.ToArray();
            });
            double processor = Processor() - before;
            long peak = Peak();
            double deflate = Deflate(book);
            var (_, csv) = Timed(() =>
            {
                TableCsv.WriteZip(project, layout, report, table, bid, run, Stream.Null);
                return 0;
            });
            string name = round == 0 ? "first" : FormattableString.Invariant($"round {round}");
            Console.WriteLine(FormattableString.Invariant($"| {name} | {measure:0} | {write:0} | {processor:0} | {deflate:0} | {write / deflate:0.0} | {csv:0} | {peak} |"));
        }
        return 0;
    }

    private static double Deflate(byte[] book)
    {
        var parts = new List<byte[]>();
        using (var zip = new ZipArchive(new MemoryStream(book), ZipArchiveMode.Read))
        {
            foreach (ZipArchiveEntry entry in zip.Entries)
            {
                using var part = new MemoryStream();
                using Stream stream = entry.Open();
                stream.CopyTo(part);
                parts.Add(part.ToArray());
            }
        }
        return Timed(() =>
        {
            using var target = new ZipArchive(new MemoryStream(), ZipArchiveMode.Create);
            for (int i = 0; i < parts.Count; i++)
            {
                using Stream stream = target.CreateEntry(FormattableString.Invariant($"{i}"), CompressionLevel.Optimal).Open();
                stream.Write(parts[i]);
            }
            return 0;
        }).Milliseconds;
    }

    private static (T Value, double Milliseconds) Timed<T>(Func<T> work)
    {
        long start = Stopwatch.GetTimestamp();
        T value = work();
        return (value, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }

    private static double Processor()
    {
        using Process process = Process.GetCurrentProcess();
        return process.TotalProcessorTime.TotalMilliseconds;
    }

    private static long Peak()
    {
        using Process process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64 >> 20;
    }
}
