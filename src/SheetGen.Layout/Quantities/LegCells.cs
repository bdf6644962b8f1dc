using NetTopologySuite.Geometries;
using SheetGen.Layout.Rows;
using SheetGen.Model;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// The Voronoi cells of the heads on one leg's face, unrolled along the face and up its slope, cut at the outline and at openings. On an
/// arc with a batter, where no unrolling keeps areas, they are brought to the leg's true area all alike. Heads on one place share a cell.
/// </summary>
internal sealed class LegCells
{
    private readonly Face _face;
    private readonly Leg _leg;
    private readonly double _middle, _origin, _slope, _scale;
    private readonly List<(List<Flat> Ring, int Sign)> _outline;
    private readonly List<(string Key, Flat At)> _heads;

    public LegCells(FaceRegions regions, Leg leg, IReadOnlyList<(string Key, Head At)> heads)
    {
        (_face, _leg) = (regions.Face, leg);
        _middle = (FaceRegions.Lowest(_face.Wall) + FaceRegions.Highest(_face.Wall)) / 2;
        _origin = _face.Distance(leg.Start, leg.End, _middle) / 2;
        _slope = regions.SlopeFactor();
        Geometry region = regions.Net(leg);
        _outline = [.. Rings(region)];
        double unrolled = _outline.Sum(r => r.Sign * Area(r.Ring));
        _scale = _face.IsCurved && unrolled > 0 ? regions.Area(leg, region) / unrolled : 1;
        _heads = Sorted(heads.Select(h => (h.Key, Unrolled(h.At))));
    }

    private LegCells(LegCells like, List<(string Key, Flat At)> heads)
    {
        (_face, _leg, _middle, _origin, _slope, _scale, _outline) = (like._face, like._leg, like._middle, like._origin, like._slope, like._scale, like._outline);
        _heads = heads;
    }

    /// <summary>True area of the leg's face.</summary>
    public double FaceArea => _scale * _outline.Sum(r => r.Sign * Area(r.Ring));

    /// <summary>The same face with other heads in the place of some.</summary>
    public LegCells With(IReadOnlySet<string> without, IEnumerable<(string Key, Head At)> added) =>
        new(this, Sorted([.. _heads.Where(h => !without.Contains(h.Key)), .. added.Select(h => (h.Key, Unrolled(h.At)))]));

    /// <summary>Cell areas of all heads.</summary>
    public IEnumerable<(string Key, double Area)> Areas()
    {
        List<Flat> around = BoxAround(_outline.SelectMany(r => r.Ring).Concat(_heads.Select(h => h.At)));
        for (int i = 0; i < _heads.Count; i++)
            yield return (_heads[i].Key, AreaOf(i, around));
    }

    /// <summary>Cell area of one head.</summary>
    public double AreaOf(string key) =>
        AreaOf(_heads.FindIndex(h => h.Key == key), BoxAround(_outline.SelectMany(r => r.Ring).Concat(_heads.Select(h => h.At))));

    private double AreaOf(int index, List<Flat> around)
    {
        List<Bisector> sides = Sides(_heads, index, around);
        int sharing = 1;
        for (int i = index - 1; i >= 0 && _heads[i].At.X == _heads[index].At.X; i--)
            sharing += _heads[i].At == _heads[index].At ? 1 : 0;
        for (int i = index + 1; i < _heads.Count && _heads[i].At.X == _heads[index].At.X; i++)
            sharing += _heads[i].At == _heads[index].At ? 1 : 0;
        return _scale * _outline.Sum(r => r.Sign * Area(sides.Aggregate(r.Ring, Clip))) / sharing;
    }

    private static List<(string Key, Flat At)> Sorted(IEnumerable<(string Key, Flat At)> heads) => [.. heads.OrderBy(h => h.At.X)];

    private Flat Unrolled(Head head) => Unrolled(head.Along.Number, head.Elevation.Number);

    private Flat Unrolled(double along, double elevation)
    {
        double inside = Math.Clamp(along, _leg.Start, _leg.End);
        return new(_face.Distance(_leg.Start, inside, _middle) + along - inside - _origin, (elevation - _middle) * _slope);
    }

    private IEnumerable<(List<Flat> Ring, int Sign)> Rings(Geometry region)
    {
        for (int i = 0; i < region.NumGeometries; i++)
        {
            if (region.GetGeometryN(i) is not Polygon polygon || polygon.IsEmpty)
                continue;
            yield return (Ring(polygon.ExteriorRing), 1);
            foreach (LineString hole in polygon.InteriorRings)
                yield return (Ring(hole), -1);
        }
    }

    /// <summary>A ring unrolled; an edge that goes from a tangent into an arc has a corner there.</summary>
    private List<Flat> Ring(LineString ring)
    {
        Coordinate[] points = ring.Coordinates;
        double[] joints = _face.IsCurved ? [.. _face.Wall.LayoutLine.Pieces.Select(p => p.Start).Where(s => s > _leg.Start && s < _leg.End)] : [];
        var flat = new List<Flat>(points.Length);
        for (int i = 1; i < points.Length; i++)
        {
            Coordinate a = points[i - 1], b = points[i];
            foreach (double joint in joints.Where(j => (j - a.X) * (j - b.X) < 0).OrderBy(j => Math.Abs(j - a.X)))
                flat.Add(Unrolled(joint, a.Y + (b.Y - a.Y) * (joint - a.X) / (b.X - a.X)));
            flat.Add(Unrolled(b.X, b.Y));
        }
        return flat;
    }

    /// <summary>
    /// The bisectors that bound a head's cell: a box around the face is cut by those to the other heads, nearest columns first, until
    /// none can reach it.
    /// </summary>
    private static List<Bisector> Sides(List<(string Key, Flat At)> heads, int index, List<Flat> around)
    {
        Flat at = heads[index].At;
        List<Flat> cell = around;
        var sides = new List<Bisector>();
        int before = index - 1, after = index + 1;
        double radius = Radius(cell, at);
        while (true)
        {
            double left = before >= 0 ? at.X - heads[before].At.X : double.PositiveInfinity;
            double right = after < heads.Count ? heads[after].At.X - at.X : double.PositiveInfinity;
            if (Math.Min(left, right) > 2 * radius)
                return sides;
            Flat other = heads[left <= right ? before-- : after++].At;
            double dx = other.X - at.X, dy = other.Y - at.Y;
            if (dx == 0 && dy == 0)
                continue;
            var side = new Bisector(dx, dy, dx * (at.X + other.X) / 2 + dy * (at.Y + other.Y) / 2);
            if (!cell.Exists(p => side.Beyond(p) > 0))
                continue;
            sides.Add(side);
            cell = Clip(cell, side);
            radius = Radius(cell, at);
        }
    }

    private static List<Flat> BoxAround(IEnumerable<Flat> points)
    {
        double left = double.PositiveInfinity, right = double.NegativeInfinity, low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (Flat p in points)
        {
            (left, right) = (Math.Min(left, p.X), Math.Max(right, p.X));
            (low, high) = (Math.Min(low, p.Y), Math.Max(high, p.Y));
        }
        return [new(left - 1, low - 1), new(right + 1, low - 1), new(right + 1, high + 1), new(left - 1, high + 1)];
    }

    private static double Radius(List<Flat> cell, Flat at) =>
        cell.Count == 0 ? 0 : Math.Sqrt(cell.Max(p => (p.X - at.X) * (p.X - at.X) + (p.Y - at.Y) * (p.Y - at.Y)));

    /// <summary>The part of a ring on the head's side; where the ring is not convex, parts hang together by edges without area.</summary>
    private static List<Flat> Clip(List<Flat> ring, Bisector side)
    {
        var kept = new List<Flat>(ring.Count + 2);
        for (int i = 0; i < ring.Count; i++)
        {
            Flat a = ring[i], b = ring[(i + 1) % ring.Count];
            double da = side.Beyond(a), db = side.Beyond(b);
            if (da <= 0)
                kept.Add(a);
            if (da < 0 && db > 0 || da > 0 && db < 0)
            {
                double t = da / (da - db);
                kept.Add(new Flat(a.X + (b.X - a.X) * t, a.Y + (b.Y - a.Y) * t));
            }
        }
        return kept;
    }

    private static double Area(List<Flat> ring)
    {
        double twice = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            Flat a = ring[i], b = ring[(i + 1) % ring.Count];
            twice += a.X * b.Y - b.X * a.Y;
        }
        return Math.Abs(twice) / 2;
    }

    private readonly record struct Flat(double X, double Y);

    /// <summary>The line half way to another head; what is beyond it is nearer to the other.</summary>
    private readonly record struct Bisector(double X, double Y, double Limit)
    {
        public double Beyond(Flat point) => X * point.X + Y * point.Y - Limit;
    }
}
