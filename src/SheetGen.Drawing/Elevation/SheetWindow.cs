using SheetGen.Model;

namespace SheetGen.Drawing.Elevation;

/// <summary>The stretch of a wall that one sheet shows, by distance along the layout line.</summary>
/// <param name="Before">Number of the sheet window before it; null at the wall's start.</param>
/// <param name="After">Number of the sheet window after it; null at the wall's end.</param>
public sealed record SheetWindow(Wall Wall, double Start, double End, bool Before, bool After)
{
    public bool Has(double along) => along >= Start - 1e-9 && (along < End - 1e-9 || (!After && along <= End + 1e-9));

    /// <summary>Cuts a wall into windows no longer than a length, at panel breaks or round stations that keep off the nails.</summary>
    /// <param name="heads">Places of the nails, in order.</param>
    /// <param name="clear">Distance that a match line keeps from them where it can.</param>
    /// <param name="step">Distance of round stations.</param>
    public static IReadOnlyList<SheetWindow> Cut(Wall wall, double longest, IReadOnlyList<double> heads, double clear, double step)
    {
        var windows = new List<SheetWindow>();
        double at = wall.Start;
        while (at < wall.End - 1e-9)
        {
            double rest = wall.End - at;
            double count = Math.Ceiling(rest / longest - 1e-9);
            double end = count <= 1 ? wall.End : MatchLine(wall, at, at + longest, at + rest / count, heads, clear, step);
            windows.Add(new(wall, at, end, at > wall.Start, end < wall.End));
            at = end;
        }
        return windows;
    }

    /// <summary>The place nearest to the ideal one: panel breaks before round stations, those clear of nails before others, else the ideal itself.</summary>
    private static double MatchLine(Wall wall, double start, double latest, double ideal, IReadOnlyList<double> heads, double clear, double step)
    {
        IEnumerable<double> round = wall.LayoutLine.Stationing.RoundPlaces(start, latest, step);
        bool Fits(double place) => place > start + (latest - start) * 0.3 && place <= latest + 1e-9;
        bool IsClear(double place) => !heads.Any(h => Math.Abs(h - place) < clear);
        double[] breaks = [.. wall.PanelBreaks.Where(Fits)], stations = [.. round.Where(Fits)];
        double[][] choices = [[.. breaks.Where(IsClear)], [.. stations.Where(IsClear)], breaks, stations, [ideal]];
        return choices.First(c => c.Length > 0).MinBy(b => Math.Abs(b - ideal));
    }
}
