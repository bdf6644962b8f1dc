using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Advice;

/// <summary>Where the search ended at its counts: a better layout may exist there.</summary>
internal static class CutShortAdvice
{
    public static IEnumerable<Finding> Of(NailLayout layout) => layout.CutShort.Select(c => new Finding
    {
        Code = FindingCode.Guidance,
        Severity = Severity.Notice,
        Wall = c.Wall,
        Station = c.Station,
        ToStation = c.ToStation,
        Message = c.Message,
    });
}
