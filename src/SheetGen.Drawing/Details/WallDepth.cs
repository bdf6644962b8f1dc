using SheetGen.Model;

namespace SheetGen.Drawing.Details;

/// <summary>How deep a wall goes below its finished grade.</summary>
public static class WallDepth
{
    /// <summary>The least depth of the bottom below finished grade, project units; null where no grade is given.</summary>
    public static double? Least(Wall wall) => LeastBetween(wall, wall.Start, wall.End) is var (_, grade, bottom) ? grade - bottom : null;

    /// <summary>The place between two stations where the bottom is least deep below finished grade, with both elevations; null where no grade is given.</summary>
    public static (double Along, double Grade, double Bottom)? LeastBetween(Wall wall, double from, double to)
    {
        if (wall.FinishedGrade is not Profile grade)
            return null;
        double[] places = [.. grade.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Where(a => a > from && a < to), from, to];
        return places.Order().SelectMany(a => new[] { (a, grade.At(a), wall.Bottom.At(a), IsSeen: a < to), (a, grade.Before(a), wall.Bottom.Before(a), IsSeen: a > from) })
            .Where(p => p.IsSeen).Select(p => (p.Item1, p.Item2, p.Item3)).MinBy(p => p.Item2 - p.Item3);
    }
}
