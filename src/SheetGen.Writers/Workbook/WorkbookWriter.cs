using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;

namespace SheetGen.Writers.Workbook;

/// <summary>
/// quantities.xlsx: bid quantities, all quantities, summary by section, nails, redirects, bars, grout, facing, drainage, lifts, test
/// nails, independent check and rates, with live formulas from a bid item down to the nail. The stored values are computed by the
/// take-off, not by the formulas. The same input gives the same bytes.
/// </summary>
public static class WorkbookWriter
{
    private const uint Tabloid = 3, A3 = 8;

    /// <summary>Writes the workbook to a stream and leaves it open.</summary>
    /// <param name="review">The plan review, for a sheet of its own; null for none.</param>
    public static void Write(
        WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, BidTable bid, RunInfo run, Stream stream,
        IReadOnlyList<ReviewItem>? review = null)
    {
        var input = new WorkbookInput(project, layout, report, quantities, bid, run) { Review = review ?? [] };
        WorkbookSheets sheets = WorkbookSheets.Make(input);
        SpreadsheetFile.Write(sheets.Sheets, sheets.Names, input.IsFeet ? Tabloid : A3, stream);
    }
}
