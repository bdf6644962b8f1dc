using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Clearance;

/// <summary>Turns errors that the engineer has accepted in the project file into accepted findings, printed as such.</summary>
internal static class Accepting
{
    public static IReadOnlyList<Finding> Apply(WallProject project, IReadOnlyList<Finding> findings)
    {
        if (project.Acceptances.Count == 0)
            return findings;
        var result = new List<Finding>(findings.Count);
        foreach (Finding finding in findings)
        {
            Acceptance? by = finding.Severity == Severity.Error
                ? project.Acceptances.FirstOrDefault(a => Covers(a, finding))
                : null;
            result.Add(by is null ? finding : finding with
            {
                Severity = Severity.Accepted,
                AcceptedBy = by,
                Message = $"{finding.Message} (accepted by {by.By}: {by.Reason.TrimEnd('.')})",
            });
        }
        return result;
    }

    /// <summary>Everything that the acceptance states must fit; all nails of a finding must be named where it names any.</summary>
    private static bool Covers(Acceptance accepted, Finding finding)
    {
        if (accepted.Nails.Count == 0 && accepted.Obstruction is null && accepted.Start is null && accepted.End is null)
            return false;
        if (accepted.Code is not null && accepted.Code != finding.Code)
            return false;
        if (accepted.Wall is not null && accepted.Wall != finding.Wall?.Name)
            return false;
        if (accepted.Obstruction is not null && accepted.Obstruction != finding.Obstruction)
            return false;
        if (accepted.Nails.Count > 0 && (finding.Nails.Count == 0 || !NamesAll(accepted, finding)))
            return false;
        return IsWithin(accepted, finding);
    }

    private static bool NamesAll(Acceptance accepted, Finding finding) =>
        accepted.Nails.Count == 1 ? finding.Nails.Contains(accepted.Nails[0]) : finding.Nails.All(accepted.Nails.Contains);

    private static bool IsWithin(Acceptance accepted, Finding finding)
    {
        if (accepted.Start is null && accepted.End is null)
            return true;
        if (finding.Station is not { } station || finding.Wall is not { } wall)
            return false;
        Along from = wall.LayoutLine.AlongOf(new Station(station)), to = wall.LayoutLine.AlongOf(new Station(finding.ToStation ?? station));
        return from.Number >= (accepted.Start ?? double.NegativeInfinity) && to.Number <= (accepted.End ?? double.PositiveInfinity);
    }
}
