using System.Diagnostics;
using System.Globalization;
using SheetGen.Layout.Clearance;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks;

/// <summary>All pairs of nails under a limit: building the index, searching and deciding. Median of several warm runs, and the first.</summary>
internal static class ClearanceBenchmark
{
    private const double Limit = 1.0;

    public static int Run()
    {
        Print("Pairs of holes with a clear distance under 1.0 ft; index, search and exact test; ms, median (least to most), one run");
        Print("| holes | pairs | first call | own, 1 thread | own, 2 threads | STRtree, 1 thread | STRtree / own, 1 thread |");
        Print("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (int count in (int[])[1_000, 10_000, 100_000])
            Compare(count);
        Memory(1_000_000);
        return 0;
    }

    private static void Compare(int count)
    {
        Hole[] holes = NailWalls.Make(count, 7);
        Timing first = Measure(1, () => new HoleIndex(holes).PairsCloserThan(Limit).Count);
        Timing one = Measure(9, () => new HoleIndex(holes).PairsCloserThan(Limit).Count);
        Timing two = Measure(9, () => new HoleIndex(holes).PairsCloserThan(Limit, 2).Count);
        PlanTree.Pairs(holes, Limit);
        Timing peer = Measure(5, () => PlanTree.Pairs(holes, Limit).Count);
        IReadOnlyList<HolePair> own = new HoleIndex(holes).PairsCloserThan(Limit);
        List<(int First, int Second)> other = PlanTree.Pairs(holes, Limit);
        other.Sort();
        if (!own.Select(p => (p.First, p.Second)).SequenceEqual(other))
            throw new InvalidOperationException("the two pair sets differ");
        Print($"| {count:N0} | {own.Count:N0} | {first.Median:0.0} | {one} | {two} | {peer} | {peer.Median / one.Median:0.0} |");
    }

    private static void Memory(int count)
    {
        Hole[] holes = NailWalls.Make(count, 7);
        long before = GC.GetTotalMemory(true);
        var watch = Stopwatch.StartNew();
        var index = new HoleIndex(holes);
        IReadOnlyList<HolePair> pairs = index.PairsCloserThan(Limit);
        double ms = watch.Elapsed.TotalMilliseconds;
        double kept = (GC.GetTotalMemory(true) - before) / 1e6;
        using var process = Process.GetCurrentProcess();
        Print("");
        Print($"{count:N0} holes: {pairs.Count:N0} pairs in {ms:0} ms on 1 thread; index and pairs keep {kept:0} MB, "
            + $"the holes {before / 1e6:0} MB; peak of the whole process {process.PeakWorkingSet64 / 1e6:0} MB");
        GC.KeepAlive(index);
        GC.KeepAlive(holes);
    }

    private static Timing Measure(int runs, Func<int> work)
    {
        var times = new double[runs];
        for (int i = 0; i < runs; i++)
        {
            var watch = Stopwatch.StartNew();
            work();
            times[i] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        return new Timing(times[runs / 2], times[0], times[^1]);
    }

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private static void Print(string text) => Console.WriteLine(text);

    private readonly record struct Timing(double Median, double Least, double Most)
    {
        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Median:0.0} ({Least:0.0} to {Most:0.0})");
    }
}
