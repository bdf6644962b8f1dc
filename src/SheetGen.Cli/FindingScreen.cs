using System.Globalization;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Cli;

/// <summary>Findings as lines of text.</summary>
public static class FindingScreen
{
    private const int MostErrorsShown = 10;

    /// <summary>Every finding, a line each.</summary>
    public static void PrintAll(ClearanceReport report, TextWriter writer)
    {
        foreach (Finding finding in report.Findings)
            writer.WriteLine(Line(finding));
    }

    /// <summary>The first errors, and how many more there are.</summary>
    public static void PrintErrors(ClearanceReport report, TextWriter writer)
    {
        List<Finding> errors = [.. report.Findings.Where(f => f.Severity == Severity.Error)];
        foreach (Finding finding in errors.Take(MostErrorsShown))
            writer.WriteLine(Line(finding));
        if (errors.Count > MostErrorsShown)
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"and {errors.Count - MostErrorsShown} more errors, all in findings.json"));
    }

    private static string Line(Finding finding) =>
        $"{ResultWords.Of(finding.Severity)} {finding.Code}: {finding.Message}";
}
