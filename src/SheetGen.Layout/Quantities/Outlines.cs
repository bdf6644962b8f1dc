using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using SheetGen.Layout.Rows;
using SheetGen.Model;

namespace SheetGen.Layout.Quantities;

/// <summary>Outlines on the developed elevation, x along the layout line and y elevation: cutting them, and reading heights and edges off them.</summary>
internal static class Outlines
{
    /// <summary>Further up, down or along than any wall reaches, in project units; still exact in the overlay.</summary>
    public const double FarOff = 1e6;

    /// <summary>What a lift's lower edge is lengthened by at the end of a leg, in project units: further than a mitre reaches past it.</summary>
    public const double Beyond = 1e3;

    private static readonly GeometryFactory Factory = new();

    /// <summary>Height of the region over a place, just before and just after it: the greater of the two.</summary>
    public static double HeightAt(Geometry region, double along) =>
        Math.Max(Height(Crossings(region, along, false)), Height(Crossings(region, along, true)));

    /// <summary>Total height of the stretches that are entered and left in turn.</summary>
    public static double Height(List<double> levels)
    {
        double height = 0;
        for (int i = 0; i + 1 < levels.Count; i += 2)
            height += levels[i + 1] - levels[i];
        return height;
    }

    /// <summary>Greatest height of the region over any place.</summary>
    public static double GreatestHeight(Geometry region) =>
        region.IsEmpty ? 0 : region.Coordinates.Select(c => c.X).Distinct().Max(x => HeightAt(region, x));

    /// <summary>The rings of the region's polygons as (along, elevation), outer rings and holes, each closed.</summary>
    public static IReadOnlyList<IReadOnlyList<ProfilePoint>> Rings(Geometry region) =>
    [
        .. PolygonExtracter.GetPolygons(region).OfType<Polygon>().Where(p => !p.IsEmpty)
            .SelectMany(p => p.InteriorRings.Prepend(p.ExteriorRing))
            .Select(r => (IReadOnlyList<ProfilePoint>)[.. r.Coordinates.Select(c => new ProfilePoint(c.X, c.Y))]),
    ];

    /// <summary>The lower edge of the region from left to right; a vertical step gives two points at one place.</summary>
    public static IReadOnlyList<ProfilePoint> LowerEdge(Geometry region)
    {
        double[] places = [.. region.Coordinates.Select(c => Math.Round(c.X, Tolerance.RoundingDecimals)).Distinct().Order()];
        var edge = new List<ProfilePoint>();
        for (int i = 0; i + 1 < places.Length; i++)
        {
            if (Crossings(region, places[i], true) is not [double first, ..] || Crossings(region, places[i + 1], false) is not [double last, ..])
                continue;
            if (edge.Count == 0 || Math.Abs(edge[^1].Along - places[i]) + Math.Abs(edge[^1].Elevation - first) > Tolerance.Rounding)
                edge.Add(new ProfilePoint(places[i], first));
            edge.Add(new ProfilePoint(places[i + 1], last));
        }
        return edge;
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

    /// <summary>Elevations at which a region is entered and left in turn, from below, just after or just before a place.</summary>
    public static List<double> Crossings(Geometry region, double along, bool after)
    {
        var levels = new List<double>();
        foreach (LineString ring in LinearComponentExtracter.GetLines(region).OfType<LineString>())
        {
            Coordinate[] corners = ring.Coordinates;
            for (int i = 0; i + 1 < corners.Length; i++)
            {
                Coordinate a = corners[i], b = corners[i + 1];
                if (after ? a.X <= along != b.X <= along : a.X < along != b.X < along)
                    levels.Add(a.Y + (b.Y - a.Y) * (along - a.X) / (b.X - a.X));
            }
        }
        levels.Sort();
        return levels;
    }
}
