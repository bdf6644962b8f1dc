using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// The face of a wall as polygons in the developed elevation (x along the layout line, y elevation), leg by leg, cut at the mitres;
/// and their true areas along the face. All edges are straight there: profiles, steps, section limits and mitres.
/// </summary>
/// <param name="shift">Added to the face offset: 0 for the shotcrete face, negative for a surface in front of it.</param>
internal sealed class FaceRegions(Face face, double shift = 0)
{
    private static readonly GeometryFactory Factory = new();

    public Face Face => face;

    /// <summary>The leg's outline between top and bottom, openings cut out.</summary>
    public Geometry Net(Leg leg) => Openings() is { } openings ? Overlay(Gross(leg), openings, SpatialFunction.Difference) : Gross(leg);

    /// <summary>The leg's outline between top and bottom.</summary>
    public Geometry Gross(Leg leg)
    {
        Wall wall = face.Wall;
        double low = Lowest(wall), high = Highest(wall);
        double reach = 1 + Math.Max(Reach(leg.StartCorner, low, high), Reach(leg.EndCorner, low, high));
        List<Coordinate> ring = ProfileLine.Make(wall.Top, leg.Start, leg.End, reach);
        List<Coordinate> bottom = ProfileLine.Make(wall.Bottom, leg.Start, leg.End, reach);
        bottom.Reverse();
        ring.AddRange(bottom);
        Geometry outline = PolygonOf(ring);
        return Overlay(outline, Between(leg, low - 1, high + 1, reach), SpatialFunction.Intersection);
    }

    /// <summary>The part of a leg's region that belongs to a section; at a corner or an end of the wall nothing is cut off.</summary>
    public static Geometry Of(Section section, Leg leg, Geometry region)
    {
        const double far = 1e7;
        double from = section.Start <= leg.Start ? leg.Start - far : section.Start;
        double to = section.End >= leg.End ? leg.End + far : section.End;
        if (from >= leg.End || to <= leg.Start)
            return Factory.CreateEmpty(Dimension.Surface);
        if (from < leg.Start && to > leg.End)
            return region;
        Envelope extent = region.EnvelopeInternal;
        if (extent.IsNull)
            return region;
        return Overlay(region, Box(Math.Max(from, extent.MinX - 1), Math.Min(to, extent.MaxX + 1), extent.MinY - 1, extent.MaxY + 1),
            SpatialFunction.Intersection);
    }

    /// <summary>The part of a region above a profile.</summary>
    public Geometry Above(Profile profile, Leg leg, Geometry region)
    {
        Envelope extent = region.EnvelopeInternal;
        if (extent.IsNull)
            return region;
        double beyond = Math.Max(leg.Start - extent.MinX, extent.MaxX - leg.End) + 1;
        List<Coordinate> ring = ProfileLine.Make(profile, leg.Start, leg.End, beyond);
        double high = Math.Max(extent.MaxY, ring.Max(c => c.Y)) + 1;
        ring.Add(new Coordinate(ring[^1].X, high));
        ring.Add(new Coordinate(ring[0].X, high));
        return Overlay(region, PolygonOf(ring), SpatialFunction.Intersection);
    }

    /// <summary>True area along the face: the integral of the scale of the arcs over the region, on the slope of the batter.</summary>
    public double Area(Leg leg, Geometry region)
    {
        double plan = 0;
        foreach ((Geometry part, double curvature) in Pieces(leg, region))
        {
            (double area, double moment) = Moments(part);
            double bend = curvature * face.Wall.Side;
            double slope = Slope();
            plan += area * (1 - bend * (OffsetAt(0))) - bend * slope * moment;
        }
        return plan * SlopeFactor();
    }

    /// <summary>Length up the slope of the batter for one of height.</summary>
    public double SlopeFactor() => Math.Sqrt(1 + Slope() * Slope());

    /// <summary>Height of the region over a place, just before and just after it: the greater of the two.</summary>
    public static double HeightAt(Geometry region, double along)
    {
        const double aside = 1e-6;
        return Math.Max(HeightOver(region, along - aside), HeightOver(region, along + aside));
    }

    /// <summary>The overlay of two geometries; of a mixed result only the polygons, since edges that merely touch have no area.</summary>
    public static Geometry Overlay(Geometry a, Geometry b, SpatialFunction operation)
    {
        Geometry result = OverlayNGRobust.Overlay(a, b, operation);
        return result is GeometryCollection and not (MultiPolygon or MultiLineString or MultiPoint)
            ? Factory.BuildGeometry(PolygonExtracter.GetPolygons(result))
            : result;
    }

    public static Geometry Box(double left, double right, double low, double high) =>
        Factory.ToGeometry(new Envelope(left, right, low, high));

    public static Geometry PolygonOf(List<Coordinate> ring)
    {
        ring.Add(ring[0].Copy());
        Polygon polygon = Factory.CreatePolygon([.. ring]);
        return polygon.IsValid ? polygon : GeometryFixer.Fix(polygon);
    }

    public static double Lowest(Wall wall) => Math.Min(wall.Bottom.Points.Min(p => p.Elevation), wall.Top.Points.Min(p => p.Elevation));

    public static double Highest(Wall wall) => Math.Max(wall.Bottom.Points.Max(p => p.Elevation), wall.Top.Points.Max(p => p.Elevation));

    /// <summary>Elevations at which a region's edges cross a place where it has no corner, from below: in and out in turn.</summary>
    public static List<double> Crossings(Geometry region, double along)
    {
        var levels = new List<double>();
        foreach (LineString ring in LinearComponentExtracter.GetLines(region).OfType<LineString>())
        {
            Coordinate[] corners = ring.Coordinates;
            for (int i = 0; i + 1 < corners.Length; i++)
            {
                Coordinate a = corners[i], b = corners[i + 1];
                if (a.X < along != b.X < along)
                    levels.Add(a.Y + (b.Y - a.Y) * (along - a.X) / (b.X - a.X));
            }
        }
        levels.Sort();
        return levels;
    }

    private static double HeightOver(Geometry region, double along)
    {
        List<double> levels = Crossings(region, along);
        double height = 0;
        for (int i = 0; i + 1 < levels.Count; i += 2)
            height += levels[i + 1] - levels[i];
        return height;
    }

    private IEnumerable<(Geometry Part, double Curvature)> Pieces(Leg leg, Geometry region)
    {
        IReadOnlyList<LayoutPiece> pieces = [.. face.Wall.LayoutLine.Pieces.Where(p => p.End > leg.Start + 1e-9 && p.Start < leg.End - 1e-9)];
        Envelope extent = region.EnvelopeInternal;
        if (pieces.Count == 1 || extent.IsNull)
        {
            yield return (region, pieces.Count == 0 ? 0 : pieces[0].Curvature);
            yield break;
        }
        for (int i = 0; i < pieces.Count; i++)
        {
            double from = i == 0 ? extent.MinX - 1 : pieces[i].Start;
            double to = i == pieces.Count - 1 ? extent.MaxX + 1 : pieces[i].End;
            if (to > extent.MinX && from < extent.MaxX)
                yield return (Overlay(region, Box(from, to, extent.MinY - 1, extent.MaxY + 1), SpatialFunction.Intersection), pieces[i].Curvature);
        }
    }

    private Geometry? Openings()
    {
        Geometry? all = null;
        foreach (Opening opening in face.Wall.Openings)
        {
            Geometry box = Box(opening.Start, opening.End, opening.Bottom, opening.Top);
            all = all is null ? box : Overlay(all, box, SpatialFunction.Union);
        }
        return all;
    }

    private Geometry Between(Leg leg, double low, double high, double reach)
    {
        double Start(double z) => leg.StartCorner is null ? leg.Start : leg.Start + Cut(leg.StartCorner, z);
        double End(double z) => leg.EndCorner is null ? leg.End : leg.End - Cut(leg.EndCorner, z);
        double margin = reach + leg.End - leg.Start;
        if (Start(low) > End(low) + margin || Start(high) > End(high) + margin)
            return Factory.CreateEmpty(Dimension.Surface);
        return PolygonOf([new(Start(low), low), new(End(low), low), new(End(high), high), new(Start(high), high)]);
    }

    private double Reach(Corner? corner, double low, double high) =>
        corner is null ? 0 : Math.Max(Math.Abs(Cut(corner, low)), Math.Abs(Cut(corner, high)));

    private double Cut(Corner corner, double elevation) => OffsetAt(elevation) * Math.Tan(corner.Deflection * face.Wall.Side / 2);

    private double OffsetAt(double elevation) => face.OffsetAt(elevation) + shift;

    private double Slope() => face.Wall.Batter is { } batter ? Math.Tan(Angles.ToRadians(batter.Angle)) : 0;

    /// <summary>Area and first moment about elevation 0, by the shoelace sums, taken about the region's own corner to keep digits.</summary>
    private static (double Area, double Moment) Moments(Geometry region)
    {
        double area = 0, moment = 0;
        for (int i = 0; i < region.NumGeometries; i++)
        {
            if (region.GetGeometryN(i) is not Polygon polygon || polygon.IsEmpty)
                continue;
            AddRing(polygon.ExteriorRing, 1, ref area, ref moment);
            foreach (LineString hole in polygon.InteriorRings)
                AddRing(hole, -1, ref area, ref moment);
        }
        return (area, moment);
    }

    private static void AddRing(LineString ring, int sign, ref double area, ref double moment)
    {
        Coordinate[] points = ring.Coordinates;
        Coordinate origin = points[0];
        double twice = 0, six = 0;
        for (int i = 0; i + 1 < points.Length; i++)
        {
            double x1 = points[i].X - origin.X, y1 = points[i].Y - origin.Y;
            double x2 = points[i + 1].X - origin.X, y2 = points[i + 1].Y - origin.Y;
            double cross = x1 * y2 - x2 * y1;
            twice += cross;
            six += (y1 + y2) * cross;
        }
        double orientation = twice < 0 ? -1 : 1;
        double ringArea = orientation * twice / 2;
        area += sign * ringArea;
        moment += sign * (orientation * six / 6 + ringArea * origin.Y);
    }
}
