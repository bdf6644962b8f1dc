using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Excavation lifts: for each row in turn, over the stations where it runs, the face is cut down to a depth below the row; the last cut
/// goes to the bottom.
/// </summary>
internal static class LiftTakeOff
{
    /// <summary>Cut below a row where the project file gives none: 1.5 ft or 0.5 m (this program's own).</summary>
    public static double DefaultBelowRow(LengthUnit unit) => Lengths.IsFoot(unit) ? 1.5 : 0.5;

    public static List<ExcavationLift> Measure(FaceRegions regions, IReadOnlyList<NailRow> rows, LengthUnit unit)
    {
        Wall wall = regions.Face.Wall;
        double below = wall.Lifts?.BelowRow ?? DefaultBelowRow(unit);
        var lifts = new List<ExcavationLift>();
        foreach (Section section in wall.Sections)
        {
            foreach (Leg leg in regions.Face.Legs)
            {
                Geometry open = FaceRegions.Of(section, leg, regions.Net(leg));
                if (open.IsEmpty || open.Area < 1e-9)
                    continue;
                int number = 0;
                Geometry left = open;
                IEnumerable<NailRow> inOrder = rows
                    .Where(r => r.Wall == wall && r.Section == section && r.Leg == leg.Index && r.GridStations.Count > 0)
                    .OrderBy(r => r.Number);
                foreach (NailRow row in inOrder)
                {
                    Geometry cut = FaceRegions.Overlay(left, AboveRow(row, section, leg, open, below), SpatialFunction.Intersection);
                    if (cut.Area < 1e-9)
                        continue;
                    lifts.Add(Make(regions, section, leg, ++number, row.Number, cut));
                    left = FaceRegions.Overlay(left, cut, SpatialFunction.Difference);
                }
                if (left.Area >= 1e-9)
                    lifts.Add(Make(regions, section, leg, ++number, null, left));
            }
        }
        return lifts;
    }

    private static Geometry AboveRow(NailRow row, Section section, Leg leg, Geometry region, double below)
    {
        Envelope extent = region.EnvelopeInternal;
        double half = section.HorizontalSpacing / 2;
        double first = row.GridStations[0] - half, last = row.GridStations[^1] + half;
        double beyond = row.GridStations[0] - half <= Math.Max(section.Start, leg.Start) ? 1e3 : 0;
        double after = last >= Math.Min(section.End, leg.End) ? 1e3 : 0;
        double from = Math.Max(first, Math.Max(section.Start, leg.Start)), to = Math.Min(last, Math.Min(section.End, leg.End));
        var shape = row.IsLevel
            ? new List<Coordinate> { new(from - beyond, row.Level - below), new(to + after, row.Level - below) }
            : Lowered(row.Wall.Top, from, to, beyond, after, row.Level + below);
        double high = extent.MaxY + 1;
        shape.Add(new Coordinate(shape[^1].X, high));
        shape.Add(new Coordinate(shape[0].X, high));
        return FaceRegions.PolygonOf(shape);
    }

    private static List<Coordinate> Lowered(Profile top, double from, double to, double beyond, double after, double depth)
    {
        List<Coordinate> line = ProfileLine.Make(top, from, to, 0);
        if (beyond > 0)
            line.Insert(0, new Coordinate(from - beyond, line[0].Y));
        if (after > 0)
            line.Add(new Coordinate(to + after, line[^1].Y));
        return [.. line.Select(c => new Coordinate(c.X, c.Y - depth))];
    }

    private static ExcavationLift Make(FaceRegions regions, Section section, Leg leg, int number, RowNumber? row, Geometry cut)
    {
        Wall wall = regions.Face.Wall;
        Envelope extent = cut.EnvelopeInternal;
        double exposed = cut.Coordinates.Select(c => c.X).Distinct().Max(x => FaceRegions.HeightAt(cut, x));
        return new ExcavationLift(
            wall, section, number, row, Math.Max(extent.MinX, leg.Start), Math.Min(extent.MaxX, leg.End), regions.Area(leg, cut),
            exposed, wall.Lifts?.MaxExposed, Volume(wall, section, leg, cut));
    }

    /// <summary>Average end area of the cross sections on the leg and section; the first and last go on to the section's limits.</summary>
    private static double? Volume(Wall wall, Section section, Leg leg, Geometry cut)
    {
        double from = Math.Max(section.Start, leg.Start), to = Math.Min(section.End, leg.End);
        if (wall.CrossSections.Count == 0 || to <= from)
            return null;
        List<double> stations = [from, .. wall.CrossSections.Select(c => c.Along).Where(a => a > from && a < to), to];
        return EndAreas.Volume([.. stations.Select(s => (s, AreaInFront(wall, s, cut)))]);
    }

    /// <summary>Area of the ground in front between the cut's lower and upper line at a station, between the two sections beside it.</summary>
    private static double AreaInFront(Wall wall, double along, Geometry cut)
    {
        Envelope extent = cut.EnvelopeInternal;
        double inside = Math.Clamp(along, extent.MinX + 1e-6, extent.MaxX - 1e-6);
        LineString line = cut.Factory.CreateLineString([new(inside, extent.MinY - 1), new(inside, extent.MaxY + 1)]);
        Envelope band = FaceRegions.Overlay(line, cut, SpatialFunction.Intersection).EnvelopeInternal;
        if (band.IsNull || inside != along && Math.Abs(inside - along) > 1e-3)
            return 0;
        CrossSection before = wall.CrossSections.LastOrDefault(c => c.Along <= along) ?? wall.CrossSections[0];
        CrossSection after = wall.CrossSections.FirstOrDefault(c => c.Along >= along) ?? wall.CrossSections[^1];
        double share = after.Along > before.Along ? (along - before.Along) / (after.Along - before.Along) : 0;
        return EndAreas.Between(before, band.MinY, band.MaxY) * (1 - share) + EndAreas.Between(after, band.MinY, band.MaxY) * share;
    }
}
