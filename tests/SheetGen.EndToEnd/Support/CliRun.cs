using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

namespace SheetGen.EndToEnd.Support;

/// <summary>A finished run of the program in a process of its own.</summary>
internal sealed partial record CliRun(int Code, string Out, string Error)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>The error stream without the stage lines, which a run writes only where the machine makes it slow.</summary>
    public string Problems => string.Join('\n', Error.Split('\n').Where(l => !StageLine().IsMatch(l)));

    public static CliRun Of(params string[] arguments) => With(null, null, arguments);

    /// <param name="folder">Folder that it runs in; null for the source tree's root.</param>
    /// <param name="environment">Variables that are set for it; null values take a variable away.</param>
    public static CliRun With(string? folder, IReadOnlyDictionary<string, string?>? environment, params string[] arguments)
    {
        using Process process = Start(folder, environment, arguments);
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"sheetgen {string.Join(' ', arguments)} did not end");
        }
        return new CliRun(process.ExitCode, output.Result, error.Result);
    }

    public static Process Start(string? folder, IReadOnlyDictionary<string, string?>? environment, params string[] arguments)
    {
        var info = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = folder ?? Repository.Root,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        info.ArgumentList.Add(Repository.Program);
        foreach (string argument in arguments)
            info.ArgumentList.Add(argument);
        foreach ((string name, string? value) in environment ?? new Dictionary<string, string?>())
        {
            if (value is null)
                info.Environment.Remove(name);
            else
                info.Environment[name] = value;
        }
        Process process = Process.Start(info)!;
        process.StandardInput.Close();
        return process;
    }

    [GeneratedRegex("^sheetgen: (choosing|placing|checking|measuring|drawing|writing|proving|[0-9]+ of [0-9]+ (walls|variants))\\b")]
    private static partial Regex StageLine();
}
