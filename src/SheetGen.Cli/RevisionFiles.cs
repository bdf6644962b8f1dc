using SheetGen.Drawing.Review;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Revisions;
using SheetGen.Writers.Pdf;
using SheetGen.Writers.Workbook;

namespace SheetGen.Cli;

/// <summary>The files that tell a difference of two states.</summary>
public static class RevisionFiles
{
    private const string Workbook = "changes.xlsx", Pdf = "changes.pdf";

    public static IReadOnlyList<string> Names { get; } = [Workbook, Pdf];

    /// <param name="project">The new state's project, for the outlines of its walls; null where only its results are known.</param>
    /// <param name="language">The words of the pages; null for English.</param>
    public static IReadOnlyList<OutputFile> Make(RevisionDifference difference, WallProject? project, Language? language)
    {
        ReviewInfo info = project is null
            ? new ReviewInfo(difference.New.Title, "", difference.New.Date, "", difference.Unit, ProgramVersion.Text, TemplateReader.Default())
            : ReviewInfo.Of(project, ProgramVersion.Text, language);
        return
        [
            OutputFile.Of(Workbook, s => RevisionWorkbook.Write(difference, s)),
            OutputFile.Of(Pdf, s => PdfSheetWriter.Write(RevisionPages.Compose(difference, info, project?.Walls ?? []), s)),
        ];
    }
}
