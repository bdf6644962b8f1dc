using SheetGen.Drawing.Set;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Nails without a clear place whose every error the engineer has accepted in the project file: they may be drilled, and the sheet says why.</summary>
public static class AcceptedNails
{
    /// <summary>True for a nail that may not be drilled: without a clear place, and not accepted.</summary>
    public static bool IsStopped(DrawingContext context, Nail nail) => nail.Status == NailStatus.Unresolved && !Of(context).Contains(nail.Mark);

    /// <summary>Marks of the nails.</summary>
    public static IReadOnlySet<string> Of(DrawingContext context)
    {
        HashSet<string> open = [.. context.Report.Findings.Where(f => f.Severity == Severity.Error).SelectMany(f => f.Nails)];
        return context.Report.Findings.Where(f => f.Severity == Severity.Accepted && f.Code == FindingCode.Unresolved)
            .SelectMany(f => f.Nails).Where(n => !open.Contains(n)).ToHashSet();
    }
}
