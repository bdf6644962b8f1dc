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
                    lifts.Add(Make(regions, section, leg, ++number, row.Number, below, cut));
                    left = FaceRegions.Overlay(left, cut, SpatialFunction.Difference);
                }
                if (left.Area >= 1e-9)
                    lifts.Add(Make(regions, section, leg, ++number, null, below, left));
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

    private static ExcavationLift Make(FaceRegions regions, Section section, Leg leg, int number, RowNumber? row, double below, Geometry cut)
    {
        Wall wall = regions.Face.Wall;
        Envelope extent = cut.EnvelopeInternal;
        double exposed = cut.Coordinates.Select(c => c.X).Distinct().Max(x => FaceRegions.HeightAt(cut, x));
        return new ExcavationLift(
            wall, section, number, row, Math.Max(extent.MinX, leg.Start), Math.Min(extent.MaxX, leg.End), below, regions.Area(leg, cut),
            exposed, wall.Lifts?.MaxExposed, Volume(wall, section, leg, cut));
    }

    /// <summary>Average end area of the cross sections on the leg and section; the first and last go on to the wall's ends. Between them the ground is
    /// taken straight, so that every end and bend of the cut counts as an end area too.</summary>
    private static double? Volume(Wall wall, Section section, Leg leg, Geometry cut)
    {
        if (wall.CrossSections.Count == 0)
            return null;
        const double inside = 1e-6;
        Envelope extent = cut.EnvelopeInternal;
        double from = Math.Max(extent.MinX, Math.Max(section.Start, leg.Start)), to = Math.Min(extent.MaxX, Math.Min(section.End, leg.End));
        List<double> ends =
        [
            from,
            .. cut.Coordinates.Select(c => c.X).Concat(wall.CrossSections.Select(c => c.Along)).Where(a => a > from + inside && a < to - inside).Distinct().Order(),
            to,
        ];
        double volume = 0;
        for (int i = 0; i + 1 < ends.Count; i++)
        {
            (double first, bool opens) = AreaInFront(wall, ends[i] + inside, cut);
            (double second, bool closes) = AreaInFront(wall, ends[i + 1] - inside, cut);
            volume += opens || closes
                ? (ends[i + 1] - ends[i]) * (first + second) / 2
                : EndAreas.Volume([(ends[i], first), (ends[i + 1], second)]);
        }
        return volume;
    }

    /// <summary>
    /// Area of the ground in front between the cut's lower and upper lines at a station, between the two sections beside it; and whether
    /// the cut itself closes there, so that the stretch beside it is a wedge and no pyramid.
    /// </summary>
    private static (double Area, bool Closed) AreaInFront(Wall wall, double along, Geometry cut)
    {
        List<double> levels = FaceRegions.Crossings(cut, along);
        if (levels.Count == 0 || levels[^1] - levels[0] < 1e-4)
            return (0, true);
        CrossSection before = wall.CrossSections.LastOrDefault(c => c.Along <= along) ?? wall.CrossSections[0];
        CrossSection after = wall.CrossSections.FirstOrDefault(c => c.Along >= along) ?? wall.CrossSections[^1];
        double share = after.Along > before.Along ? (along - before.Along) / (after.Along - before.Along) : 0;
        double area = 0;
        for (int i = 0; i + 1 < levels.Count; i += 2)
            area += EndAreas.Between(before, levels[i], levels[i + 1]) * (1 - share) + EndAreas.Between(after, levels[i], levels[i + 1]) * share;
        return (area, false);
    }
}
