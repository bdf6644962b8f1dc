using SheetGen.Drawing.Review;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Writers.Pdf;

namespace SheetGen.Cli;

/// <summary>What a checker hands on with a set: the clash report and the plan review.</summary>
public static class CheckerFiles
{
    public const string Clashes = "clashes.pdf", PlanReview = "plan-review.pdf";

    public static void WriteClashes(WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, RunInfo run, Language language, Stream stream)
    {
        ReviewInfo info = ReviewInfo.Of(project, run.Version, language);
        (IReadOnlyList<ClashPair> clashes, IReadOnlyList<ClashPair> closest) = ClashPairs.Of(project, layout);
        var context = new DrawingContext(project, layout, report, quantities, [], run, info.Templates);
        PdfSheetWriter.Write(ClashPages.Compose(context, info, clashes, closest), stream);
    }

    public static void WritePlanReview(WallProject project, IReadOnlyList<ReviewItem> review, RunInfo run, Language language, Stream stream) =>
        PdfSheetWriter.Write(PlanReviewPages.Compose(review, ReviewInfo.Of(project, run.Version, language)), stream);
}
