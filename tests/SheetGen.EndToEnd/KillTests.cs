using System.Diagnostics;
using System.Runtime.InteropServices;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>A run that is stopped, gently or not, leaves no mixed set, and the next run cleans up.</summary>
public sealed class KillTests
{
    private const int SigInt = 2, SigTerm = 15;

    [Theory]
    [InlineData(100)]
    [InlineData(400)]
    [InlineData(700)]
    [InlineData(1000)]
    public void Killed_at_any_moment(int milliseconds)
    {
        using var temp = new TempFolder();
        string[] build = ["build", Repository.DemoFile("quarry-lane"), "--out", temp.File("out")];
        using (Process process = CliRun.Start(null, null, build))
        {
            Thread.Sleep(milliseconds);
            process.Kill();
            process.WaitForExit();
        }
        if (Directory.Exists(temp.File("out")))
            Assert.Equal(7, temp.Listing("out").Count);
        Assert.Equal(0, CliRun.Of(build).Code);
        Assert.Equal(["out"], Directory.GetFileSystemEntries(temp.Path).Select(Path.GetFileName));
        Assert.Equal(7, temp.Listing("out").Count);
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
            Assert.Equal(7, temp.Listing("out").Count);
        }
        Assert.DoesNotContain("   at ", process.StandardError.ReadToEnd(), StringComparison.Ordinal);
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    private static extern int Kill(int process, int signal);
}
