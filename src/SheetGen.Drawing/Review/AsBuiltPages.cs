using System.Globalization;
using SheetGen.Drawing.Sheets;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Review;

/// <summary>The as-built report as text and pages: progress, tolerances, findings, nails in trouble.</summary>
public static class AsBuiltPages
{
    public static SheetSet Compose(AsBuiltReport report, ReviewInfo info, string tolerances)
    {
        var book = new ReviewBook(info, ReviewPaper.Upright(info.Unit), "As-built report");
        book.Page("As built");
        book.Heading("Progress");
        foreach (string line in Progress(report, info.Unit))
            book.Paragraph(line);
        book.Heading("Tolerances");
        book.Paragraph(tolerances);
        if (report.Misses.Count == 0)
            book.Paragraph("Every drilled nail keeps them.");
        else
            book.Table([("Nail", 2), ("Not kept", 9)], report.Misses.Select(m => (IReadOnlyList<string>)[m.Mark, m.What]));
        book.Heading("Findings with what has been drilled");
        if (report.NewFindings.Count == 0)
            book.Paragraph("None that the plan does not have.");
        else
            book.Table([("Severity", 1.5), ("Code", 2), ("Finding", 9)], report.NewFindings.Select(f => (IReadOnlyList<string>)[ResultWords.Of(f.Severity), f.Code, f.Message]));
        if (report.Open.Count > 0)
        {
            book.Heading("Planned nails in trouble");
            book.Table([("Nail", 2), ("Because", 6), ("Could go to", 5)], report.Open.Select(o => (IReadOnlyList<string>)[o.Mark, o.Because, o.Could.Length > 0 ? o.Could : "no place found: the engineer decides"]));
        }
        return book.Set();
    }

    public static IEnumerable<string> Progress(AsBuiltReport r, LengthUnit unit)
    {
        string symbol = Lengths.Symbol(unit);
        yield return string.Create(CultureInfo.InvariantCulture, $"Production nails drilled: {r.DrilledProduction} of {r.PlannedProduction}");
        yield return string.Create(CultureInfo.InvariantCulture,
            $"Length drilled: {r.DrilledLength:#,##0.##} {symbol}; the plan of the same nails {r.PlannedLengthOfDrilled:#,##0.##} ({r.DrilledLength - r.PlannedLengthOfDrilled:+0.##;-0.##;0}); still to drill {r.PlannedLength - r.PlannedLengthOfDrilled:#,##0.##}");
        if (r.Grout > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"Grout placed: {r.Grout:#,##0.##} {symbol}3 into holes of {r.HoleVolumeOfGrouted:#,##0.##} {symbol}3 ({r.Grout / r.HoleVolumeOfGrouted:0%})");
    }
}
