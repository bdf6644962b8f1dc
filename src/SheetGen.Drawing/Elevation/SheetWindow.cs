using SheetGen.Model;

namespace SheetGen.Drawing.Elevation;

/// <summary>The stretch of a wall that one sheet shows, by distance along the layout line.</summary>
/// <param name="Before">Number of the sheet window before it; null at the wall's start.</param>
/// <param name="After">Number of the sheet window after it; null at the wall's end.</param>
public sealed record SheetWindow(Wall Wall, double Start, double End, bool Before, bool After)
{
    public bool Has(double along) => along >= Start - 1e-9 && (along < End - 1e-9 || (!After && along <= End + 1e-9));

    /// <summary>Cuts a wall into windows no longer than a length, at panel breaks or round stations that keep off the nails: no symbol is cut in two.</summary>
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

    /// <summary>
    /// The best place for a match line: near the ideal one, a panel break rather than a round station, a coarse one rather than a fine one, and
    /// off the nails' symbols and marks, or at least off their symbols; where there is none, the middle of the widest gap between heads.
    /// </summary>
    private static double MatchLine(Wall wall, double start, double latest, double ideal, IReadOnlyList<double> heads, double clear, double step)
    {
        double first = start + (latest - start) * 0.3, worth = (latest - start) * 0.08;
        IEnumerable<double> Round(double every) => wall.LayoutLine.Stationing.RoundPlaces(first, latest, every);
        (double Place, double Cost)[] places =
        [
            .. new[] { wall.PanelBreaks, Round(step), Round(step / 5) }.SelectMany((kind, rank) => kind.Where(b => b > first && b <= latest + 1e-9)
                .Select(b => (b, Math.Abs(b - ideal) + rank * worth))),
        ];
        foreach (double room in new[] { clear, clear / 2 })
        {
            (double Place, double Cost)[] free = [.. places.Where(b => !heads.Any(h => Math.Abs(h - b.Place) < room))];
            if (free.Length > 0)
                return free.MinBy(b => b.Cost).Place;
        }
        double[] near = [first, .. heads.Where(h => h > first && h < latest), latest];
        int widest = Enumerable.Range(0, near.Length - 1).MaxBy(i => near[i + 1] - near[i]);
        return near.Length > 2 ? (near[widest] + near[widest + 1]) / 2 : ideal;
    }
}
