using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;
using SheetGen.Drawing.Templating;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>Composes a plan and elevation sheet: plan strip above, developed elevation below, notes at the bottom.</summary>
public sealed class PlanElevationSheet(
    DrawingContext context, ElevationStrip strip, SheetScale scale, PlanModel plan, IReadOnlyList<Primitive> planModel,
    IReadOnlyList<(SectionCut Cut, string Sheet)> cuts, IReadOnlyList<DetailPlace> details, IReadOnlyList<Viewport> plans)
{
    /// <summary>Room for a view's title and scale bar, mm.</summary>
    public const double TitleBand = 15;

    /// <summary>Room above the highest and below the lowest thing drawn in an elevation, mm.</summary>
    public static (double Top, double Bottom) Bands(DrawingContext context, Box area)
    {
        double letters = context.StyleOf(TextRole.Label).Height;
        return area.Height > 350 ? (16.2 * letters, 13.7 * letters) : (15.8 * letters, 13.3 * letters);
    }

    /// <summary>Room for the key to the marks and the numbered notes at the sheet's bottom, mm.</summary>
    private static double NotesBand(DrawingContext context, Box area) => (area.Height > 350 ? 9.4 : 9.2) * context.StyleOf(TextRole.Label).Height;

    private readonly List<Primitive> _paper = [];
    private readonly List<Primitive> _model = [];
    private readonly List<Viewport> _viewports = [];
    private readonly List<Finding> _findings = [];
    private IReadOnlyList<string> _planTold = [];

    public IReadOnlyList<Primitive> Paper => _paper;

    /// <summary>Labels of the elevation and dimensions of the plan, in model space.</summary>
    public IReadOnlyList<Primitive> Model => _model;

    public IReadOnlyList<Viewport> Viewports => _viewports;

    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Notes that have no room on the sheet.</summary>
    public IReadOnlyList<string> NotesLeft { get; private set; } = [];

    /// <summary>Longest window of a wall that fits an area, project units.</summary>
    public static double Longest(DrawingContext context, Box area, SheetScale scale) =>
        (area.Width - 2 * (RowMargins.Width(context) + WallDimensions.Beyond(context)) - 6) * scale.UnitsPerMillimetre;

    /// <summary>True where the plans of a wall's windows stand above its elevation; else it gets a sheet with one of its own.</summary>
    public bool HasPlanAbove(Box area, IEnumerable<SheetWindow> windows) =>
        PlanRoom(area).Height >= LeastPlan && windows.All(w => PlanScaleAbove(w, area).Value <= SmallestPlan * scale.Value);

    /// <summary>A plan is no smaller than the elevation below it by more than this factor.</summary>
    private const double SmallestPlan = 5;

    /// <summary>Height below which no plan stands above an elevation, mm.</summary>
    private const double LeastPlan = 30;

    /// <summary>Draws a sheet that shows the plan only.</summary>
    public void ComposePlan(SheetWindow window, Box area, SheetNames names)
    {
        Box room = WholeRoom(area, context);
        Notes(Plan(window, room, PlanScale(window, room), names, 0), area, room.Bottom - TitleBand, names.Further);
    }

    /// <summary>The largest customary scale, not larger than the elevation's, at which a window's plan fits above the elevation.</summary>
    public SheetScale PlanScaleAbove(SheetWindow window, Box area) => PlanScale(window, PlanRoom(area));

    /// <summary>The view of the plan on a sheet of its own, or above an elevation at the wall's scale for plans.</summary>
    public Viewport PlanViewport(SheetWindow window, Box area, SheetScale? planScale)
    {
        Box room = planScale is null ? WholeRoom(area, context) : PlanRoom(area);
        return ViewportOf(window, room, planScale ?? PlanScale(window, room));
    }

    private Viewport ViewportOf(SheetWindow window, Box room, SheetScale at) => PlanView.Fit(context, plan, window, strip.Sign, room, [at.UnitsPerMillimetre]);

    private static Box WholeRoom(Box area, DrawingContext context) => new(area.Left + 2, LowestBottom(context, area), area.Right - 2, area.Top - 1);

    private SheetScale PlanScale(SheetWindow window, Box room)
    {
        IReadOnlyList<SheetScale> scales =
            [.. SheetScale.Customary(context.Templates, context.Project.Unit).Where(s => s.Value >= scale.Value).Prepend(scale).Distinct()];
        double chosen = PlanView.Fit(context, plan, window, strip.Sign, room, [.. scales.Select(s => s.UnitsPerMillimetre)]).UnitsPerMillimetre;
        return scales.First(s => s.UnitsPerMillimetre == chosen);
    }

    private static double LowestBottom(DrawingContext context, Box area) => area.Bottom + NotesBand(context, area) + TitleBand;

    /// <summary>Lower edge of an elevation: where no plan stands above it, all of that room is for notes below it.</summary>
    private static double ElevationBottom(DrawingContext context, ElevationStrip strip, SheetScale scale, Box area)
    {
        double low = LowestBottom(context, area), above = area.Top - 1 - low - ElevationHeight(context, strip, scale, area);
        return above - TitleBand - 2 >= LeastPlan ? low : low + Math.Max(0, above);
    }

    private static double ElevationHeight(DrawingContext context, ElevationStrip strip, SheetScale scale, Box area) =>
        (strip.High - strip.Low) / scale.UnitsPerMillimetre + Bands(context, area).Top + Bands(context, area).Bottom;

    /// <summary>True where every elevation fits an area at a scale, be it without the plan above it.</summary>
    public static bool Fits(DrawingContext context, Box area, SheetScale scale) =>
        StripPlanner.Strips(context, scale, area).All(s => LowestBottom(context, area) + ElevationHeight(context, s, scale, area) <= area.Top - 1);

    /// <summary>Where a window of an elevation lies on its sheet.</summary>
    public static Viewport ViewportOf(DrawingContext context, ElevationStrip strip, SheetWindow window, SheetScale scale, Box area)
    {
        // At a wall's end the view goes on as far as its dimensions, at a match line it does not: no half symbols beyond the line.
        double beyond = WallDimensions.Beyond(context), beyondStart = window.Before ? 0 : beyond, beyondEnd = window.After ? 0 : beyond;
        double width = Math.Abs(strip.X(window.End) - strip.X(window.Start)) / scale.UnitsPerMillimetre + beyondStart + beyondEnd;
        (double topBand, double bottomBand) = Bands(context, area);
        double height = ElevationHeight(context, strip, scale, area), bottom = ElevationBottom(context, strip, scale, area);
        double middle = (area.Left + area.Right) / 2;
        var frame = new Box(middle - width / 2, bottom, middle + width / 2, bottom + height);
        Point2 center = (strip.At(window.Start, strip.Low) + strip.At(window.End, strip.High)) * 0.5
            + new Point2(strip.Sign * (beyondEnd - beyondStart) / 2, (topBand - bottomBand) / 2) * scale.UnitsPerMillimetre;
        return new Viewport(frame, center, scale.UnitsPerMillimetre);
    }

    /// <summary>Where labels may stand: beside a match line two millimetres stay free.</summary>
    public static Box LabelFrame(ElevationStrip strip, SheetWindow window, Viewport viewport)
    {
        bool cutLeft = strip.Sign > 0 ? window.Before : window.After, cutRight = strip.Sign > 0 ? window.After : window.Before;
        return new Box(
            viewport.Frame.Left + (cutLeft ? 2.2 : 0), viewport.Frame.Bottom, viewport.Frame.Right - (cutRight ? 2.2 : 0), viewport.Frame.Top).Grown(-0.3);
    }

    private Box PlanRoom(Box area) =>
        new(area.Left + 2, LowestBottom(context, area) + ElevationHeight(context, strip, scale, area) + TitleBand + 2, area.Right - 2, area.Top - 1);

    /// <summary>Draws the sheet of a window.</summary>
    /// <param name="planScale">One for all sheets of a wall; null where no plan stands above the elevation.</param>
    public void Compose(PlannedWindow planned, Box area, SheetScale? planScale, SheetNames names)
    {
        (_, SheetWindow window, Viewport viewport, _, _) = planned;
        double bottom = viewport.Frame.Bottom;
        _viewports.Add(viewport);
        IReadOnlyList<string> notes = Elevation(planned, names.Sheet);
        MatchLines(window, viewport, area, names);
        string range = context.Say(
            Phrase.StationRange, context.Print.Station(window.Wall, window.Start), context.Print.Station(window.Wall, window.End));
        Title(context.Say(Phrase.ElevationOf, window.Wall.Name.ToUpperInvariant()),
            context.Say(context.Project.Sheets.FromBehind ? Phrase.DevelopedBehind : Phrase.DevelopedFront, range), scale, new(area.Left + 4, bottom - 9));
        IReadOnlyList<string> planNotes = planScale is SheetScale at ? Plan(window, PlanRoom(area), at, names, notes.Count) : [];
        Notes([.. notes, .. planNotes], area, bottom - TitleBand, names.Further, planned);
    }

    /// <summary>Draws the nails with their marks and writes what is not written yet.</summary>
    private IReadOnlyList<string> Elevation(PlannedWindow planned, string sheet)
    {
        ElevationView view = planned.View;
        view.Labels.Sheet = sheet;
        PlaneTransform toModel = planned.Viewport.ToPaper.Inverse;
        IReadOnlyList<PlacedMark> marks = planned.Marks.Marks;
        IReadOnlySet<string> accepted = AcceptedNails.Of(context);
        _model.AddRange(marks.Select(m => NailSymbols.Reference(
            m.Nail, strip, scale.UnitsPerMillimetre, context.Print, (Text)toModel.Apply(m.Text), accepted.Contains(m.Nail.Mark))));
        _model.AddRange(marks.Where(m => m.Leader is not null).Select(m => toModel.Apply(m.Leader!)));
        var nails = new NailLabels(view, scale.DimensionStyle);
        nails.Accepted();
        var wall = new ElevationLabels(view);
        new ZoneLabels(view).Write();
        _paper.AddRange(CutMarks.Draw(view, cuts));
        wall.OpeningsAndClosed();
        wall.Top();
        nails.Spacings();
        new WallDimensions(view, scale.DimensionStyle).Inside();
        wall.Bottom();
        nails.RowChanges();
        wall.Corners();
        wall.Ground();
        wall.Obstructions();
        wall.Borings();
        new DetailCallouts(view, details).Write();
        _model.AddRange(view.Labels.InModel());
        _paper.AddRange(ElevationScale.Draw(view));
        _paper.AddRange(RowMargins.Draw(view, nails));
        _findings.AddRange(view.Labels.Findings);
        return view.Labels.Notes;
    }

    private void MatchLines(SheetWindow window, Viewport viewport, Box area, SheetNames names)
    {
        foreach ((double along, string? other) in new[] { (window.Start, names.Before), (window.End, names.After) })
        {
            if (other is null)
                continue;
            double x = viewport.ToPaper.Apply(strip.At(along, 0)).X;
            bool left = x < viewport.Frame.Center.X;
            _paper.Add(new Line(LayerRole.MatchLine, new(x, viewport.Frame.Bottom), new(x, viewport.Frame.Top)));
            // Beside the line, above the highest row's words: that much room is always free there.
            double height = context.StyleOf(TextRole.Label).Height, pitch = height * TextMeasure.LinePitch;
            string station = context.Say(Phrase.Station, context.Print.Station(window.Wall, along)), see = context.Say(Phrase.SeeSheet, other);
            string[] words = [context.Say(Phrase.MatchLine, station), see];
            if (TextMeasure.Measure(words[0], height, context.StyleOf(TextRole.Label)) > Bands(context, area).Top - 2 - height)
                words = [context.Say(Phrase.MatchLine, "").Trim(), station, see];
            double first = left ? x - 3 - (words.Length - 1) * pitch : x + 3 + height;
            for (int i = 0; i < words.Length; i++)
                _paper.Add(context.Write(LayerRole.MatchLine, TextRole.Label, new(first + i * pitch, viewport.Frame.Top - 2), words[i], HorizontalAlign.Right, 90));
        }
    }

    private void Title(string title, string below, SheetScale at, Point2 place) => _paper.AddRange(ViewTitle.Draw(context, title, below, at, place));

    private IReadOnlyList<string> Plan(SheetWindow window, Box frame, SheetScale planScale, SheetNames names, int notesBefore)
    {
        var view = new PlanStrip(context, plan, window, ViewportOf(window, frame, planScale), frame, planScale, names.Sheet, plans, notesBefore);
        _viewports.Add(view.Viewport);
        _paper.AddRange(view.Draw(planModel, names.Before, names.After));
        _model.AddRange(view.Model);
        _planTold = view.Told;
        _findings.AddRange(view.Findings);
        return view.Notes;
    }

    /// <summary>The key to the marks, what has no room at its place, and the numbered notes, below the views.</summary>
    /// <param name="bottom">Where the room of the views' titles ends, mm.</param>
    private void Notes(IReadOnlyList<string> notes, Box area, double bottom, string further, PlannedWindow? planned = null)
    {
        var room = new Box(area.Left + 4, area.Bottom + 1, area.Right - 4, bottom - 4);
        string key = planned is null ? "" : MarkKey(planned.Marks);
        IReadOnlyList<string> words =
        [
            .. planned?.View.Labels.Marked ?? [], .. notes.Select((n, i) => FormattableString.Invariant($"({i + 1}) {n}")), .. planned?.View.Labels.Told ?? [], .. _planTold,
        ];
        (IReadOnlyList<Primitive> paper, NotesLeft) = SheetNotes.Write(context, room, key, words, further);
        _paper.AddRange(paper);
    }

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
