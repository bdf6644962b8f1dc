using SheetGen.Model.Problems;

namespace SheetGen.Model.Results;

/// <summary>What the checker says of a finished layout.</summary>
/// <param name="Findings">All findings in a stable order.</param>
/// <param name="Nails">Clear distance and margins by mark.</param>
public sealed record ClearanceReport(IReadOnlyList<Finding> Findings, IReadOnlyDictionary<string, NailClearance> Nails)
{
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <summary>Marks of the nails without a clear place whose every error the engineer has accepted in the project file: they may be drilled.</summary>
    public IReadOnlySet<string> AcceptedNails()
    {
        HashSet<string> open = [.. Findings.Where(f => f.Severity == Severity.Error).SelectMany(f => f.Nails)];
        return Findings.Where(f => f.Severity == Severity.Accepted && f.Code == FindingCode.Unresolved).SelectMany(f => f.Nails).Where(n => !open.Contains(n)).ToHashSet();
    }
}
