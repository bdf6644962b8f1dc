using SheetGen.Model.Problems;
using SheetGen.ProjectFile;

namespace SheetGen.Cli;

/// <summary>Problems on the error stream: a line each where it is piped, with the source line on a terminal, JSON where asked.</summary>
public static class ProblemScreen
{
    public static void Print(IReadOnlyList<Problem> problems, bool json, Screen screen)
    {
        if (problems.Count == 0)
            return;
        if (json)
        {
            screen.Error.WriteLine(ProblemPrinter.Json(problems));
            return;
        }
        var sources = new Dictionary<string, string?>();
        foreach (Problem problem in problems)
        {
            if (screen.Live && problem.Spot.Sheet is null && SourceOf(problem.Spot.File, sources) is { } text)
                screen.Error.Write(ProblemPrinter.WithSource(problem, text));
            else
                screen.Error.WriteLine(ProblemPrinter.Plain(problem));
        }
        int errors = problems.Count(p => p.Severity == Severity.Error);
        if (errors > 0)
            screen.Tell(FormattableString.Invariant($"{errors} {(errors == 1 ? "error" : "errors")}; nothing written"));
    }

    /// <summary>The text of a file, read once for all its problems.</summary>
    private static string? SourceOf(string file, Dictionary<string, string?> sources)
    {
        if (!sources.TryGetValue(file, out string? text))
            sources[file] = text = InputFile.Read(file, InputFile.MostText).Text(out _);
        return text;
    }
}
