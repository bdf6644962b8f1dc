using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Clearance;

/// <summary>Where the rows of a finished layout leave the face uncovered, and where the face is too low for any nail.</summary>
internal static class CoverFindings
{
    public static IReadOnlyList<Finding> Of(WallProject project, NailLayout layout) => [];
}
