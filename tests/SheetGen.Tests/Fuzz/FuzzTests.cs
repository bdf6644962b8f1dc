using System.Diagnostics;
using System.Globalization;
using Xunit;

namespace SheetGen.Tests.Fuzz;

/// <summary>
/// Changed good files of every kind that the program reads: each gives a result, or faults with places in it, within 10 seconds of CPU time and 1 GB.
/// 2,000 inputs in a usual run; <c>SHEETGEN_FUZZ=1000000</c> in the environment sets another number, <c>SHEETGEN_FUZZ_SEED</c> the first seed, and
/// <c>SHEETGEN_FUZZ_REPORT</c> a file that counts and faults are added to.
/// </summary>
[Trait("Category", "Long")]
public sealed class FuzzTests
{
    private const double MostSeconds = 10;
    private const long MostBytes = 1_000_000_000;

    private static readonly string? Asked = Environment.GetEnvironmentVariable("SHEETGEN_FUZZ");
    private static readonly int Inputs = int.Parse(Asked ?? "2000", CultureInfo.InvariantCulture);
    private static readonly int FirstSeed = int.Parse(Environment.GetEnvironmentVariable("SHEETGEN_FUZZ_SEED") ?? "1", CultureInfo.InvariantCulture);

    [Fact]
    public void Every_unchanged_file_is_taken()
    {
        using var kinds = new FuzzKinds(layOut: false);
        foreach (FuzzKind kind in kinds.All)
        {
            for (int seed = 0; seed < 20; seed++)
            {
                var random = new Random(seed);
                Assert.True(kind.Try(new Mutator(random, idle: true), random), $"{kind.Name} {seed}");
            }
        }
    }

    [Fact]
    public void Every_changed_file_gives_a_result_or_faults_with_places()
    {
        // Layouts of random walls have tests of their own; a long run spends its time on readers.
        using var kinds = new FuzzKinds(layOut: Asked is null);
        FuzzKind[] round = [.. kinds.All.SelectMany(k => Enumerable.Repeat(k, k.Weight))];
        var counts = new SortedDictionary<string, (int Taken, int Refused)>(StringComparer.Ordinal);
        var faults = new List<string>();
        (double Most, string What) slowest = (0, ""), largest = (0, "");
        for (int i = 0; i < Inputs; i++)
        {
            int seed = FirstSeed + i;
            FuzzKind kind = round[seed % round.Length];
            string what = $"{kind.Name} {seed}";
            long before = GC.GetAllocatedBytesForCurrentThread();
            TimeSpan clock = Environment.CpuUsage.TotalTime;
            try
            {
                var random = new Random(seed);
                bool taken = kind.Try(new Mutator(random), random);
                (int Taken, int Refused) old = counts.GetValueOrDefault(kind.Name);
                counts[kind.Name] = taken ? (old.Taken + 1, old.Refused) : (old.Taken, old.Refused + 1);
            }
            catch (Exception e)
            {
                faults.Add($"{what}: {e}");
            }
            double seconds = (Environment.CpuUsage.TotalTime - clock).TotalSeconds, bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            slowest = seconds > slowest.Most ? (seconds, what) : slowest;
            largest = bytes > largest.Most ? (bytes, what) : largest;
            if (bytes > MostBytes)
                faults.Add($"{what} asked for {bytes / 1e6:0} MB");
            // In a usual run other tests spend the process's time too.
            if (Asked is not null && seconds > MostSeconds)
                faults.Add($"{what} took {seconds:0.0} s");
        }
        string report = FormattableString.Invariant($"{Inputs} inputs from seed {FirstSeed}: {string.Join(", ", counts.Select(c => $"{c.Key} {c.Value.Taken} taken {c.Value.Refused} refused"))}; slowest {slowest.Most:0.00} s ({slowest.What}), most memory asked for {largest.Most / 1e6:0} MB ({largest.What}), peak of the process {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB, faults {faults.Count}");
        TestContext.Current.TestOutputHelper?.WriteLine(report);
        if (Environment.GetEnvironmentVariable("SHEETGEN_FUZZ_REPORT") is { } file)
            File.AppendAllLines(file, [report, .. faults]);
        Assert.True(faults.Count == 0, string.Join('\n', faults.Take(20)));
        Assert.Equal(kinds.All.Select(k => k.Name).Order(StringComparer.Ordinal), counts.Keys);
        Assert.All(counts, c => Assert.True(c.Value.Taken > 0 && c.Value.Refused > 0, $"{c.Key} was never taken or never refused"));
    }
}
