using SheetGen.Drawing.Details;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
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
    /// <summary>The sheets of a project: planned first, then drawn.</summary>
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
        IReadOnlyList<ElevationStrip> strips = elevations.Strips;
        var plan = new PlanModel(context, PlanOrigin(context, strips, scale));
        Primitive[] planLines = [.. plan.Draw()];

        ViewSheet[] views = [.. strips.SelectMany(s => ViewsOf(context, elevations, s, area, plan, planLines))];
        var sections = new SectionSheets(context, SectionOrigin(strips, planLines, scale));
        SheetPlan sheets = SheetPlan.Make(context, area, scale, views, sections);
        IReadOnlyList<(string Name, string Title)> index = sheets.Index;

        var drawn = new List<(string Scale, SheetContent Content)>();
        IReadOnlyList<SheetContent> front = sheets.Front.Draw(index);
        drawn.AddRange(front.Select((f, i) => (context.Say(Phrase.ScaleNone), i == front.Count - 1 ? WithViews(context, sheets, f) : f)));
        var elevationLines = new List<Primitive>();
        Viewport[] plans = [.. PlanViewports(views, area, v => new PlanElevationSheet(context, v.Strip, scale, plan, planLines, [], []))];
        foreach (IGrouping<ElevationStrip, ViewSheet> wall in views.GroupBy(v => v.Strip))
        {
            elevationLines.AddRange(ElevationModel.Draw(context, wall.Key));
            drawn.AddRange(DrawViews([.. wall], sheets, area, scale, context, v => new PlanElevationSheet(context, v.Strip, scale, plan, planLines, sheets.SectionSheets, plans)));
        }
        drawn.AddRange(sheets.Packed.Select(p => (sheets.ScaleOf(p), p.Draw(sheets.RefsOf(sheets.NameOf(p))))));
        findings.AddRange(frame.CutShort([.. index.Select(i => i.Title)]).Select(f => Warning($"the title block has no room for all of \"{f}\": it is cut short")));
        SheetContent all = SheetContent.Together([.. drawn.Select(d => d.Content)]);
        findings.AddRange(all.Findings);
        Primitive[] model = [.. planLines, .. elevationLines, .. all.Model];
        string[] marked = [.. model.OfType<BlockReference>().Where(b => b.Shown?.Tag == NailSymbols.Mark).Select(b => b.Nail!)];
        if (marked.Length != layout.Nails.Count || !layout.Nails.Select(n => n.Mark).ToHashSet().SetEquals(marked))
            throw new InvalidOperationException("the marks drawn are not those of the nails");
        PlanFile planFile = PlanFile.Draw(context, views.GroupBy(v => v.Strip).Where(w => w.Any(v => v.HasPlan && v.Window is not null))
            .Select(w => PlanScaleOf([.. w], area, v => new PlanElevationSheet(context, v.Strip, scale, plan, planLines, [], []))).Append(scale).MaxBy(s => s.Value));
        findings.AddRange(planFile.Findings);
        HashSet<string> styles = [.. model.Concat(planFile.Lines).OfType<Dimension>().Select(d => d.Style)];
        SheetScale[] scales =
        [
            scale, sheets.SectionScale,
            .. SheetScale.OfSections(context.Templates, project.Unit).Concat(SheetScale.Customary(context.Templates, project.Unit)).Where(s => styles.Contains(s.DimensionStyle)),
        ];
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
            DimensionStyles = [.. scales.Distinct().Select(s => StyleOf(s, context)), .. PlanStyles(context, styles), .. DetailScale.Styles(context).Where(s => styles.Contains(s.Name)), PaperStyle(context)],
            Model = model,
            Sheets = [.. drawn.Select((d, i) => new Sheet(
                index[i].Name, index[i].Title, size.Name, size.Width, size.Height, d.Content.Viewports,
                [frame.Reference(index[i].Name, drawn.Count, index[i].Title, d.Scale), .. d.Content.Paper])
            {
                IsView = i >= front.Count && i < front.Count + views.Length,
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

    /// <summary>The sheets of a wall: one for each stretch of its elevation, and one for its plan where no plan fits above the elevation.</summary>
    private static IEnumerable<ViewSheet> ViewsOf(
        DrawingContext context, ElevationPlan elevations, ElevationStrip strip, Box area, PlanModel plan, IReadOnlyList<Primitive> planLines)
    {
        bool hasPlan = new PlanElevationSheet(context, strip, elevations.Scale, plan, planLines, [], []).HasPlanAbove(area);
        foreach (PlannedWindow window in elevations.Windows.Where(w => w.Strip == strip))
            yield return new(strip, window, hasPlan);
        if (!hasPlan)
            yield return new(strip, null, true);
    }

    private static IEnumerable<(string Scale, SheetContent Content)> DrawViews(
        ViewSheet[] wall, SheetPlan sheets, Box area, SheetScale scale, DrawingContext context, Func<ViewSheet, PlanElevationSheet> of)
    {
        SheetScale planScale = PlanScaleOf(wall, area, of);
        for (int i = 0; i < wall.Length; i++)
        {
            PlanElevationSheet sheet = of(wall[i]);
            string name = sheets.NameOf(wall[i]);
            if (wall[i] is { Planned: PlannedWindow planned, Window: SheetWindow window })
                sheet.Compose(planned, area, planScale, name, window.Before ? sheets.NameOf(wall[i - 1]) : null, window.After ? sheets.NameOf(wall[i + 1]) : null);
            else
                sheet.ComposePlan(wall[i].Shown, area, name);
            bool isOne = wall[i].Window is not null && (!wall[i].HasPlan || planScale == scale);
            yield return (isOne ? scale.Words(context) : context.Say(Phrase.AsShown),
                new SheetContent { Viewports = sheet.Viewports, Paper = sheet.Paper, Model = sheet.Model, Findings = sheet.Findings });
        }
    }

    /// <summary>The scale of a wall's plans, one for all its sheets.</summary>
    private static SheetScale PlanScaleOf(IReadOnlyList<ViewSheet> wall, Box area, Func<ViewSheet, PlanElevationSheet> of) =>
        wall.Where(v => v.Window is not null).Select(v => of(v).PlanScaleAbove(v.Window!, area)).MaxBy(s => s.Value);

    /// <summary>Every view of a plan in the set.</summary>
    private static IEnumerable<Viewport> PlanViewports(IReadOnlyList<ViewSheet> views, Box area, Func<ViewSheet, PlanElevationSheet> of)
    {
        foreach (ViewSheet[] wall in views.GroupBy(v => v.Strip).Select(w => w.ToArray()))
        {
            SheetScale scale = PlanScaleOf(wall, area, of);
            foreach (ViewSheet view in wall.Where(v => v.HasPlan))
                yield return of(view).PlanViewport(view.Shown, area, view.Window is null ? null : scale);
        }
    }

    /// <summary>The last front sheet with the key plan and the typical section.</summary>
    private static SheetContent WithViews(DrawingContext context, SheetPlan sheets, SheetContent front)
    {
        var parts = new List<SheetContent> { front };
        if (sheets.KeyPlan is Box key)
            parts.Add(KeyPlan.Draw(context, key, sheets.LastFront, [.. sheets.Views.Where(v => v.Window is not null).Select(v => (v.Window!, sheets.NameOf(v)))]));
        if (sheets.Typical is TypicalSection typical)
        {
            Box room = typical.Room;
            parts.Add(typical.Part.Draw(new(room.Left + (room.Width - typical.Part.Width) / 2, room.Top), sheets.RefsOf(sheets.LastFront)));
        }
        return SheetContent.Together(parts);
    }

    /// <summary>The cross sections lie in model space below everything else.</summary>
    private static Point2 SectionOrigin(IReadOnlyList<ElevationStrip> strips, IReadOnlyList<Primitive> planLines, SheetScale scale)
    {
        Box plan = Box.Around(planLines.SelectMany(Extents.Points));
        Box above = plan.Union(Box.Around(strips.SelectMany(s => new[] { s.At(s.Wall.Start, s.Low), s.At(s.Wall.End, s.High) })));
        return new(Math.Round(above.Left), Math.Floor(above.Bottom - 200 * scale.UnitsPerMillimetre - Math.Max(plan.Width, plan.Height)));
    }

    private static IEnumerable<DimensionStyle> PlanStyles(DrawingContext context, IReadOnlySet<string> used) =>
        SheetScale.Customary(context.Templates, context.Project.Unit).Where(s => used.Contains(s.PlanDimensionStyle)).Select(s => StyleOf(s, context) with { Name = s.PlanDimensionStyle, HasArrows = true });

    private static DimensionStyle PaperStyle(DrawingContext context) =>
        StyleOf(new(1, context.Project.Unit), context) with { Name = "DIM-PAPER", Scale = 1, IsPaper = true };

    private static DimensionStyle StyleOf(SheetScale scale, DrawingContext context) =>
        new(scale.DimensionStyle, scale.UnitsPerMillimetre, context.StyleOf(TextRole.Dimension).Height,
            Lengths.Decimals(context.Project.Unit), NailLabels.DimensionSuffix(context.Project.Unit));

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

    /// <summary>The plan lies below the strips, its middle under their middle.</summary>
    private static Point2 PlanOrigin(DrawingContext context, IReadOnlyList<ElevationStrip> strips, SheetScale scale)
    {
        Box plan = Box.Around(new PlanModel(context, default).Draw().SelectMany(Extents.Points));
        Box above = Box.Around(strips.SelectMany(s => new[] { s.At(s.Wall.Start, s.Low), s.At(s.Wall.End, s.High) }));
        // Far enough that no plan viewport, however it is turned, sees a strip.
        double gap = 200 * scale.UnitsPerMillimetre + Math.Max(plan.Width, plan.Height);
        return new(Math.Round(above.Center.X - plan.Center.X), Math.Floor(above.Bottom - gap - plan.Top));
    }
}
