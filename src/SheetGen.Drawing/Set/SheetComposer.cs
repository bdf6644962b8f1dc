using System.Globalization;
using SheetGen.Drawing.Details;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Tables;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>Composes the whole sheet set.</summary>
public static class SheetComposer
{
    private const string NotesTitle = "NOTES AND LEGEND";

    private sealed record Draft(string Title, string Scale, IReadOnlyList<Viewport> Viewports, IReadOnlyList<Primitive> Paper);

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
        if (frame.IsTooSmall)
        {
            findings.Add(new Finding
            {
                Code = FindingCode.Sheet,
                Severity = Severity.Warning,
                Message = $"the title block drawing is larger than a sheet {size.Name}: the program's own is drawn",
            });
        }
        Box area = frame.Area;
        context = context with { Templates = templates.WithTextsTimes(size.TextFactor) };
        ElevationPlan elevations = ElevationPlan.Make(context, area);
        findings.AddRange(elevations.Findings);
        SheetScale scale = elevations.Scale;
        IReadOnlyList<ElevationStrip> strips = elevations.Strips;
        var model = new List<Primitive>();
        var plan = new PlanModel(context, PlanOrigin(context, strips, scale));
        Primitive[] planLines = [.. plan.Draw()];
        model.AddRange(planLines);

        var drafts = new List<Draft>();
        IReadOnlyList<SectionCut> chosen = SectionCut.Choose(project);
        var sections = new SectionSheets(context, area, scale);
        SheetScale sectionScale = sections.ScaleFor(chosen);
        IReadOnlyList<(SectionCut Cut, int Page, Box Frame)> places = sections.Places(chosen, sectionScale);
        IReadOnlyList<IReadOnlyList<Primitive>> tablePages = new TableLayout(context).Pages(SheetTables.All(context), area);
        PlanElevationSheet ViewOf(ElevationStrip strip) => new(context, strip, scale, plan, planLines, []);
        int views = elevations.Windows.Count + strips.Count(s => !ViewOf(s).HasPlanAbove(area));
        int others = views + places.Max(p => p.Page) + 1 + tablePages.Count + DetailSheets.Count(context, area);
        int front = NotesSheet.Pages(context, area, [.. Enumerable.Repeat(("", ""), others + 1)]).Count;
        IReadOnlyList<(SectionCut, string)> cuts = [.. places.Select(p => (p.Cut, SheetName(front + views + p.Page + 1)))];
        foreach (IGrouping<ElevationStrip, PlannedWindow> wall in elevations.Windows.GroupBy(w => w.Strip))
        {
            Primitive[] lines = [.. ElevationModel.Draw(context, wall.Key)];
            model.AddRange(lines);
            PlanElevationSheet View() => new(context, wall.Key, scale, plan, planLines, cuts);
            SheetScale planScale = wall.Select(w => View().PlanScaleAbove(w.Window, area)).MaxBy(s => s.Value);
            foreach (PlannedWindow planned in wall)
            {
                SheetWindow window = planned.Window;
                int number = drafts.Count + front + 1;
                PlanElevationSheet sheet = View();
                sheet.Compose(planned, area, planScale, SheetName(number),
                    window.Before ? SheetName(number - 1) : null, window.After ? SheetName(number + 1) : null);
                model.AddRange(sheet.Model);
                findings.AddRange(sheet.Findings);
                string range = $"STA {context.Print.ShortStation(wall.Key.Wall.StationOf(window.Start))} TO {context.Print.ShortStation(wall.Key.Wall.StationOf(window.End))}";
                drafts.Add(new($"{(sheet.HasPlanAbove(area) ? "PLAN AND " : "")}ELEVATION {range}", scale.Words, sheet.Viewports, sheet.Paper));
            }
            PlanElevationSheet below = View();
            if (!below.HasPlanAbove(area))
            {
                Wall whole = wall.Key.Wall;
                below.ComposePlan(new SheetWindow(whole, whole.Start, whole.End, false, false), area, SheetName(drafts.Count + front + 1));
                findings.AddRange(below.Findings);
                drafts.Add(new($"PLAN, {whole.Name.ToUpperInvariant()}", "AS SHOWN", below.Viewports, below.Paper));
            }
        }
        Sections(context, sections, sectionScale, places, model, findings, drafts, front);
        foreach (IReadOnlyList<Primitive> page in tablePages)
            drafts.Add(new("TABLES", "NONE", [], page));

        int firstDetail = drafts.Count + front + 1;
        foreach (IReadOnlyList<Primitive> page in DetailSheets.Compose(context, area, i => SheetName(firstDetail + i), findings))
            drafts.Add(new("TYPICAL DETAILS", "NOT TO SCALE", [], page));

        IReadOnlyList<string> titles = [.. Enumerable.Repeat(NotesTitle, front), .. drafts.Select(d => d.Title)];
        (string, string)[] index = [.. titles.Select((t, i) => (SheetName(i + 1), t))];
        drafts.InsertRange(0, NotesSheet.Pages(context, area, index).Select(p => new Draft(NotesTitle, "NONE", [], p)));
        string[] marked = [.. model.OfType<BlockReference>().Where(b => b.Shown?.Tag == NailSymbols.Mark).Select(b => b.Nail!)];
        if (marked.Length != layout.Nails.Count || !layout.Nails.Select(n => n.Mark).ToHashSet().SetEquals(marked))
            throw new InvalidOperationException("the marks drawn are not those of the nails");
        return new SheetSet
        {
            Unit = project.Unit,
            Title = project.Info.Title,
            Number = project.Info.Number,
            Date = project.Sheets.Date,
            InputHash = project.InputHash,
            Version = run.Version,
            Templates = context.Templates,
            Blocks = [.. NailSymbols.All, frame.Block()],
            DimensionStyles = [.. new[] { scale, sectionScale }.Distinct().Select(s => StyleOf(s, context))],
            Model = model,
            Sheets = [.. drafts.Select((d, i) => new Sheet(
                SheetName(i + 1), d.Title, size.Name, size.Width, size.Height, d.Viewports,
                [frame.Reference(SheetName(i + 1), drafts.Count, d.Title, d.Scale), .. d.Paper]))],
            Plan = TruePlan(context, scale, findings),
            Findings = findings,
        };
    }

    /// <summary>Adds the sheets of cross sections, which lie in model space below everything else.</summary>
    private static void Sections(
        DrawingContext context, SectionSheets sheets, SheetScale scale, IReadOnlyList<(SectionCut Cut, int Page, Box Frame)> places,
        List<Primitive> model, List<Finding> findings, List<Draft> drafts, int front)
    {
        Box above = Box.Around(model.SelectMany(Extents.Points)), plan = Box.Around(new PlanModel(context, default).Draw().SelectMany(Extents.Points));
        var origin = new Point2(Math.Round(above.Left), Math.Floor(above.Bottom - 200 * scale.UnitsPerMillimetre - Math.Max(plan.Width, plan.Height)));
        int first = drafts.Count + front + 1;
        foreach ((IReadOnlyList<Viewport> viewports, IReadOnlyList<Primitive> paper) in sheets.Compose(places, scale, origin, i => SheetName(first + i)))
            drafts.Add(new("SECTIONS", scale.Words, viewports, paper));
        model.AddRange(sheets.Model);
        findings.AddRange(sheets.Findings);
    }

    /// <summary>The plan at true coordinates with labels sized for the scale.</summary>
    private static IReadOnlyList<Primitive> TruePlan(DrawingContext context, SheetScale scale, List<Finding> findings)
    {
        var plan = new PlanModel(context, new(context.Project.Origin.E, context.Project.Origin.N));
        Primitive[] lines = [.. plan.Draw()];
        Box extent = Box.Around(lines.SelectMany(Extents.Points));
        double units = scale.UnitsPerMillimetre;
        var frame = new Box(0, 0, extent.Width / units + 160, extent.Height / units + 160);
        var viewport = new Viewport(frame, extent.Center, units);
        PlaneTransform toPaper = viewport.ToPaper;
        var labels = new ViewLabels(context, viewport, frame, "plan.dxf", null);
        var writer = new PlanLabels(context, labels, p => toPaper.Apply(plan.At(p)));
        writer.Crowd(lines.Select(toPaper.Apply));
        foreach (Wall wall in context.Project.Walls)
            writer.Stations(wall, plan);
        foreach (LayoutLine line in context.Project.LayoutLines)
            writer.Alignment(line);
        writer.Obstructions();
        findings.AddRange(labels.Findings);
        return [.. lines, .. labels.InModel()];
    }

    private static string SheetName(int number) => "SN-" + number.ToString("00", CultureInfo.InvariantCulture);

    private static DimensionStyle StyleOf(SheetScale scale, DrawingContext context) =>
        new(scale.DimensionStyle, scale.UnitsPerMillimetre, context.StyleOf(TextRole.Dimension).Height,
            Lengths.Decimals(context.Project.Unit), NailLabels.DimensionSuffix(context.Project.Unit));

    private static SheetSize SizeOf(DrawingContext context, List<Finding> findings)
    {
        string usual = context.Project.Unit == LengthUnit.Metre ? "ISO A1" : "ANSI D";
        string wanted = context.Project.Sheets.Size ?? usual;
        if (context.Templates.SizeNamed(wanted) is SheetSize named)
            return named;
        findings.Add(new Finding
        {
            Code = FindingCode.Sheet,
            Severity = Severity.Warning,
            Message = $"no sheet size is named \"{wanted}\": {usual} taken",
        });
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
