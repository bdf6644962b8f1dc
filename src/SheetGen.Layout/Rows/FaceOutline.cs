using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The outline of a wall's developed face: top and bottom with their vertical steps, openings and stretches closed to nails.
/// The wall's ends and corners are kept by the bays.
/// </summary>
public sealed class FaceOutline
{
    private readonly Face _face;
    private readonly double _edge;
    private readonly ProfilePoint[] _top;
    private readonly ProfilePoint[] _bottom;

    public FaceOutline(Face face, double edgeMin)
    {
        _face = face;
        _edge = edgeMin;
        Wall wall = face.Wall;
        _top = [.. wall.Top.Between(wall.Start, wall.End)];
        _bottom = [.. wall.Bottom.Between(wall.Start, wall.End)];
    }

    /// <summary>True where a head may stand: inside, edge_min from the outline, not in a closed stretch.</summary>
    public bool Holds(Head head, double tolerance)
    {
        Wall wall = _face.Wall;
        double top = Math.Min(wall.Top.At(head.Along), wall.Top.Before(head.Along));
        double bottom = Math.Max(wall.Bottom.At(head.Along), wall.Bottom.Before(head.Along));
        if (head.Elevation > top + tolerance || head.Elevation < bottom - tolerance)
            return false;
        double least = _edge - tolerance;
        return Distance(_top, head) >= least && Distance(_bottom, head) >= least && !IsClosed(head, least);
    }

    /// <summary>Distance of a head from top and bottom, steps included.</summary>
    public double Distance(Head head) => Math.Min(Distance(_top, head), Distance(_bottom, head));

    /// <summary>Highest elevation that a head may have at a place.</summary>
    public double HighestAllowed(double along)
    {
        double top = Math.Min(_face.Wall.Top.At(along), _face.Wall.Top.Before(along));
        return Bisect(top - 8 * _edge, top, z => Distance(_top, new Head(along, z)) >= _edge, top - _edge);
    }

    /// <summary>Lowest elevation that a head may have at a place.</summary>
    public double LowestAllowed(double along)
    {
        double bottom = Math.Max(_face.Wall.Bottom.At(along), _face.Wall.Bottom.Before(along));
        return Bisect(bottom + 8 * _edge, bottom, z => Distance(_bottom, new Head(along, z)) >= _edge, bottom + _edge);
    }

    /// <summary>The ranges of elevation at a place where an opening or a stretch closed to nails keeps heads out.</summary>
    public IEnumerable<(double From, double To)> ClosedAt(double along)
    {
        foreach (Opening o in _face.Wall.Openings)
        {
            double shrink = Shrink(new Head(along, (o.Bottom + o.Top) / 2));
            double dx = Math.Max(0, Math.Max(o.Start - along, along - o.End)) * shrink;
            if (dx >= _edge)
                continue;
            double dz = Math.Sqrt(_edge * _edge - dx * dx);
            yield return (o.Bottom - dz, o.Top + dz);
        }
        foreach (ClosedStretch c in _face.Wall.ClosedStretches)
        {
            if (along > c.Start && along < c.End)
                yield return (c.Bottom ?? double.NegativeInfinity, c.Top ?? double.PositiveInfinity);
        }
    }

    private bool IsClosed(Head head, double edge)
    {
        foreach (Opening o in _face.Wall.Openings)
        {
            double dx = Math.Max(0, Math.Max(o.Start - head.Along, head.Along - o.End)) * Shrink(head);
            double dz = Math.Max(0, Math.Max(o.Bottom - head.Elevation, head.Elevation - o.Top));
            if (dx * dx + dz * dz < edge * edge)
                return true;
        }
        foreach (ClosedStretch c in _face.Wall.ClosedStretches)
        {
            if (head.Along > c.Start && head.Along < c.End && head.Elevation > (c.Bottom ?? double.NegativeInfinity)
                && head.Elevation < (c.Top ?? double.PositiveInfinity))
                return true;
        }
        return false;
    }

    /// <summary>Moving away from one edge keeps a ball inside: the condition turns once between the two ends, so bisection finds it.</summary>
    private static double Bisect(double good, double bad, Func<double, bool> holds, double straight)
    {
        if (holds(straight))
            return straight;
        if (!holds(good))
            return double.NaN;
        for (int i = 0; i < 50; i++)
        {
            double middle = (good + bad) / 2;
            if (holds(middle))
                good = middle;
            else
                bad = middle;
        }
        return good;
    }

    /// <summary>Where the face is shorter than the layout line, distances along it shrink.</summary>
    private double Shrink(Head head) => Math.Min(1, _face.Scale(head.Along, head.Elevation));

    private double Distance(ProfilePoint[] line, Head head)
    {
        double shrink = Shrink(head);
        double reach = 9 * _edge / Math.Max(shrink, 1e-3);
        int first = FirstFrom(line, head.Along - reach);
        double best = double.PositiveInfinity;
        for (int i = Math.Max(first, 1); i < line.Length && line[i - 1].Along <= head.Along + reach; i++)
        {
            double ax = (line[i - 1].Along - head.Along) * shrink, az = line[i - 1].Elevation - head.Elevation;
            double bx = (line[i].Along - head.Along) * shrink, bz = line[i].Elevation - head.Elevation;
            double dx = bx - ax, dz = bz - az;
            double length2 = dx * dx + dz * dz;
            double t = length2 == 0 ? 0 : Math.Clamp(-(ax * dx + az * dz) / length2, 0, 1);
            double px = ax + t * dx, pz = az + t * dz;
            best = Math.Min(best, Math.Sqrt(px * px + pz * pz));
        }
        return best;
    }

    private static int FirstFrom(ProfilePoint[] line, double along)
    {
        int low = 0, high = line.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (line[middle].Along < along)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
