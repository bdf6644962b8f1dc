using SheetGen.Model;

namespace SheetGen.Drawing.Elevation;

/// <summary>The stretch of a wall that one sheet shows, by distance along the layout line.</summary>
/// <param name="Before">Number of the sheet window before it; null at the wall's start.</param>
/// <param name="After">Number of the sheet window after it; null at the wall's end.</param>
public sealed record SheetWindow(Wall Wall, double Start, double End, bool Before, bool After)
{
    public bool Has(double along) => along >= Start - 1e-9 && (along < End - 1e-9 || (!After && along <= End + 1e-9));

    /// <summary>Cuts a wall into windows no longer than a length, at panel breaks where there are any.</summary>
    public static IReadOnlyList<SheetWindow> Cut(Wall wall, double longest)
    {
        var windows = new List<SheetWindow>();
        double at = wall.Start;
        while (at < wall.End - 1e-9)
        {
            double rest = wall.End - at;
            double count = Math.Ceiling(rest / longest - 1e-9);
            double ideal = at + rest / count;
            double end = count <= 1 ? wall.End : BreakNear(wall, at, at + longest, ideal);
            windows.Add(new(wall, at, end, at > wall.Start, end < wall.End));
            at = end;
        }
        return windows;
    }

    private static double BreakNear(Wall wall, double start, double latest, double ideal)
    {
        double[] breaks = [.. wall.PanelBreaks.Where(b => b > start + (latest - start) * 0.3 && b <= latest + 1e-9)];
        return breaks.Length == 0 ? ideal : breaks.MinBy(b => Math.Abs(b - ideal));
    }
}
