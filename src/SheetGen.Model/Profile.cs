namespace SheetGen.Model;

/// <summary>
/// Elevations along a layout line, straight between points in order of station; two points at one station make a vertical step,
/// where the piece that starts there counts. Before the first and after the last point it is level.
/// </summary>
public sealed class Profile
{
    public Profile(IReadOnlyList<ProfilePoint> points)
    {
        if (points.Count == 0)
            throw new ArgumentException("a profile needs a point", nameof(points));
        Points = points;
    }

    public IReadOnlyList<ProfilePoint> Points { get; }

    /// <summary>Elevation at a place; at a vertical step that of the up-station side.</summary>
    public double At(double along) => Evaluate(along, LastAtOrBefore(along));

    /// <summary>Elevation just before a place; differs from <see cref="At"/> at a vertical step only.</summary>
    public double Before(double along)
    {
        int i = LastAtOrBefore(along);
        while (i > 0 && Points[i].Along >= along)
            i--;
        if (i == 0 && Points[0].Along >= along)
            return Points[0].Elevation;
        return Evaluate(along, i);
    }

    /// <summary>Slope (rise per length) just after a place.</summary>
    public double SlopeAfter(double along)
    {
        int i = LastAtOrBefore(along);
        if (i < 0 || i == Points.Count - 1)
            return 0;
        ProfilePoint a = Points[i], b = Points[i + 1];
        return (b.Elevation - a.Elevation) / (b.Along - a.Along);
    }

    /// <summary>The profile from one place to another as a polyline; a vertical step inside gives two points at one place.</summary>
    public IEnumerable<ProfilePoint> Between(double start, double end)
    {
        yield return new ProfilePoint(start, At(start));
        foreach (ProfilePoint point in Points)
        {
            if (point.Along > start && point.Along < end)
                yield return point;
        }
        yield return new ProfilePoint(end, Before(end));
    }

    /// <summary>Greatest elevation between two places, ends included.</summary>
    public double Highest(double start, double end) => Between(start, end).Max(p => p.Elevation);

    /// <summary>Least elevation between two places, ends included.</summary>
    public double Lowest(double start, double end) => Between(start, end).Min(p => p.Elevation);

    private int LastAtOrBefore(double along)
    {
        int low = -1, high = Points.Count - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (Points[middle].Along <= along)
                low = middle;
            else
                high = middle - 1;
        }
        return low;
    }

    private double Evaluate(double along, int i)
    {
        if (i < 0)
            return Points[0].Elevation;
        if (i >= Points.Count - 1)
            return Points[^1].Elevation;
        ProfilePoint a = Points[i], b = Points[i + 1];
        if (b.Along <= a.Along)
            return b.Elevation;
        return a.Elevation + (b.Elevation - a.Elevation) * (along - a.Along) / (b.Along - a.Along);
    }
}
