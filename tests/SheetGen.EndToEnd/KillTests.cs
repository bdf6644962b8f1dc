using System.Diagnostics;
using System.Runtime.InteropServices;
using SheetGen.Cli;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>A run that is stopped, gently or not, leaves no mixed set, and the next run cleans up.</summary>
public sealed class KillTests
{
    private const int SigInt = 2, SigTerm = 15;

    private static readonly string[] Results = [.. OutputSet.Names.Order(StringComparer.Ordinal)];

    /// <summary>
    /// Kills, half at random moments of the run, half while files are put in place of others: 8, or 200 with SHEETGEN_LONG=1. OutputFaultTests end the
    /// process at each operation of the swap.
    /// </summary>
    [Fact]
    public void Killed_at_any_moment()
    {
        int kills = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 200 : 8, inside = 0, old = 0, made = 0;
        using var temp = new TempFolder();
        string output = temp.File("out"), staging = Path.Combine(output, ".sheetgen-new");
        string[] build = ["build", Repository.DemoFile("quarry-lane"), "--out", output];
        double whole, swap;
        using (Process process = CliRun.Start(null, null, build))
        {
            Stopwatch clock = Stopwatch.StartNew();
            Await(() => Directory.Exists(staging), process);
            double before = clock.Elapsed.TotalMilliseconds;
            Await(() => !Directory.Exists(staging), process);
            swap = clock.Elapsed.TotalMilliseconds - before;
            process.WaitForExit();
            whole = clock.Elapsed.TotalMilliseconds;
            Assert.Equal(0, process.ExitCode);
        }
        var random = new Random(14);
        for (int i = 0; i < kills; i++)
        {
            if (i % 4 < 2 && Directory.Exists(output))
                Directory.Delete(output, recursive: true);
            bool hadSet = Results.All(n => File.Exists(Path.Combine(output, n)));
            using (Process process = CliRun.Start(null, null, build))
            {
                if (i % 2 == 0)
                    Thread.Sleep((int)(whole * random.NextDouble()));
                else
                {
                    Await(() => Directory.Exists(staging), process);
                    Stopwatch clock = Stopwatch.StartNew();
                    double moment = swap * random.NextDouble();
                    Await(() => clock.Elapsed.TotalMilliseconds > moment, process);
                }
                process.Kill();
                process.WaitForExit();
            }
            inside += Directory.Exists(staging) || File.Exists(Path.Combine(output, ".sheetgen-lock")) ? 1 : 0;
            string[] shown = Directory.Exists(output) ? [.. Results.Where(n => File.Exists(Path.Combine(output, n)))] : [];
            Assert.True(shown.Length == Results.Length || (!hadSet && shown.Length == 0), string.Join(' ', shown));
            (old, made) = shown.Length == 0 ? (old + 1, made) : (old, made + 1);
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{kills} kills, {inside} of them while files were written or put in place; nothing {old}, a whole set {made}");
        Assert.True(kills < 100 || inside >= kills / 10, $"only {inside} kills came while files were written or put in place");
        Assert.Equal(0, CliRun.Of(build).Code);
        Assert.Equal(["out"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName));
        Assert.Equal(Results, temp.Listing("out"));
    }

    /// <summary>Looks again and again without sleeping: what is waited for lasts milliseconds.</summary>
    private static void Await(Func<bool> there, Process process)
    {
        while (!there() && !process.HasExited)
            Thread.SpinWait(200);
    }

    [Theory]
    [InlineData(SigInt, 300)]
    [InlineData(SigInt, 900)]
    [InlineData(SigTerm, 600)]
    public void Interrupted_leaves_nothing_or_all(int signal, int milliseconds)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no such signals there");
        using var temp = new TempFolder();
        using Process process = CliRun.Start(null, null, "build", Repository.DemoFile("heron-street-bridge"), "--out", temp.File("out"));
        Thread.Sleep(milliseconds);
        Assert.Equal(0, Kill(process.Id, signal));
        process.WaitForExit();
        string[] left = [.. Directory.GetFileSystemEntries(temp.Path).Select(p => Path.GetFileName(p)!)];
        if (left.Length > 0)
        {
            Assert.Equal(["out"], left);
            Assert.Equal(Results, temp.Listing("out"));
        }
        Assert.DoesNotContain("   at ", process.StandardError.ReadToEnd(), StringComparison.Ordinal);
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    private static extern int Kill(int process, int signal);
}
