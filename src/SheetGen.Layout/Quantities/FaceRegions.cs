using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using SheetGen.Layout.Rows;
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
    public Geometry Net(Leg leg) => Openings() is { } openings ? Outlines.Overlay(Gross(leg), openings, SpatialFunction.Difference) : Gross(leg);

    /// <summary>The leg's outline between top and bottom, cut at the mitres.</summary>
    public Geometry Gross(Leg leg) => Outlines.Overlay(
        Uncut(leg), Between(leg, Lowest(face.Wall) - 1, Highest(face.Wall) + 1, BeyondMitres(leg)), SpatialFunction.Intersection);

    /// <summary>The leg's outline between top and bottom, going on level beyond its corners.</summary>
    public Geometry Uncut(Leg leg)
    {
        double reach = BeyondMitres(leg);
        List<Coordinate> ring = ProfileLine.Make(face.Wall.Top, leg.Start, leg.End, reach);
        List<Coordinate> bottom = ProfileLine.Make(face.Wall.Bottom, leg.Start, leg.End, reach);
        bottom.Reverse();
        ring.AddRange(bottom);
        return Outlines.PolygonOf(ring);
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
        return Outlines.Overlay(region, Outlines.Box(Math.Max(from, extent.MinX - 1), Math.Min(to, extent.MaxX + 1), extent.MinY - 1, extent.MaxY + 1),
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
        return Outlines.Overlay(region, Outlines.PolygonOf(ring), SpatialFunction.Intersection);
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

    public static double Lowest(Wall wall) => Math.Min(wall.Bottom.Points.Min(p => p.Elevation), wall.Top.Points.Min(p => p.Elevation));

    public static double Highest(Wall wall) => Math.Max(wall.Bottom.Points.Max(p => p.Elevation), wall.Top.Points.Max(p => p.Elevation));

    /// <summary>How far a leg's outline must go beyond its corners so that the mitres cut it.</summary>
    private double BeyondMitres(Leg leg)
    {
        double low = Lowest(face.Wall), high = Highest(face.Wall);
        return 1 + Math.Max(Reach(leg.StartCorner, low, high), Reach(leg.EndCorner, low, high));
    }

    private IEnumerable<(Geometry Part, double Curvature)> Pieces(Leg leg, Geometry region)
    {
        IReadOnlyList<LayoutPiece> pieces = [.. face.Wall.LayoutLine.Pieces.Where(p => p.End > leg.Start + Tolerance.Rounding && p.Start < leg.End - Tolerance.Rounding)];
        Envelope extent = region.EnvelopeInternal;
        if ((pieces.Count == 1 && !pieces[0].IsSpiral) || extent.IsNull)
        {
            yield return (region, pieces.Count == 0 ? 0 : pieces[0].Curvature);
            yield break;
        }
        for (int i = 0; i < pieces.Count; i++)
        {
            double from = i == 0 ? extent.MinX - 1 : pieces[i].Start;
            double to = i == pieces.Count - 1 ? extent.MaxX + 1 : pieces[i].End;
            double[] stops = [from, .. pieces[i].Stops().Skip(1).SkipLast(1), to];
            for (int k = 0; k + 1 < stops.Length; k++)
            {
                if (stops[k + 1] <= extent.MinX || stops[k] >= extent.MaxX)
                    continue;
                Geometry part = Outlines.Overlay(region, Outlines.Box(stops[k], stops[k + 1], extent.MinY - 1, extent.MaxY + 1), SpatialFunction.Intersection);
                yield return (part, pieces[i].IsSpiral ? pieces[i].CurvatureAt(part.IsEmpty ? stops[k] : part.Centroid.X) : pieces[i].Curvature);
            }
        }
    }

    private Geometry? Openings()
    {
        Geometry? all = null;
        foreach (Opening opening in face.Wall.Openings)
        {
            Geometry box = Outlines.Box(opening.Start, opening.End, opening.Bottom, opening.Top);
            all = all is null ? box : Outlines.Overlay(all, box, SpatialFunction.Union);
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
        return Outlines.PolygonOf([new(Start(low), low), new(End(low), low), new(End(high), high), new(Start(high), high)]);
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
