using SheetGen.Drawing.Details;
using SheetGen.Drawing.Elevation;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;

namespace SheetGen.Drawing.Set;

/// <summary>
/// A drawn set. Plans and elevations are drawn first, with words that stand for the names of sheets: then all is known that needs room, the notes
/// beyond their sheets' own among it, the sheets are planned, and the names are filled in.
/// </summary>
public sealed class DrawnSet
{
    private DrawnSet()
    {
    }

    public required SheetPlan Sheets { get; init; }

    /// <summary>What stands on each sheet, with its scale in words, in the order of the sheets.</summary>
    public required IReadOnlyList<(string Scale, SheetContent Content)> Contents { get; init; }

    /// <summary>Lines of plan and elevations, in model space.</summary>
    public required IReadOnlyList<Primitive> ModelLines { get; init; }

    /// <summary>The scale of each wall's plan above its elevation.</summary>
    public required IReadOnlyList<SheetScale> PlanScales { get; init; }

    /// <summary>Draws plans and elevations, plans the sheets, and draws what else stands on them.</summary>
    public static DrawnSet Draw(DrawingContext context, Box area, ElevationPlan elevations)
    {
        (SheetScale scale, IReadOnlyList<ElevationStrip> strips) = (elevations.Scale, elevations.Strips);
        var plan = new PlanModel(context, PlanOrigin(context, strips, scale));
        Primitive[] planLines = [.. plan.Draw()];
        ViewSheet[] views = [.. strips.SelectMany(s => ViewsOf(context, elevations, s, area, plan, planLines))];
        IReadOnlyList<SectionCut> cuts = SectionCut.Choose(context);
        IReadOnlyList<DetailView> details = DetailViews.All(context);
        // The typical section first: others make way for its bubble.
        SectionCut? highest = SectionCut.Highest(cuts);
        var names = new SheetStandIns(context, views, [.. cuts.OrderByDescending(c => c == highest)], details);
        PlanElevationSheet Plain(ViewSheet view) => new(context, view.Strip, scale, plan, planLines, [], [], []);

        Viewport[] plans = [.. PlanViewports(views, area, Plain)];
        IGrouping<ElevationStrip, ViewSheet>[] walls = [.. views.GroupBy(v => v.Strip)];
        (string Scale, SheetContent Content, NotesLeft? Left)[] drawn =
            [.. walls.SelectMany(w => DrawViews([.. w], names, area, scale, context, v => new PlanElevationSheet(context, v.Strip, scale, plan, planLines, names.Cuts, names.Details, plans)))];
        SheetPlan sheets = SheetPlan.Make(
            context, area, scale, views, new SectionSheets(context, SectionOrigin(strips, planLines, scale)), cuts, details, [.. drawn.Select(d => d.Left).OfType<NotesLeft>()]);
        IReadOnlyList<SheetContent> front = sheets.Front.Draw(sheets.Index);
        IEnumerable<(string Scale, SheetContent Content)> contents =
        [
            .. front.Select((f, i) => (context.Say(Phrase.ScaleNone), i == front.Count - 1 ? WithViews(context, sheets, f) : f)),
            .. drawn.Select(d => (d.Scale, d.Content)),
            .. sheets.Packed.Select(p => (sheets.ScaleOf(p), p.Draw(sheets.RefsOf(sheets.NameOf(p))))),
        ];
        return new()
        {
            Sheets = sheets,
            Contents = [.. contents.Select(c => (c.Scale, names.FillIn(c.Content, sheets)))],
            ModelLines = [.. planLines, .. walls.SelectMany(w => ElevationModel.Draw(context, w.Key))],
            PlanScales = [.. walls.Where(w => w.Any(v => v.HasPlan && v.Window is not null)).Select(w => PlanScaleOf([.. w], area, Plain))],
        };
    }

    /// <summary>The sheets of a wall: one for each stretch of its elevation, and one for its plan where no plan fits above the elevation.</summary>
    private static IEnumerable<ViewSheet> ViewsOf(
        DrawingContext context, ElevationPlan elevations, ElevationStrip strip, Box area, PlanModel plan, IReadOnlyList<Primitive> planLines)
    {
        PlannedWindow[] windows = [.. elevations.Windows.Where(w => w.Strip == strip)];
        bool hasPlan = new PlanElevationSheet(context, strip, elevations.Scale, plan, planLines, [], [], []).HasPlanAbove(area, windows.Select(w => w.Window));
        foreach (PlannedWindow window in windows)
            yield return new(strip, window, hasPlan);
        if (!hasPlan)
            yield return new(strip, null, true);
    }

    private static IEnumerable<(string Scale, SheetContent Content, NotesLeft? Left)> DrawViews(
        ViewSheet[] wall, SheetStandIns standIns, Box area, SheetScale scale, DrawingContext context, Func<ViewSheet, PlanElevationSheet> of)
    {
        SheetScale planScale = PlanScaleOf(wall, area, of);
        for (int i = 0; i < wall.Length; i++)
        {
            PlanElevationSheet sheet = of(wall[i]);
            string name = standIns.Of(wall[i]);
            var names = new SheetNames(
                name, wall[i].Window?.Before == true ? standIns.Of(wall[i - 1]) : null, wall[i].Window?.After == true ? standIns.Of(wall[i + 1]) : null, standIns.FurtherOf(wall[i]));
            if (wall[i].Planned is PlannedWindow planned)
                sheet.Compose(planned, area, wall[i].HasPlan ? planScale : null, names);
            else
                sheet.ComposePlan(wall[i].Shown, area, names);
            bool isOne = wall[i].Window is not null && (!wall[i].HasPlan || planScale == scale);
            yield return (isOne ? scale.Words(context) : context.Say(Phrase.AsShown),
                new SheetContent { Viewports = sheet.Viewports, Paper = sheet.Paper, Model = sheet.Model, Findings = sheet.Findings },
                sheet.NotesLeft is { Count: > 0 } left ? new NotesLeft(name, left) : null);
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
