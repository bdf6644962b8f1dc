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
        var rooms = new SheetRooms(context, area, scale);
        ViewSheet[] views = [.. strips.SelectMany(s => ViewsOf(rooms, s, [.. elevations.Windows.Where(w => w.Strip == s)], plan))];
        IReadOnlyList<SectionCut> cuts = SectionCut.Choose(context);
        IReadOnlyList<DetailView> details = DetailViews.All(context);
        // The typical section first: others make way for its bubble.
        SectionCut? highest = SectionCut.Highest(cuts);
        var names = new SheetStandIns(context, views, [.. cuts.OrderByDescending(c => c == highest)], details);
        var draw = new PlanElevationSheet(context, rooms, plan, planLines, names.Cuts, names.Details, [.. views.Select(v => v.Plan?.Viewport).OfType<Viewport>()]);
        IGrouping<ElevationStrip, ViewSheet>[] walls = [.. views.GroupBy(v => v.Strip)];
        (string Scale, SheetContent Content, NotesLeft? Left)[] drawn = [.. walls.SelectMany(w => DrawViews([.. w], names, scale, context, draw))];
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
            PlanScales = [.. views.Where(v => v.Window is not null).Select(v => v.Plan?.Scale).OfType<SheetScale>().Distinct()],
        };
    }

    /// <summary>The sheets of a wall: one for each stretch of its elevation, and one for its plan where no plan fits above the elevation.</summary>
    private static IEnumerable<ViewSheet> ViewsOf(SheetRooms rooms, ElevationStrip strip, PlannedWindow[] windows, PlanModel plan)
    {
        if (rooms.PlansAbove(strip, [.. windows.Select(w => w.Window)], plan) is { } above)
            return windows.Zip(above, (w, p) => new ViewSheet(strip, w, p));
        var alone = new ViewSheet(strip, null, null);
        return [.. windows.Select(w => new ViewSheet(strip, w, null)), alone with { Plan = rooms.PlanAlone(strip, alone.Shown, plan) }];
    }

    private static IEnumerable<(string Scale, SheetContent Content, NotesLeft? Left)> DrawViews(
        ViewSheet[] wall, SheetStandIns standIns, SheetScale scale, DrawingContext context, PlanElevationSheet draw)
    {
        for (int i = 0; i < wall.Length; i++)
        {
            ViewSheet view = wall[i];
            string name = standIns.Of(view);
            var names = new SheetNames(
                name, view.Window?.Before == true ? standIns.Of(wall[i - 1]) : null, view.Window?.After == true ? standIns.Of(wall[i + 1]) : null, standIns.FurtherOf(view));
            (SheetContent content, IReadOnlyList<string> left) = draw.Draw(view, names);
            bool isOne = view.Window is not null && (view.Plan is null || view.Plan.Scale == scale);
            yield return (isOne ? scale.Words(context) : context.Say(Phrase.AsShown), content, left.Count > 0 ? new NotesLeft(name, left) : null);
        }
    }

    /// <summary>The last front sheet with the key plan and the typical section.</summary>
    private static SheetContent WithViews(DrawingContext context, SheetPlan sheets, SheetContent front)
    {
        var parts = new List<SheetContent> { front };
        if (sheets.KeyPlan is Box key)
            parts.Add(KeyPlan.Draw(context, key, sheets.LastFront, [.. sheets.Views.Where(v => v.Window is not null).Select(v => (v.Window!, sheets.NameOf(v)))]));
        if (sheets.Typical is TypicalSection typical)
            parts.Add(typical.Part.Draw(typical.At, sheets.RefsOf(sheets.LastFront)));
        parts.AddRange(sheets.FrontTables.Select(t => t.Part.Draw(t.At, sheets.RefsOf(sheets.LastFront))));
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
