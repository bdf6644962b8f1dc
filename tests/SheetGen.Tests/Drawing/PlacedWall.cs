using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Advice;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.PayItems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;

namespace SheetGen.Tests.Drawing;

/// <summary>A project as the program itself places, checks and measures it, ready to draw.</summary>
internal static class PlacedWall
{
    public static DrawingContext Context(string yaml, string? language = null)
    {
        WallProject project = SampleLayout.Read(yaml);
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        return new(project, layout, Checker.Check(project, layout), SampleLayout.Measure(project, layout), [], new RunInfo("0.1.0"), TemplateReader.Default(null, null, language));
    }

    /// <summary>The same with every finding of a run and its bid table.</summary>
    public static DrawingContext Whole(string yaml, string? language = null)
    {
        DrawingContext placed = Context(yaml, language);
        PayItemSet items = PayItemFile.Read(PayItemFile.BuiltIn(placed.Project.PayItems)!, "pay", placed.Project.Unit, [])!;
        BidTable bid = TakeOff.Bid(placed.Quantities, items, placed.Project.Rates);
        return placed with
        {
            Tables = [SummaryTables.Bid(bid)],
            Report = placed.Report with
            {
                Findings =
                [
                    .. placed.Report.Findings, .. LayoutAdvice.Of(placed.Project, placed.Layout),
                    .. TakeOff.Findings(placed.Project, placed.Layout, placed.Quantities, bid),
                ],
            },
        };
    }

    /// <summary>The sheets of the same.</summary>
    public static SheetSet Sheets(DrawingContext of) => SheetComposer.Compose(of.Project, of.Layout, of.Report, of.Quantities, of.Tables, of.Run, of.Templates);
}
