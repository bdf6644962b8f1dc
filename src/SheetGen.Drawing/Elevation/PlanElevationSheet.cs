using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Draws plan and elevation sheets as they were planned: plan strip above, developed elevation below, notes at the bottom.</summary>
/// <param name="planModel">The plan's lines, in model space.</param>
/// <param name="plans">All views of plans of the set.</param>
public sealed class PlanElevationSheet(
    DrawingContext context, SheetRooms rooms, PlanModel plan, IReadOnlyList<Primitive> planModel,
    IReadOnlyList<(SectionCut Cut, string Sheet)> cuts, IReadOnlyList<DetailPlace> details, IReadOnlyList<Viewport> plans)
{
    private SheetScale Scale => rooms.Scale;

    /// <summary>What stands on a sheet, and the notes that have no room on it.</summary>
    public (SheetContent Content, IReadOnlyList<string> NotesLeft) Draw(ViewSheet sheet, SheetNames names)
    {
        List<DrawnView> views = [];
        if (sheet.Planned is PlannedWindow planned)
            views.Add(Elevation(planned, names));
        if (sheet.Plan is PlannedPlan above)
            views.Add(Plan(above, sheet.Shown, names, views.Sum(v => v.Notes.Numbered.Count)));
        Box lowest = sheet.Planned?.Viewport.Frame ?? sheet.Plan!.Room;
        string key = sheet.Planned is null ? "" : MarkKey(sheet.Planned.Marks);
        IReadOnlyList<string> notes = ViewNotes.Together([.. views.Select(v => v.Notes)]);
        SheetContent drawn = SheetContent.Together([.. views.Select(v => v.Content)]);
        (IReadOnlyList<Primitive> below, IReadOnlyList<string> left) = Below(notes);
        if (left.Count > 0 && SheetNotes.Column(context, FreeRoom.Beside(context, rooms.Area.Grown(-4), drawn, context.StyleOf(TextRole.Label).Height).Largest, notes) is { } column)
            (below, left) = ([.. Below([]).Paper, .. column], []);
        return (SheetContent.Together([drawn, SheetContent.Of(below)]), left);

        (IReadOnlyList<Primitive> Paper, IReadOnlyList<string> Left) Below(IReadOnlyList<string> all) =>
            SheetNotes.Write(context, rooms.NotesBelow(lowest.Bottom), key, all, names.Further);
    }

    /// <summary>Draws the nails with their marks and writes what is not written yet.</summary>
    private DrawnView Elevation(PlannedWindow planned, SheetNames names)
    {
        (ElevationStrip strip, SheetWindow window, Viewport viewport, MarkSet set, ElevationView view) = planned;
        PlaneTransform toModel = viewport.ToPaper.Inverse;
        var nails = new NailLabels(view, Scale.DimensionStyle);
        nails.Accepted();
        var wall = new ElevationLabels(view);
        new ZoneLabels(view).Write();
        IReadOnlyList<Primitive> cutMarks = [.. CutMarks.Draw(view, cuts)];
        wall.OpeningsAndClosed();
        wall.Top();
        nails.Spacings();
        new WallDimensions(view, Scale.DimensionStyle).Inside();
        wall.Bottom();
        nails.RowChanges();
        wall.Corners();
        wall.Ground();
        wall.Obstructions();
        wall.Borings();
        new DetailCallouts(view, details).Write();
        string range = context.Say(
            Phrase.StationRange, context.Print.Station(window.Wall, window.Start), context.Print.Station(window.Wall, window.End));
        var content = new SheetContent
        {
            Viewports = [viewport],
            Model =
            [
                .. set.Marks.Select(m => NailSymbols.Reference(
                    m.Nail, strip, Scale.UnitsPerMillimetre, context.Print, (Text)toModel.Apply(m.Text), context.Accepted.Contains(m.Nail.Mark))),
                .. set.Marks.Where(m => m.Leader is not null).Select(m => toModel.Apply(m.Leader!)),
                .. view.Labels.InModel(),
            ],
            Paper =
            [
                .. cutMarks,
                .. ElevationScale.Draw(view),
                .. RowMargins.Draw(view, nails),
                .. MatchLines(planned, names),
                .. ViewTitle.Draw(
                    context, context.Say(Phrase.ElevationOf, window.Wall.Name.ToUpperInvariant()),
                    context.Say(context.Project.Sheets.FromBehind ? Phrase.DevelopedBehind : Phrase.DevelopedFront, range), Scale, new(rooms.Area.Left + 4, viewport.Frame.Bottom - 9)),
            ],
            Findings = view.Labels.FindingsOn(names.Sheet),
        };
        return new(content, ViewNotes.Of(view.Labels));
    }

    private IEnumerable<Primitive> MatchLines(PlannedWindow planned, SheetNames names)
    {
        (ElevationStrip strip, SheetWindow window, Viewport viewport, _, _) = planned;
        foreach ((double along, string? other) in new[] { (window.Start, names.Before), (window.End, names.After) })
        {
            if (other is null)
                continue;
            double x = viewport.ToPaper.Apply(strip.At(along, 0)).X;
            bool left = x < viewport.Frame.Center.X;
            yield return new Line(LayerRole.MatchLine, new(x, viewport.Frame.Bottom), new(x, viewport.Frame.Top));
            // Beside the line, above the highest row's words: that much room is always free there.
            double height = context.StyleOf(TextRole.Label).Height, pitch = height * TextMeasure.LinePitch;
            string station = context.Say(Phrase.Station, context.Print.Station(window.Wall, along)), see = context.Say(Phrase.SeeSheet, other);
            string[] words = [context.Say(Phrase.MatchLine, station), see];
            if (TextMeasure.Measure(words[0], height, context.StyleOf(TextRole.Label)) > rooms.TopBand - 2 - height)
                words = [context.Say(Phrase.MatchLine, "").Trim(), station, see];
            double first = left ? x - 3 - (words.Length - 1) * pitch : x + 3 + height;
            for (int i = 0; i < words.Length; i++)
                yield return context.Write(LayerRole.MatchLine, TextRole.Label, new(first + i * pitch, viewport.Frame.Top - 2), words[i], HorizontalAlign.Right, 90);
        }
    }

    private DrawnView Plan(PlannedPlan planned, SheetWindow window, SheetNames names, int notesBefore) =>
        new PlanStrip(context, plan, window, planned, names.Sheet, plans, notesBefore).Draw(planModel, names.Before, names.After);

    /// <summary>How the marks of a sheet are read, by a nail of its own.</summary>
    private string MarkKey(MarkSet marks)
    {
        Nail? sample = marks.Marks.Select(m => m.Nail).FirstOrDefault(n => n.Kind != NailKind.Verification);
        if (sample is null)
            return context.Say(Phrase.MarkKeyNone);
        IReadOnlyList<string> forms = MarkForms.Of(sample);
        return context.Say(
            Phrase.MarkKey, forms[0], forms[^1], MarkForms.RowOf(sample), forms[1], context.Print.Distance(NailLabels.TypicalWithin(context.Print.Unit)));
    }
}

/// <summary>Names that a sheet of a view prints.</summary>
/// <param name="Before">Of the sheet before it; null at the wall's start.</param>
/// <param name="After">Of the sheet after it; null at the wall's end.</param>
/// <param name="Further">Of the sheet that takes the notes for which it has no room.</param>
public sealed record SheetNames(string Sheet, string? Before, string? After, string Further);
