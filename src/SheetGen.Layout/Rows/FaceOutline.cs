using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The outline of a wall's face, leg by leg: top and bottom with their vertical steps, free ends, openings and stretches closed to nails.
/// Distances are along the face at the head's elevation, elevations as they are (a batter is not developed).
/// </summary>
internal sealed class FaceOutline
{
    /// <summary>How far above or below the profile, in edge_min, a height allowed to heads is looked for: a steeper profile has none there.</summary>
    private const double SearchDepth = 8;
    private const int Halvings = 50;

    private readonly Face _face;
    private readonly double _edge;
    private readonly Side[] _sides;

    /// <summary>Heights that were asked for already: rows are tried with many gaps, and each asks at the same places.</summary>
    private readonly Dictionary<double, double> _highest = [];
    private readonly Dictionary<double, double> _lowest = [];

    public FaceOutline(Face face, double edgeMin)
    {
        _face = face;
        _edge = edgeMin;
        _sides = [.. face.Legs.Select(leg => new Side([.. face.Wall.Top.Between(leg.Start, leg.End)], [.. face.Wall.Bottom.Between(leg.Start, leg.End)]))];
    }

    /// <summary>True where top, bottom, openings and closed stretches leave a head its place: inside, edge_min from them. Ends and corners are kept by the bays.</summary>
    public bool Holds(Head head, double tolerance)
    {
        Wall wall = _face.Wall;
        double top = Math.Min(wall.Top.At(head.Along), wall.Top.Before(head.Along));
        double bottom = Math.Max(wall.Bottom.At(head.Along), wall.Bottom.Before(head.Along));
        if (head.Elevation > top + tolerance || head.Elevation < bottom - tolerance)
            return false;
        if (wall.HeadsAboveGrade && head.Elevation < GradeAt(head.Along) - tolerance)
            return false;
        double least = _edge - tolerance;
        Side side = SideAt(head.Along);
        return ToProfile(side.Top, head, _edge) >= least && ToProfile(side.Bottom, head, _edge) >= least && !IsClosed(head, least);
    }

    /// <summary>Distance of a head from top, bottom and free ends, and which of them is nearest; negative outside of the face.</summary>
    public (double Distance, string Edge) Nearest(Head head)
    {
        Leg leg = _face.LegAt(head.Along);
        Side side = SideAt(head.Along);
        (double Distance, string Edge) least = (ToProfile(side.Top, head, double.PositiveInfinity), "top");
        double toBottom = ToProfile(side.Bottom, head, double.PositiveInfinity);
        if (toBottom < least.Distance)
            least = (toBottom, "bottom");
        foreach (double end in Ends(leg))
        {
            double toEnd = ToEnd(end, head);
            if (toEnd < least.Distance)
                least = (toEnd, "end");
        }
        bool isOutside = head.Elevation > _face.Wall.Top.At(head.Along) || head.Elevation < _face.Wall.Bottom.At(head.Along)
            || head.Along < leg.Start || head.Along > leg.End;
        return isOutside ? (-least.Distance, least.Edge) : least;
    }

    /// <summary>Distance of a head from the rectangle of an opening; 0 or less inside.</summary>
    public double ToOpening(Opening opening, Head head)
    {
        double x = Math.Max(Run(head, opening.Start), -Run(head, opening.End));
        double z = Math.Max(opening.Bottom - head.Elevation, head.Elevation - opening.Top);
        return x > 0 && z > 0 ? Math.Sqrt(x * x + z * z) : Math.Max(x, z);
    }

    /// <summary>Highest elevation that a head may have at a place; not a number where there is none.</summary>
    public double HighestAllowed(double along)
    {
        if (_highest.TryGetValue(along, out double known))
            return known;
        double top = Math.Min(_face.Wall.Top.At(along), _face.Wall.Top.Before(along));
        ProfilePoint[] line = SideAt(along).Top;
        return _highest[along] = Bisect(top - SearchDepth * _edge, top, z => ToProfile(line, new Head(along, z), _edge) >= _edge, top - _edge);
    }

    /// <summary>Lowest elevation that a head may have at a place; not a number where there is none.</summary>
    public double LowestAllowed(double along)
    {
        if (_lowest.TryGetValue(along, out double known))
            return known;
        double bottom = Math.Max(_face.Wall.Bottom.At(along), _face.Wall.Bottom.Before(along));
        ProfilePoint[] line = SideAt(along).Bottom;
        return _lowest[along] = Bisect(bottom + SearchDepth * _edge, bottom, z => ToProfile(line, new Head(along, z), _edge) >= _edge, bottom + _edge);
    }

    /// <summary>The ranges of elevation at a place where an opening or a stretch closed to nails keeps heads out.</summary>
    public IEnumerable<(double From, double To)> ClosedAt(double along)
    {
        foreach (Opening o in _face.Wall.Openings)
        {
            var beside = new Head(along, (o.Bottom + o.Top) / 2);
            double dx = Math.Max(0, Math.Max(Run(beside, o.Start), -Run(beside, o.End)));
            if (dx >= _edge)
                continue;
            double dz = Math.Sqrt(_edge * _edge - dx * dx);
            yield return (o.Bottom - dz, o.Top + dz);
        }
        if (_face.Wall.HeadsAboveGrade)
            yield return (double.NegativeInfinity, GradeAt(along));
        foreach (ClosedStretch c in _face.Wall.ClosedStretches)
        {
            if (along > c.Start && along < c.End)
                yield return (c.Bottom ?? double.NegativeInfinity, c.Top ?? double.PositiveInfinity);
        }
    }

    /// <summary>The higher side of the finished grade at a place.</summary>
    private double GradeAt(double along) =>
        Math.Max(_face.Wall.FinishedGrade!.At(along), _face.Wall.FinishedGrade.Before(along));

    private sealed record Side(ProfilePoint[] Top, ProfilePoint[] Bottom);

    private Side SideAt(double along) => _sides[_sides.Length == 1 ? 0 : _face.LegAt(along).Index];

    private static IEnumerable<double> Ends(Leg leg)
    {
        if (leg.StartCorner is null)
            yield return leg.Start;
        if (leg.EndCorner is null)
            yield return leg.End;
    }

    private bool IsClosed(Head head, double edge)
    {
        foreach (Opening o in _face.Wall.Openings)
        {
            if (ToOpening(o, head) < edge)
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
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (good + bad) / 2;
            if (holds(middle))
                good = middle;
            else
                bad = middle;
        }
        return good;
    }

    /// <summary>Distance along the face from a head to a place, positive up-station.</summary>
    private double Run(Head head, double along) => _face.SignedDistance(head.Along, along, head.Elevation);

    private double ToEnd(double end, Head head)
    {
        Wall wall = _face.Wall;
        double bottom = end == wall.End ? wall.Bottom.Before(end) : wall.Bottom.At(end), top = end == wall.End ? wall.Top.Before(end) : wall.Top.At(end);
        double z = Math.Max(0, Math.Max(bottom - head.Elevation, head.Elevation - top)), x = Run(head, end);
        return Math.Sqrt(x * x + z * z);
    }

    /// <summary>Least distance to a profile, or some figure over the limit.</summary>
    private double ToProfile(ProfilePoint[] line, Head head, double limit)
    {
        double best = double.PositiveInfinity;
        // Along the face a place is never nearer than this share of its distance along the line.
        double reach = _face.IsCurved ? limit / Math.Max(LeastScale(head), 1e-3) : limit;
        for (int i = Math.Max(FirstFrom(line, head.Along - reach), 1); i < line.Length && line[i - 1].Along <= head.Along + reach; i++)
        {
            double ax = Run(head, line[i - 1].Along), az = line[i - 1].Elevation - head.Elevation;
            double bx = Run(head, line[i].Along), bz = line[i].Elevation - head.Elevation;
            double dx = bx - ax, dz = bz - az;
            double length2 = dx * dx + dz * dz;
            double t = length2 == 0 ? 0 : Math.Clamp(-(ax * dx + az * dz) / length2, 0, 1);
            double px = ax + t * dx, pz = az + t * dz;
            best = Math.Min(best, Math.Sqrt(px * px + pz * pz));
        }
        return best;
    }

    private double LeastScale(Head head)
    {
        double offset = _face.OffsetAt(head.Elevation), least = double.PositiveInfinity;
        foreach (LayoutPiece piece in _face.Wall.LayoutLine.Pieces)
            least = Math.Min(least, 1 - Math.Max(piece.Curvature * _face.Wall.Side * offset, piece.CurvatureAt(piece.End) * _face.Wall.Side * offset));
        return least;
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
