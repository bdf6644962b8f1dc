using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
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
        int kills = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1" ? 200 : 8, inside = 0;
        var left = new Dictionary<string, int>();
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
        Assert.Equal(0, CliRun.Of("build", Variant(temp), "--out", temp.File("other")).Code);
        var sets = new Dictionary<string, string> { [Whole(output)] = "new", [Whole(temp.File("other"))] = "old" };
        Assert.Equal(2, sets.Count);
        var random = new Random(14);
        for (int i = 0; i < kills; i++)
        {
            // Half of the kills come where no set is there, half where the set of another wall is. What a kill left beside goes too: without
            // its folder a stand-in is refused, since it may hold files of others.
            foreach (string folder in Directory.GetDirectories(temp.Path).Where(f => Path.GetFileName(f) != "other"))
                Directory.Delete(folder, recursive: true);
            bool hadSet = i % 4 >= 2;
            if (hadSet)
                Copy(temp.File("other"), output);
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
            string shown = Whole(output);
            string set = shown.Length == 0 ? "nothing" : sets.GetValueOrDefault(shown, "a mixture");
            Assert.True(set == "new" || set == (hadSet ? "old" : "nothing"), $"kill {i} left {set}");
            left[set] = left.GetValueOrDefault(set) + 1;
            if (i % 8 == 7)
            {
                Assert.Equal(0, CliRun.Of(build).Code);
                Assert.Equal("new", sets[Whole(output)]);
                Assert.Equal(Results, temp.Listing("out"));
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{kills} kills, {inside} of them while files were written or put in place; left: {string.Join(", ", left.OrderBy(l => l.Key, StringComparer.Ordinal).Select(l => $"{l.Key} {l.Value}"))}");
        Assert.True(kills < 100 || inside >= kills / 10, $"only {inside} kills came while files were written or put in place");
        Assert.Equal(["other", "out", "wall.yaml"], Directory.GetFileSystemEntries(temp.Path).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal));
    }

    /// <summary>The same wall under another title, so that no file of its set is the same.</summary>
    private static string Variant(TempFolder temp)
    {
        string demo = File.ReadAllText(Repository.DemoFile("quarry-lane"));
        string title = demo.Split('\n').First(l => l.StartsWith("  title: ", StringComparison.Ordinal));
        File.WriteAllText(temp.File("wall.yaml"), demo.Replace(title, title + " again", StringComparison.Ordinal));
        return temp.File("wall.yaml");
    }

    /// <summary>One text for the results in a folder, names and content; empty where none is there.</summary>
    private static string Whole(string folder) => !Directory.Exists(folder) ? "" : string.Join(' ', Results.Where(n => File.Exists(Path.Combine(folder, n)))
        .Select(n => n + "=" + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(Path.Combine(folder, n))))));

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (string file in Directory.GetFiles(from))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
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
