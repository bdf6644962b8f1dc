using SheetGen.Drawing.Set;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Nails without a clear place whose every error the engineer has accepted in the project file: they may be drilled, and the sheet says why.</summary>
public static class AcceptedNails
{
    private const string Words = "(accepted by ";

    /// <summary>Marks of the nails, each with who accepted it and why, as the finding says.</summary>
    public static IReadOnlyDictionary<string, string> Of(DrawingContext context)
    {
        HashSet<string> open = [.. context.Report.Findings.Where(f => f.Severity == Severity.Error).SelectMany(f => f.Nails)];
        return context.Report.Findings.Where(f => f.Severity == Severity.Accepted && f.Code == FindingCode.Unresolved)
            .SelectMany(f => f.Nails.Select(n => (Mark: n, Words: By(f.Message))))
            .Where(n => !open.Contains(n.Mark))
            .GroupBy(n => n.Mark).ToDictionary(g => g.Key, g => g.First().Words);
    }

    private static string By(string message) =>
        message.LastIndexOf(Words, StringComparison.Ordinal) is >= 0 and int at ? message[(at + 1)..].TrimEnd(')').ToUpperInvariant() : "ACCEPTED";
}
