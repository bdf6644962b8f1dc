using System.Diagnostics;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Plain text where no terminal is; no colour where NO_COLOR is set.</summary>
public sealed class TerminalTests
{
    [Fact]
    public void Piped_output_has_no_control_characters()
    {
        CliRun run = CliRun.Of("check", Repository.DemoFile("quarry-lane"));
        Assert.DoesNotContain(run.Out + run.Error, c => char.IsControl(c) && c is not ('\n' or '\r'));
    }

    [Fact]
    public void A_terminal_without_colour_gets_none()
    {
        string screen = OnTerminal("NO_COLOR=1 TERM=xterm-256color");
        Assert.Contains("production", screen, StringComparison.Ordinal);
        Assert.DoesNotMatch("\u001b\\[[0-9;]*[1-9][0-9;]*m", screen);
    }

    [Fact]
    public void A_dumb_terminal_gets_plain_text()
    {
        string screen = OnTerminal("TERM=dumb");
        Assert.Contains("production", screen, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', screen);
    }

    /// <summary>Runs a check with all streams on a terminal that the script program makes.</summary>
    private static string OnTerminal(string environment)
    {
        const string script = "/usr/bin/script";
        if (!File.Exists(script))
        {
            Assert.True(Environment.GetEnvironmentVariable("CI") != "true", script + " is missing");
            Assert.Skip(script + " is missing");
        }
        string command = $"env {environment} dotnet '{Repository.Program}' check '{Repository.DemoFile("quarry-lane")}'";
        var info = new ProcessStartInfo(script, ["-qec", command, "/dev/null"]) { RedirectStandardOutput = true, RedirectStandardInput = true };
        info.Environment.Remove("NO_COLOR");
        using Process process = Process.Start(info)!;
        process.StandardInput.Close();
        string screen = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return screen;
    }
}
