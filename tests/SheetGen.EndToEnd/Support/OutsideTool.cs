using System.Diagnostics;
using Xunit;

namespace SheetGen.EndToEnd.Support;

/// <summary>
/// Programs that we did not write, as readers of our files. Where one is missing the test is skipped with a message; with CI=true in the
/// environment it fails, so that a skip cannot hide.
/// </summary>
internal static class OutsideTool
{
    /// <summary>The system's own Python, where the distribution's packages are.</summary>
    public const string Python = "/usr/bin/python3";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Fails or skips where the Python module is missing.</summary>
    public static void NeedModule(string module)
    {
        if (!File.Exists(Python) || Run(Python, null, "-c", "import " + module).Code != 0)
            Missing("the Python module " + module);
    }

    /// <summary>Fails or skips where the program is missing.</summary>
    public static void Need(string program)
    {
        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        if (!folders.Any(f => File.Exists(Path.Combine(f, program))))
            Missing(program);
    }

    public static (int Code, string Out, string Error) Run(string program, string? folder, params string[] arguments)
    {
        var info = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder ?? "",
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        info.Environment["QT_QPA_PLATFORM"] = "offscreen";
        info.Environment["LC_ALL"] = "C.UTF-8";
        using Process process = Process.Start(info)!;
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException(program + " did not end");
        }
        return (process.ExitCode, output.Result, error.Result);
    }

    /// <summary>Fails or skips the test for something that is missing.</summary>
    public static void Missing(string what)
    {
        Assert.True(Environment.GetEnvironmentVariable("CI") != "true", what + " is missing");
        Assert.Skip(what + " is missing");
    }
}
