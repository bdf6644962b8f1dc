using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Drawing.Elevation;

/// <summary>Where the views lie on the sheets of plans and elevations: the plan above, the elevation below it, notes at the bottom.</summary>
/// <param name="Area">Drawing area of a sheet, mm.</param>
/// <param name="Scale">Of the elevations.</param>
public sealed record SheetRooms(DrawingContext Context, Box Area, SheetScale Scale)
{
    /// <summary>Room for a view's title and scale bar, mm.</summary>
    public const double TitleBand = 15;

    /// <summary>A plan is no smaller than the elevation below it by more than this factor.</summary>
    private const double SmallestPlan = 5;

    /// <summary>Height below which no plan stands above an elevation, mm.</summary>
    private const double LeastPlan = 30;

    /// <summary>Room above the highest and below the lowest thing drawn in an elevation, mm.</summary>
    public static (double Top, double Bottom) Bands(DrawingContext context, Box area)
    {
        double letters = context.StyleOf(TextRole.Label).Height;
        return area.Height > 350 ? (16.2 * letters, 13.7 * letters) : (15.8 * letters, 13.3 * letters);
    }

    /// <summary>Room above the highest thing drawn in an elevation, mm.</summary>
    public double TopBand => Bands(Context, Area).Top;

    /// <summary>Longest window of a wall that fits a sheet, project units.</summary>
    public double Longest => (Area.Width - 2 * (RowMargins.Width(Context) + WallDimensions.Beyond(Context)) - 6) * Scale.UnitsPerMillimetre;

    /// <summary>True where every elevation fits a sheet, be it without the plan above it.</summary>
    public bool Fit => StripPlanner.Strips(Context, Scale, Area).All(s => LowestBottom + ElevationHeight(s) <= Area.Top - 1);

    /// <summary>Where a window of an elevation lies on its sheet.</summary>
    public Viewport ElevationOf(ElevationStrip strip, SheetWindow window)
    {
        // At a wall's end the view goes on as far as its dimensions, at a match line it does not: no half symbols beyond the line.
        double beyond = WallDimensions.Beyond(Context), beyondStart = window.Before ? 0 : beyond, beyondEnd = window.After ? 0 : beyond;
        double width = Math.Abs(strip.X(window.End) - strip.X(window.Start)) / Scale.UnitsPerMillimetre + beyondStart + beyondEnd;
        (double topBand, double bottomBand) = Bands(Context, Area);
        double height = ElevationHeight(strip), bottom = ElevationBottom(strip);
        double middle = (Area.Left + Area.Right) / 2;
        var frame = new Box(middle - width / 2, bottom, middle + width / 2, bottom + height);
        Point2 center = (strip.At(window.Start, strip.Low) + strip.At(window.End, strip.High)) * 0.5
            + new Point2(strip.Sign * (beyondEnd - beyondStart) / 2, (topBand - bottomBand) / 2) * Scale.UnitsPerMillimetre;
        return new Viewport(frame, center, Scale.UnitsPerMillimetre);
    }

    /// <summary>Where labels of an elevation may stand: beside a match line two millimetres stay free.</summary>
    public static Box LabelFrame(ElevationStrip strip, SheetWindow window, Viewport viewport)
    {
        bool cutLeft = strip.Sign > 0 ? window.Before : window.After, cutRight = strip.Sign > 0 ? window.After : window.Before;
        return new Box(
            viewport.Frame.Left + (cutLeft ? 2.2 : 0), viewport.Frame.Bottom, viewport.Frame.Right - (cutRight ? 2.2 : 0), viewport.Frame.Top).Grown(-0.3);
    }

    /// <summary>The plans above the windows of a wall's elevation, all at one scale; null where they have no room there.</summary>
    public IReadOnlyList<PlannedPlan>? PlansAbove(ElevationStrip strip, IReadOnlyList<SheetWindow> windows, PlanModel plan)
    {
        var room = new Box(Area.Left + 2, LowestBottom + ElevationHeight(strip) + TitleBand + 2, Area.Right - 2, Area.Top - 1);
        SheetScale scale = windows.Select(w => PlanScale(strip, w, plan, room)).MaxBy(s => s.Value);
        return room.Height < LeastPlan || scale.Value > SmallestPlan * Scale.Value ? null : [.. windows.Select(w => Planned(strip, w, plan, room, scale))];
    }

    /// <summary>The plan of a wall on a sheet of its own.</summary>
    public PlannedPlan PlanAlone(ElevationStrip strip, SheetWindow window, PlanModel plan)
    {
        var room = new Box(Area.Left + 2, LowestBottom, Area.Right - 2, Area.Top - 1);
        return Planned(strip, window, plan, room, PlanScale(strip, window, plan, room));
    }

    /// <summary>Room for the key to the marks and the notes below a view.</summary>
    /// <param name="bottom">Lower edge of the view, mm.</param>
    public Box NotesBelow(double bottom) => new(Area.Left + 4, Area.Bottom + 1, Area.Right - 4, bottom - TitleBand - 4);

    private double LowestBottom => Area.Bottom + (Area.Height > 350 ? 9.4 : 9.2) * Context.StyleOf(TextRole.Label).Height + TitleBand;

    /// <summary>Lower edge of an elevation: where no plan stands above it, all of that room is for notes below it.</summary>
    private double ElevationBottom(ElevationStrip strip)
    {
        double above = Area.Top - 1 - LowestBottom - ElevationHeight(strip);
        return above - TitleBand - 2 >= LeastPlan ? LowestBottom : LowestBottom + Math.Max(0, above);
    }

    private double ElevationHeight(ElevationStrip strip) =>
        (strip.High - strip.Low) / Scale.UnitsPerMillimetre + Bands(Context, Area).Top + Bands(Context, Area).Bottom;

    private PlannedPlan Planned(ElevationStrip strip, SheetWindow window, PlanModel plan, Box room, SheetScale scale) =>
        new(PlanView.Fit(Context, plan, window, strip.Sign, room, [scale.UnitsPerMillimetre]), room, scale);

    /// <summary>The largest customary scale, not larger than the elevation's, at which a window's plan fits a room.</summary>
    private SheetScale PlanScale(ElevationStrip strip, SheetWindow window, PlanModel plan, Box room)
    {
        IReadOnlyList<SheetScale> scales =
            [.. SheetScale.Customary(Context.Templates, Context.Project.Unit).Where(s => s.Value >= Scale.Value).Prepend(Scale).Distinct()];
        double chosen = PlanView.Fit(Context, plan, window, strip.Sign, room, [.. scales.Select(s => s.UnitsPerMillimetre)]).UnitsPerMillimetre;
        return scales.First(s => s.UnitsPerMillimetre == chosen);
    }
}

/// <summary>A plan as it will lie on its sheet.</summary>
/// <param name="Room">Where it may stand, mm; its title goes below.</param>
public sealed record PlannedPlan(Viewport Viewport, Box Room, SheetScale Scale);
