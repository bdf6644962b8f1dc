using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Advice;

/// <summary>What a person should know of a finished layout although no rule is broken.</summary>
public static class LayoutAdvice
{
    /// <summary>Findings of severity notice and warning, in the order of walls and sections, at last where the search was cut short.</summary>
    public static IReadOnlyList<Finding> Of(WallProject project, NailLayout layout) =>
        [.. PartRowAdvice.Of(project, layout), .. BelowGradeAdvice.Of(project, layout), .. CutShortAdvice.Of(layout)];
}
