namespace SheetGen.Model.Results;

/// <summary>What the checker says of a finished layout.</summary>
/// <param name="Findings">All findings in a stable order.</param>
/// <param name="Nails">Clear distance and margins by mark.</param>
public sealed record ClearanceReport(IReadOnlyList<Finding> Findings, IReadOnlyDictionary<string, NailClearance> Nails)
{
    public bool HasErrors => Findings.Any(f => f.Severity == Problems.Severity.Error);
}
