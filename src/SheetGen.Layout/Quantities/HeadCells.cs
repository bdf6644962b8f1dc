using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Triangulate;
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
            Coordinate Unrolled(double along, double elevation) =>
                new(Along(face, leg, along, middle), (elevation - middle) * regions.SlopeFactor());
            Geometry outline = regions.Net(leg).Copy();
            outline.Apply(new Unroll(Unrolled));
            outline.GeometryChanged();
            AddCells(areas, outline, [.. onLeg.Select(n => (n.Mark, Unrolled(n.Along, n.Elevation)))]);
        }
        return areas;
    }

    private static double Along(Face face, Leg leg, double along, double elevation)
    {
        double inside = Math.Clamp(along, leg.Start, leg.End);
        return face.Distance(leg.Start, inside, elevation) + along - inside;
    }

    private static void AddCells(Dictionary<string, double> areas, Geometry outline, List<(string Mark, Coordinate At)> heads)
    {
        if (heads.Count == 1)
        {
            areas[heads[0].Mark] = outline.Area;
            return;
        }
        Envelope frame = outline.EnvelopeInternal.Copy();
        foreach ((_, Coordinate at) in heads)
            frame.ExpandToInclude(at);
        frame.ExpandBy(Math.Max(frame.Width, frame.Height));
        var builder = new VoronoiDiagramBuilder { ClipEnvelope = frame };
        builder.SetSites([.. heads.Select(h => h.At)]);
        GeometryCollection cells = builder.GetDiagram(outline.Factory);
        IPreparedGeometry prepared = PreparedGeometryFactory.Prepare(outline);
        var bySite = new Dictionary<(double X, double Y), double>();
        foreach (Geometry cell in cells)
        {
            double area = prepared.Contains(cell) ? cell.Area : FaceRegions.Overlay(cell, outline, SpatialFunction.Intersection).Area;
            var site = (Coordinate)cell.UserData;
            bySite[(site.X, site.Y)] = area;
        }
        foreach ((string mark, Coordinate at) in heads)
            areas[mark] = bySite.GetValueOrDefault((at.X, at.Y));
    }

    private sealed class Unroll(Func<double, double, Coordinate> map) : ICoordinateSequenceFilter
    {
        public bool Done => false;

        public bool GeometryChanged => true;

        public void Filter(CoordinateSequence sequence, int i)
        {
            Coordinate at = map(sequence.GetX(i), sequence.GetY(i));
            sequence.SetX(i, at.X);
            sequence.SetY(i, at.Y);
        }
    }
}
