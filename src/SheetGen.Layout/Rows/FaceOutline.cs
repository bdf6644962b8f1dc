using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The outline of a wall's face, leg by leg: top and bottom with their vertical steps, free ends, openings and spans closed to nails.
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
    private readonly Dictionary<Along, Elevation> _highest = [];
    private readonly Dictionary<Along, Elevation> _lowest = [];

    public FaceOutline(Face face, double edgeMin)
    {
        _face = face;
        _edge = edgeMin;
        _sides = [.. face.Legs.Select(leg => new Side([.. face.Wall.Top.Between(leg.Start, leg.End)], [.. face.Wall.Bottom.Between(leg.Start, leg.End)]))];
    }

    /// <summary>True where top, bottom, openings and closed spans leave a head its place: inside, edge_min from them. Ends and corners are kept by the bays.</summary>
    public bool Holds(Head head, double tolerance)
    {
        Wall wall = _face.Wall;
        if (head.Elevation > wall.Top.LowerAt(head.Along) + tolerance || head.Elevation < wall.Bottom.HigherAt(head.Along) - tolerance)
            return false;
        if (wall.HeadsAboveGrade && head.Elevation < wall.FinishedGrade!.HigherAt(head.Along) - tolerance)
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
        foreach (Along end in Ends(leg))
        {
            double toEnd = ToEnd(end, head);
            if (toEnd < least.Distance)
                least = (toEnd, "end");
        }
        bool isOutside = head.Elevation > _face.Wall.Top.At(head.Along) || head.Elevation < _face.Wall.Bottom.At(head.Along)
            || head.Along.Number < leg.Start || head.Along.Number > leg.End;
        return isOutside ? (-least.Distance, least.Edge) : least;
    }

    /// <summary>Distance of a head from the rectangle of an opening; 0 or less inside.</summary>
    public double ToOpening(Opening opening, Head head)
    {
        double x = Math.Max(Run(head, new Along(opening.Start)), -Run(head, new Along(opening.End)));
        double z = Math.Max(new Elevation(opening.Bottom) - head.Elevation, head.Elevation - new Elevation(opening.Top));
        return x > 0 && z > 0 ? Math.Sqrt(x * x + z * z) : Math.Max(x, z);
    }

    /// <summary>Highest elevation that a head may have at a place; not a number where there is none.</summary>
    public Elevation HighestAllowed(Along along)
    {
        if (_highest.TryGetValue(along, out Elevation known))
            return known;
        Elevation top = _face.Wall.Top.LowerAt(along);
        ProfilePoint[] line = SideAt(along).Top;
        return _highest[along] = Bisect(top - SearchDepth * _edge, top, z => ToProfile(line, new Head(along, z), _edge) >= _edge, top - _edge);
    }

    /// <summary>Lowest elevation that a head may have at a place; not a number where there is none.</summary>
    public Elevation LowestAllowed(Along along)
    {
        if (_lowest.TryGetValue(along, out Elevation known))
            return known;
        Elevation bottom = _face.Wall.Bottom.HigherAt(along);
        ProfilePoint[] line = SideAt(along).Bottom;
        return _lowest[along] = Bisect(bottom + SearchDepth * _edge, bottom, z => ToProfile(line, new Head(along, z), _edge) >= _edge, bottom + _edge);
    }

    /// <summary>The ranges of elevation at a place where an opening or a span closed to nails keeps heads out.</summary>
    public IEnumerable<(Elevation From, Elevation To)> ClosedAt(Along along)
    {
        foreach (Opening o in _face.Wall.Openings)
        {
            Elevation bottom = new(o.Bottom), top = new(o.Top);
            var beside = new Head(along, Elevation.Middle(bottom, top));
            double dx = Math.Max(0, Math.Max(Run(beside, new Along(o.Start)), -Run(beside, new Along(o.End))));
            if (dx >= _edge)
                continue;
            double dz = Math.Sqrt(_edge * _edge - dx * dx);
            yield return (bottom - dz, top + dz);
        }
        if (_face.Wall.HeadsAboveGrade)
            yield return (new Elevation(double.NegativeInfinity), _face.Wall.FinishedGrade!.HigherAt(along));
        foreach (ClosedStretch c in _face.Wall.ClosedStretches)
        {
            if (along.Number > c.Start && along.Number < c.End)
                yield return (new Elevation(c.Bottom ?? double.NegativeInfinity), new Elevation(c.Top ?? double.PositiveInfinity));
        }
    }

    private sealed record Side(ProfilePoint[] Top, ProfilePoint[] Bottom);

    private Side SideAt(Along along) => _sides[_sides.Length == 1 ? 0 : _face.LegAt(along).Index];

    private static IEnumerable<Along> Ends(Leg leg)
    {
        if (leg.StartCorner is null)
            yield return new Along(leg.Start);
        if (leg.EndCorner is null)
            yield return new Along(leg.End);
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
            if (head.Along.Number > c.Start && head.Along.Number < c.End && head.Elevation.Number > (c.Bottom ?? double.NegativeInfinity)
                && head.Elevation.Number < (c.Top ?? double.PositiveInfinity))
                return true;
        }
        return false;
    }

    /// <summary>Moving away from one edge keeps a ball inside: the condition turns once between the two ends, so bisection finds it.</summary>
    private static Elevation Bisect(Elevation good, Elevation bad, Func<Elevation, bool> holds, Elevation straight)
    {
        if (holds(straight))
            return straight;
        if (!holds(good))
            return new Elevation(double.NaN);
        for (int i = 0; i < Halvings; i++)
        {
            var middle = Elevation.Middle(good, bad);
            if (holds(middle))
                good = middle;
            else
                bad = middle;
        }
        return good;
    }

    /// <summary>Distance along the face from a head to a place, positive up-station.</summary>
    private double Run(Head head, Along along) => _face.SignedDistance(head.Along, along, head.Elevation);

    private double ToEnd(Along end, Head head)
    {
        Wall wall = _face.Wall;
        bool isLast = end.Number == wall.End;
        Elevation bottom = isLast ? wall.Bottom.Before(end) : wall.Bottom.At(end), top = isLast ? wall.Top.Before(end) : wall.Top.At(end);
        double z = Math.Max(0, Math.Max(bottom - head.Elevation, head.Elevation - top)), x = Run(head, end);
        return Math.Sqrt(x * x + z * z);
    }

    /// <summary>Least distance to a profile, or some figure over the limit.</summary>
    private double ToProfile(ProfilePoint[] line, Head head, double limit)
    {
        double best = double.PositiveInfinity;
        // Along the face a place is never nearer than this share of its distance along the line.
        double reach = _face.IsCurved ? limit / Math.Max(LeastScale(head), RowTolerance.LeastScale) : limit;
        for (int i = Math.Max(FirstFrom(line, head.Along - reach), 1); i < line.Length && line[i - 1].Along <= (head.Along + reach).Number; i++)
        {
            double ax = Run(head, new Along(line[i - 1].Along)), az = line[i - 1].Elevation - head.Elevation.Number;
            double bx = Run(head, new Along(line[i].Along)), bz = line[i].Elevation - head.Elevation.Number;
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

    private static int FirstFrom(ProfilePoint[] line, Along along)
    {
        int low = 0, high = line.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (line[middle].Along < along.Number)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
