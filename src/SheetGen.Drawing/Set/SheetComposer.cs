using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>Composes the whole sheet set.</summary>
public static class SheetComposer
{
    /// <summary>The sheets of a project.</summary>
    /// <param name="tables">Further tables for the table sheets, such as bid quantities; the summary by section is drawn already.</param>
    public static SheetSet Compose(
        WallProject project, NailLayout layout, ClearanceReport report, QuantityTable quantities, IReadOnlyList<TableData> tables,
        RunInfo run, DrawingTemplates templates)
    {
        var context = new DrawingContext(project, layout, report, quantities, tables, run, templates);
        var findings = new List<Finding>();
        SheetSize size = SizeOf(context, findings);
        var frame = new SheetFrame(context, size);
        findings.AddRange(FrameFindings(frame, size));
        if (project.Sheets.IsForHalfSize && !SheetFrame.IsForHalfSize(context, size))
            findings.Add(Warning($"sheets {size.Name} are too small to be issued at half size: half_size is not taken; choose ANSI D, ARCH D, ISO A1 or larger"));
        Box area = frame.Area;
        context = context with { Templates = templates.WithTextsTimes(TextFactor(context, size)) };
        ElevationPlan elevations = ElevationPlan.Make(context, area);
        findings.AddRange(elevations.Findings);
        SheetScale scale = elevations.Scale;
        DrawnSet drawn = DrawnSet.Draw(context, area, elevations);
        IReadOnlyList<(string Name, string Title)> index = drawn.Sheets.Index;
        int front = drawn.Sheets.Front.Count;
        findings.AddRange(frame.CutShort([.. index.Select(i => i.Title)]).Select(f => Warning($"the title block has no room for all of \"{f}\": it is cut short")));
        SheetContent all = SheetContent.Together([.. drawn.Contents.Select(d => d.Content)]);
        findings.AddRange(all.Findings);
        Primitive[] model = [.. drawn.ModelLines, .. all.Model];
        string[] marked = [.. model.OfType<BlockReference>().Where(b => b.Shown?.Tag == NailSymbols.Mark).Select(b => b.Nail!)];
        if (marked.Length != layout.Nails.Count || !layout.Nails.Select(n => n.Mark).ToHashSet().SetEquals(marked))
            throw new InvalidOperationException("the marks drawn are not those of the nails");
        PlanFile planFile = PlanFile.Draw(context, drawn.PlanScales.Append(scale).MaxBy(s => s.Value));
        findings.AddRange(planFile.Findings);
        return new SheetSet
        {
            Unit = project.Unit,
            Title = project.Info.Title,
            Number = project.Info.Number,
            Date = project.Sheets.Date,
            InputHash = project.InputHash,
            Version = run.Version,
            Templates = context.Templates,
            Blocks = [.. NailSymbols.All.Where(b => model.OfType<BlockReference>().Any(r => r.Block == b.Name)), frame.Block(), .. all.Blocks],
            DimensionStyles = DimensionStyles.Of(context, [.. model, .. planFile.Lines], [scale, .. drawn.Sheets.SectionScales], [.. drawn.PlanScales, scale]),
            Model = model,
            Sheets = [.. drawn.Contents.Select((d, i) => new Sheet(
                index[i].Name, index[i].Title, size.Name, size.Width, size.Height, d.Content.Viewports,
                [frame.Reference(index[i].Name, drawn.Contents.Count, index[i].Title, d.Scale), .. d.Content.Paper])
            {
                IsView = i >= front && i < front + drawn.Sheets.Views.Count,
            })],
            Plan = planFile.Lines,
            Findings = findings,
        };
    }

    private static Finding Warning(string message) => new() { Code = FindingCode.Sheet, Severity = Severity.Warning, Message = message };

    private static IEnumerable<Finding> FrameFindings(SheetFrame frame, SheetSize size)
    {
        if (frame.IsTooSmall)
            yield return Warning($"the title block drawing is larger than a sheet {size.Name}: the program's own is drawn");
        if (frame.Missing.Count > 0)
        {
            yield return Warning("the title block drawing has no field " + string.Join(", ", frame.Missing)
                + ": its sheets do not say it; add attribute definitions with these tags (docs/own-title-block.md)");
        }
    }

    /// <summary>Factor on the texts of the drawing: larger sheets carry larger letters, and sheets for half size the twofold of the least height.</summary>
    private static double TextFactor(DrawingContext context, SheetSize size) => SheetFrame.IsForHalfSize(context, size)
        ? Math.Max(size.TextFactor, 2 * LeastLetters / context.Templates.Texts.Values.Min(t => t.Height))
        : size.TextFactor;

    /// <summary>Least height of letters at the size of issue, mm: 3/32 in.</summary>
    private const double LeastLetters = 25.4 * 3 / 32;

    private static SheetSize SizeOf(DrawingContext context, List<Finding> findings)
    {
        string usual = context.Project.Unit == LengthUnit.Metre ? "ISO A1" : "ANSI D";
        string wanted = context.Project.Sheets.Size ?? usual;
        if (context.Templates.SizeNamed(wanted) is SheetSize named)
            return named;
        findings.Add(Warning($"no sheet size is named \"{wanted}\": {usual} taken"));
        return context.Templates.SizeNamed(usual) ?? context.Templates.Sizes[0];
    }
}
