using System.Diagnostics;
using System.Globalization;
using SheetGen.Layout.Clearance;
using SheetGen.Model.Geometry;

namespace SheetGen.Benchmarks;

/// <summary>
/// All pairs of nails under a limit: building the index, searching and deciding. Own search and peer take turns in each round, so that a
/// busy machine slows both alike; medians over the rounds, with the least and most.
/// </summary>
internal static class ClearanceBenchmark
{
    private const double Limit = 1.0;
    private const int Rounds = 9;

    public static int Run()
    {
        Print($"Pairs of holes with a clear distance under {Limit:0.0} ft: index, search and exact test; ms, median (least to most) of {Rounds} rounds");
        Print("| holes | pairs | first call | own, 1 thread | own, 2 threads | STRtree, same exact test | STRtree, quick look first | ratio, exact | ratio, quick |");
        Print("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (int count in (int[])[1_000, 10_000, 100_000])
            Compare(count);
        Memory(1_000_000);
        return 0;
    }

    private static void Compare(int count)
    {
        Hole[] holes = NailWalls.Make(count, 7);
        double first = Milliseconds(() => new HoleIndex(holes).PairsCloserThan(Limit));
        var own = new Timing();
        var ownTwo = new Timing();
        var peer = new Timing();
        var peerQuick = new Timing();
        for (int round = -3; round < Rounds; round++)
        {
            bool counts = round >= 0;
            own.Add(counts, Milliseconds(() => new HoleIndex(holes).PairsCloserThan(Limit)));
            peer.Add(counts, Milliseconds(() => PlanTree.Pairs(holes, Limit, quick: false)));
            ownTwo.Add(counts, Milliseconds(() => new HoleIndex(holes).PairsCloserThan(Limit, 2)));
            peerQuick.Add(counts, Milliseconds(() => PlanTree.Pairs(holes, Limit, quick: true)));
        }
        IReadOnlyList<HolePair> pairs = new HoleIndex(holes).PairsCloserThan(Limit);
        List<(int First, int Second)> others = PlanTree.Pairs(holes, Limit, quick: false);
        others.Sort();
        if (!pairs.Select(p => (p.First, p.Second)).SequenceEqual(others))
            throw new InvalidOperationException("the two pair sets differ");
        Print($"| {count:N0} | {pairs.Count:N0} | {first:0.0} | {own} | {ownTwo} | {peer} | {peerQuick} | "
            + $"{peer.Median / own.Median:0.0} | {peerQuick.Median / own.Median:0.0} |");
    }

    private static void Memory(int count)
    {
        long nothing = GC.GetTotalMemory(true);
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
            + $"the holes {(before - nothing) / 1e6:0} MB; peak of the whole process {process.PeakWorkingSet64 / 1e6:0} MB");
        GC.KeepAlive(index);
        GC.KeepAlive(holes);
    }

    private static double Milliseconds(Func<object> work)
    {
        var watch = Stopwatch.StartNew();
        GC.KeepAlive(work());
        return watch.Elapsed.TotalMilliseconds;
    }

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private static void Print(string text) => Console.WriteLine(text);

    private sealed class Timing
    {
        private readonly List<double> _times = [];

        public double Median => _times.Order().ElementAt(_times.Count / 2);

        public void Add(bool counts, double milliseconds)
        {
            if (counts)
                _times.Add(milliseconds);
        }

        public override string ToString() =>
            string.Create(CultureInfo.InvariantCulture, $"{Median:0.0} ({_times.Min():0.0} to {_times.Max():0.0})");
    }
}
