using System.Diagnostics;
using System.Runtime.InteropServices;
using SheetGen.Cli;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Streams that are closed or full, signals, paths that cannot be, and what a file tries to send to the terminal.</summary>
public sealed class StreamTests
{
    private const int SigInt = 2, SigTerm = 15, SigHup = 1;

    [Theory]
    [InlineData(">/dev/full", "standard output could not be written")]
    [InlineData(">&-", "standard output could not be written")]
    [InlineData("2>&- >/dev/null", "")]
    [InlineData("2>/dev/full >/dev/full", "")]
    public void A_closed_or_full_stream_changes_no_exit_code(string redirect, string said)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no such shell there");
        using var temp = new TempFolder();
        foreach (string command in new[] { $"check '{Repository.DemoFile("quarry-lane")}'", $"build '{Repository.DemoFile("quarry-lane")}' --out out" })
        {
            (int code, _, string error) = OutsideTool.Run("/bin/sh", temp.Path, "-c", $"dotnet '{Repository.Program}' {command} {redirect}");
            Assert.Equal(0, code);
            Assert.Contains(said, error, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        }
        Assert.Equal(OutputSet.Names.Order(StringComparer.Ordinal), temp.Listing("out"));
    }

    [Fact]
    public void A_folder_that_is_gone_says_so()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "a folder in use stays there");
        using var temp = new TempFolder();
        (int code, _, string error) = OutsideTool.Run(
            "/bin/sh", temp.Path, "-c", $"mkdir gone && cd gone && rmdir ../gone && dotnet '{Repository.Program}' build '{Repository.DemoFile("quarry-lane")}' --out out");
        Assert.Equal(2, code);
        Assert.Contains("the folder that this runs in is gone", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Long_names_are_taken_or_refused_in_words()
    {
        using var temp = new TempFolder();
        string name = new('n', 250);
        Assert.Equal(0, CliRun.With(temp.Path, null, "build", Repository.DemoFile("quarry-lane"), "--out", name).Code);
        Assert.Equal(OutputSet.Names.Order(StringComparer.Ordinal), temp.Listing(name));
        CliRun refused = CliRun.With(temp.Path, null, "build", Repository.DemoFile("quarry-lane"), "--out", name + name);
        Assert.Equal(2, refused.Code);
        Assert.Contains("too long", refused.Error, StringComparison.Ordinal);
        Assert.Equal([name], Directory.GetFileSystemEntries(temp.Path).Select(p => Path.GetFileName(p)));
    }

    [Theory]
    [InlineData(SigInt, 130)]
    [InlineData(SigTerm, 143)]
    [InlineData(SigHup, 129)]
    public void A_signal_gives_its_code_and_a_message_or_the_run_ends_by_itself(int signal, int code)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no such signals there");
        using var temp = new TempFolder();
        foreach (string command in new[] { "check", "build" })
        {
            string[] arguments = [command, Repository.DemoFile("heron-street-bridge"), .. command == "build" ? new[] { "--out", temp.File("out") } : []];
            using Process process = CliRun.Start(null, null, arguments);
            Thread.Sleep(500);
            Assert.Equal(0, Kill(process.Id, signal));
            string error = process.StandardError.ReadToEnd();
            process.WaitForExit();
            // Before the program's own code runs, the system's answer is the end without a message; after its work is done, its own code.
            Assert.Contains(process.ExitCode, new[] { code, 0, 1 });
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
            if (process.ExitCode == code && error.Length > 0)
                Assert.Contains("stopped by a signal; nothing written", error, StringComparison.Ordinal);
            if (process.ExitCode == code)
                Assert.False(Directory.Exists(temp.File("out")));
        }
    }

    [Fact]
    public void Signs_that_steer_a_terminal_never_reach_it()
    {
        using var temp = new TempFolder();
        const string odd = "a\u202e\u2066\u001b[31m\u009b2J\u200f.yaml";
        File.WriteAllText(temp.File("odd.yaml"), "format: 1\nproject: {title: \"a\\u202E\\u2066b\", units: ft, x\\u202Ey: 1, \"k\\e[2J\": 2, zz: \"\\e]0;pwn\\a\"}\n");
        foreach (string[] arguments in new[] { ["check", "odd.yaml"], ["check", odd], ["build", "odd.yaml", "--out", odd], ["start", odd + "/\u0007"], new[] { odd } })
        {
            CliRun run = CliRun.With(temp.Path, null, arguments);
            Assert.All(run.Out + run.Error, c => Assert.True(
                c is '\n' or '\r' || (!char.IsControl(c) && char.GetUnicodeCategory(c) != System.Globalization.UnicodeCategory.Format), $"U+{(int)c:X4} came through"));
        }
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    private static extern int Kill(int process, int signal);
}
