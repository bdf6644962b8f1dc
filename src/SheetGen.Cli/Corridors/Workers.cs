using System.Diagnostics;
using System.Globalization;
using System.Reflection;

namespace SheetGen.Cli.Corridors;

/// <summary>
/// Runs pieces of work in several processes of this program, each given a handful of names at a time: <c>--only NAME</c>, files in and files
/// out. A process that breaks takes no other piece with it: what it left is given out again one by one.
/// </summary>
/// <param name="command">The command line without <c>--only</c>.</param>
internal sealed class Workers(IReadOnlyList<string> command, int count, Progress progress)
{
    private const int MostAtOnce = 25;

    /// <summary>Option that a worker gets: it ends when its standard input does, and that does when this process ends, however it ends.</summary>
    public const string EndsWithParent = "--ends-with-parent";

    /// <summary>Does all pieces.</summary>
    /// <param name="broken">Called for a piece that ended its process twice, with the exit code.</param>
    public void Do(IReadOnlyList<string> names, Action<string, int> broken)
    {
        var waiting = new Queue<string>(names);
        var alone = new Queue<string>();
        Thread[] threads = [.. Enumerable.Range(0, Math.Min(count, names.Count)).Select(_ => new Thread(Work))];
        foreach (Thread thread in threads)
            thread.Start();
        foreach (Thread thread in threads)
            thread.Join();

        void Work()
        {
            while (Next() is { Length: > 0 } chunk)
            {
                (HashSet<string> done, int code) = RunOne(chunk);
                string[] left = [.. chunk.Where(n => !done.Contains(n))];
                if (left.Length == 1 && chunk.Length == 1)
                {
                    broken(left[0], code);
                    progress.Done();
                    continue;
                }
                lock (waiting)
                {
                    foreach (string name in left)
                        alone.Enqueue(name);
                }
            }
        }

        // Large handfuls first, for a process costs its start; small ones at the end, so that none is still at work when all others are done.
        string[] Next()
        {
            lock (waiting)
            {
                if (alone.TryDequeue(out string? one))
                    return [one];
                int size = Math.Min(waiting.Count, Math.Clamp(waiting.Count / (2 * count), 1, MostAtOnce));
                return [.. Enumerable.Range(0, size).Select(_ => waiting.Dequeue())];
            }
        }
    }

    private (HashSet<string> Done, int Code) RunOne(string[] names)
    {
        var done = new HashSet<string>();
        var known = names.ToHashSet();
        using Process process = Start(names);
        process.ErrorDataReceived += (_, e) =>
        {
            if (e.Data is { Length: > 0 } line)
                progress.Print(line, isError: true);
        };
        process.BeginErrorReadLine();
        while (process.StandardOutput.ReadLine() is { } line)
        {
            progress.Print(line);
            if (line.IndexOf(": ", StringComparison.Ordinal) is > 0 and int colon && known.Contains(line[..colon]) && done.Add(line[..colon]))
                progress.Done();
        }
        process.WaitForExit();
        return (done, process.ExitCode);
    }

    private Process Start(string[] names)
    {
        (string program, string[] first) = Self();
        var info = new ProcessStartInfo(program)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        foreach (string argument in first.Concat(command).Append(EndsWithParent).Concat(names.SelectMany(n => new[] { "--only", n })))
            info.ArgumentList.Add(argument);
        // Each worker takes its share of the processors; what it gives back would only wait.
        info.Environment["DOTNET_PROCESSOR_COUNT"] = Math.Max(1, Environment.ProcessorCount / count).ToString("X", CultureInfo.InvariantCulture);
        return Process.Start(info)!;
    }

    /// <summary>How this program is started: by its own executable, or by the runtime's and its assembly.</summary>
    private static (string Program, string[] First) Self()
    {
        string assembly = Path.Combine(AppContext.BaseDirectory, typeof(Workers).Assembly.GetName().Name + ".dll");
        bool isOwn = Assembly.GetEntryAssembly() == typeof(Workers).Assembly;
        string? process = Environment.ProcessPath;
        bool isRuntime = process is not null && Path.GetFileNameWithoutExtension(process).Equals("dotnet", StringComparison.OrdinalIgnoreCase);
        return isOwn && process is not null && !isRuntime ? (process, []) : (isRuntime ? process! : "dotnet", [assembly]);
    }
}
