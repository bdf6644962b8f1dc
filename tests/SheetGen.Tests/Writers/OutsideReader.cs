using System.Diagnostics;
using Xunit;

namespace SheetGen.Tests.Writers;

/// <summary>Runs a reader that is not ours. A missing one skips the test, but fails it on the build server.</summary>
internal static class OutsideReader
{
    public static string Run(string program, string folder, params string[] arguments)
    {
        string? path = File.Exists(program) ? program : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(d => Path.Combine(d, program)).FirstOrDefault(File.Exists);
        if (path is null)
        {
            Assert.False(Environment.GetEnvironmentVariable("CI") == "true", program + " is missing on the build server");
            Assert.Skip(program + " is not installed");
        }
        var start = new ProcessStartInfo(path, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException(program + " does not start");
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {output} {errors.Result}");
        return output;
    }
}
