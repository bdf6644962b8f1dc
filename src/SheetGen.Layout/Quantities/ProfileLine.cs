using NetTopologySuite.Geometries;
using SheetGen.Model;

namespace SheetGen.Layout.Quantities;

/// <summary>Profiles as lines in the developed elevation: x along the layout line, y elevation.</summary>
internal static class ProfileLine
{
    /// <summary>
    /// The profile from one place to another, both ends included, with the value of the inner side at each end; before and after them it
    /// goes on level by <paramref name="beyond"/>.
    /// </summary>
    public static List<Coordinate> Make(Profile profile, double from, double to, double beyond)
    {
        var line = new List<Coordinate>();
        double first = profile.At(from), last = profile.Before(to);
        if (beyond > 0)
            line.Add(new Coordinate(from - beyond, first));
        line.Add(new Coordinate(from, first));
        foreach (ProfilePoint point in profile.Points)
        {
            if (point.Along > from && point.Along < to)
                line.Add(new Coordinate(point.Along, point.Elevation));
        }
        line.Add(new Coordinate(to, last));
        if (beyond > 0)
            line.Add(new Coordinate(to + beyond, last));
        return line;
    }
}
