using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.Cli;

/// <summary>The files that tell a difference of two states.</summary>
public static class RevisionFiles
{
    private const string Workbook = "changes.xlsx", Pdf = "changes.pdf";

    public static IReadOnlyList<string> Names { get; } = [Workbook, Pdf];

    public static IReadOnlyList<OutputFile> Make(RevisionDifference difference, Input? @new, NailLayout? layout, SheetSet? sheets)
    {
        return [];
    }
}
