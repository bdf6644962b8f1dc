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

    /// <summary>Kills at random moments of the run: 8, or 100 with SHEETGEN_LONG=1. OutputFaultTests end the process at each operation of the swap.</summary>
    [Fact]
    public void Killed_at_any_moment()
    {
        bool isLong = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1";
        using var temp = new TempFolder();
        string[] build = ["build", Repository.DemoFile("quarry-lane"), "--out", temp.File("out")];
        Stopwatch clock = Stopwatch.StartNew();
        Assert.Equal(0, CliRun.Of(build).Code);
        double whole = clock.Elapsed.TotalMilliseconds;
        var random = new Random(14);
        for (int i = 0; i < (isLong ? 100 : 8); i++)
        {
            if (i % 4 == 0 && Directory.Exists(temp.File("out")))
                Directory.Delete(temp.File("out"), recursive: true);
            bool isNew = !Directory.Exists(temp.File("out"));
            using (Process process = CliRun.Start(null, null, build))
            {
                Thread.Sleep((int)(whole * (i % 2 == 0 ? random.NextDouble() : 0.7 + 0.4 * random.NextDouble())));
                process.Kill();
                process.WaitForExit();
            }
            string[] shown = Directory.Exists(temp.File("out")) ? [.. Results.Where(n => File.Exists(temp.File("out/" + n)))] : [];
            Assert.True(shown.Length == Results.Length || (isNew && shown.Length == 0), string.Join(' ', shown));
        }
        Assert.Equal(0, CliRun.Of(build).Code);
        Assert.Equal(["out"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName));
        Assert.Equal(Results, temp.Listing("out"));
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
