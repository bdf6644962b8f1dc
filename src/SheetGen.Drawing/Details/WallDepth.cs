using SheetGen.Model;

namespace SheetGen.Drawing.Details;

/// <summary>How deep a wall goes below its finished grade.</summary>
public static class WallDepth
{
    /// <summary>The least depth of the bottom below finished grade, project units; null where no grade is given.</summary>
    public static double? Least(Wall wall)
    {
        if (wall.FinishedGrade is not Profile grade)
            return null;
        IEnumerable<double> places = grade.Points.Concat(wall.Bottom.Points).Select(p => p.Along).Append(wall.Start).Where(a => a >= wall.Start && a < wall.End);
        double least = places.Min(a => Math.Min(grade.At(a) - wall.Bottom.At(a), a > wall.Start ? grade.Before(a) - wall.Bottom.Before(a) : double.PositiveInfinity));
        return Math.Min(least, grade.Before(wall.End) - wall.Bottom.Before(wall.End));
    }
}
