using NetTopologySuite.Geometries;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Area of face per nail: the Voronoi cells of the heads on each leg's face, unrolled along the face and up its slope, cut at the
/// outline and at openings. Verification test nails have none.
/// </summary>
internal static class HeadCells
{
    /// <summary>Cell areas by mark.</summary>
    public static Dictionary<string, double> Areas(FaceRegions regions, IEnumerable<Nail> nails)
    {
        Face face = regions.Face;
        var areas = new Dictionary<string, double>();
        foreach (IGrouping<int, Nail> onLeg in nails.Where(n => n.Kind != NailKind.Verification).GroupBy(n => face.LegAt(n.Along).Index))
        {
            Leg leg = face.Legs[onLeg.Key];
            double middle = (FaceRegions.Lowest(face.Wall) + FaceRegions.Highest(face.Wall)) / 2;
            double origin = face.Distance(leg.Start, leg.End, middle) / 2;
            Flat Unrolled(double along, double elevation) =>
                new(Along(face, leg, along, middle) - origin, (elevation - middle) * regions.SlopeFactor());
            List<(List<Flat> Ring, int Sign)> outline = [.. Rings(regions.Net(leg), c => Unrolled(c.X, c.Y))];
            List<(string Mark, Flat At)> heads = [.. onLeg.Select(n => (n.Mark, Unrolled(n.Along, n.Elevation))).OrderBy(h => h.Item2.X)];
            List<Flat> around = BoxAround(outline.SelectMany(r => r.Ring).Concat(heads.Select(h => h.At)));
            for (int i = 0; i < heads.Count; i++)
            {
                List<Bisector> sides = Sides(heads, i, around);
                areas[heads[i].Mark] = outline.Sum(r => r.Sign * Area(sides.Aggregate(r.Ring, Clip)));
            }
        }
        return areas;
    }

    private static double Along(Face face, Leg leg, double along, double elevation)
    {
        double inside = Math.Clamp(along, leg.Start, leg.End);
        return face.Distance(leg.Start, inside, elevation) + along - inside;
    }

    private static IEnumerable<(List<Flat> Ring, int Sign)> Rings(Geometry region, Func<Coordinate, Flat> map)
    {
        for (int i = 0; i < region.NumGeometries; i++)
        {
            if (region.GetGeometryN(i) is not Polygon polygon || polygon.IsEmpty)
                continue;
            yield return ([.. polygon.ExteriorRing.Coordinates.Skip(1).Select(map)], 1);
            foreach (LineString hole in polygon.InteriorRings)
                yield return ([.. hole.Coordinates.Skip(1).Select(map)], -1);
        }
    }

    /// <summary>
    /// The bisectors that bound a head's cell: a box around the face is cut by those to the other heads, nearest columns first, until
    /// none can reach it.
    /// </summary>
    private static List<Bisector> Sides(List<(string Mark, Flat At)> heads, int index, List<Flat> around)
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
