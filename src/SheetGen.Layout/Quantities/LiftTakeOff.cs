using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Excavation lifts, each what a crew cuts at once on one leg of a section: for each row in turn, over the stations where it runs, down
/// to a depth below the row; the last cut goes to the bottom. A cut that is no lift by itself (lower than a third of the vertical
/// spacing, or smaller than half of a nail's H x V) is cut together with the next below it that it stands on, the last one with the one
/// above, unless the face left open would then be higher than allowed (1.25 x the vertical spacing where no limit is given).
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
                Geometry gross = FaceRegions.Of(section, leg, regions.Gross(leg));
                if (gross.Area < QuantityTolerance.NoArea)
                    continue;
                List<NailRow> inOrder = [.. rows
                    .Where(r => r.Wall == wall && r.Section == section && r.Leg == leg.Index && r.GridStations.Count > 0)
                    .OrderBy(r => r.Number)];
                List<Cut> cuts = WithoutSlivers(Cuts(inOrder, section, leg, FaceRegions.Of(section, leg, regions.Uncut(leg)), gross, below), section, wall.Lifts?.MaxExposed ?? 1.25 * section.VerticalSpacing);
                Geometry net = FaceRegions.Of(section, leg, regions.Net(leg));
                for (int i = 0; i < cuts.Count; i++)
                    lifts.Add(Make(regions, section, leg, i + 1, cuts[i], below, net));
            }
        }
        return lifts;
    }

    /// <summary>One cut a row and one to the bottom, from the top down; what is nothing on the face is left out.</summary>
    private static List<Cut> Cuts(List<NailRow> rows, Section section, Leg leg, Geometry uncut, Geometry gross, double below)
    {
        var cuts = new List<Cut>();
        Geometry left = uncut;
        foreach (NailRow row in rows)
        {
            Geometry shape = Outlines.Overlay(left, AboveRow(row, section, leg, uncut, below), SpatialFunction.Intersection);
            if (Take(shape, [row.Number]))
                left = Outlines.Overlay(left, shape, SpatialFunction.Difference);
        }
        Take(left, []);
        return cuts;

        bool Take(Geometry shape, IReadOnlyList<RowNumber> of)
        {
            Geometry onFace = Outlines.Overlay(shape, gross, SpatialFunction.Intersection);
            if (onFace.Area < QuantityTolerance.NoArea)
                return false;
            cuts.Add(new Cut(of, shape, onFace));
            return true;
        }
    }

    private static List<Cut> WithoutSlivers(List<Cut> cuts, Section section, double limit)
    {
        var kept = new List<Cut>(cuts);
        for (int i = 0; i < kept.Count && kept.Count > 1; i++)
        {
            if (!IsSliver(kept[i], section))
                continue;
            // The next below that it stands on, or else the nearest above.
            IEnumerable<int> others = Enumerable.Range(i + 1, kept.Count - i - 1).Concat(Enumerable.Range(0, i).Reverse());
            int? with = others.Cast<int?>().FirstOrDefault(o => kept[o!.Value].OnFace.Distance(kept[i].OnFace) < Tolerance.SameLength && Merged(kept[o.Value], kept[i]).Height <= limit + Tolerance.SameLength);
            if (with is not { } other)
                continue;
            kept[other] = Merged(kept[other], kept[i]);
            kept.RemoveAt(i);
            i = -1;
        }
        return kept;
    }

    private static bool IsSliver(Cut cut, Section section) =>
        cut.Height < section.VerticalSpacing / 3 || cut.OnFace.Area < section.HorizontalSpacing * section.VerticalSpacing / 2;

    private static Cut Merged(Cut a, Cut b) => new(
        [.. a.Rows.Concat(b.Rows).Order()], Outlines.Overlay(a.Shape, b.Shape, SpatialFunction.Union), Outlines.Overlay(a.OnFace, b.OnFace, SpatialFunction.Union));

    private static Geometry AboveRow(NailRow row, Section section, Leg leg, Geometry region, double below)
    {
        double half = section.HorizontalSpacing / 2;
        double first = row.GridStations[0] - half, last = row.GridStations[^1] + half;
        double start = Math.Max(section.Start, leg.Start), end = Math.Min(section.End, leg.End);
        double before = first <= start ? Outlines.Beyond : 0, after = last >= end ? Outlines.Beyond : 0;
        double from = Math.Max(first, start), to = Math.Min(last, end);
        List<Coordinate> shape = row.IsLevel
            ? [new(from - before, row.Level - below), new(to + after, row.Level - below)]
            : Lowered(row.Wall.Top, from, to, before, after, row.Level + below);
        double high = region.EnvelopeInternal.MaxY + 1;
        shape.Add(new Coordinate(shape[^1].X, high));
        shape.Add(new Coordinate(shape[0].X, high));
        return Outlines.PolygonOf(shape);
    }

    private static List<Coordinate> Lowered(Profile top, double from, double to, double before, double after, double depth)
    {
        List<Coordinate> line = ProfileLine.Make(top, from, to, 0);
        if (before > 0)
            line.Insert(0, new Coordinate(from - before, line[0].Y));
        if (after > 0)
            line.Add(new Coordinate(to + after, line[^1].Y));
        return [.. line.Select(c => new Coordinate(c.X, c.Y - depth))];
    }

    private static ExcavationLift Make(FaceRegions regions, Section section, Leg leg, int number, Cut cut, double below, Geometry net)
    {
        Wall wall = regions.Face.Wall;
        Envelope extent = cut.OnFace.EnvelopeInternal;
        Geometry open = Outlines.Overlay(cut.OnFace, net, SpatialFunction.Intersection);
        return new ExcavationLift(
            wall, section, number, cut.Rows.Count > 0 ? cut.Rows[^1] : null, Math.Max(extent.MinX, leg.Start), Math.Min(extent.MaxX, leg.End), below,
            regions.Area(leg, open), cut.Height, wall.Lifts?.MaxExposed, LiftVolume.Of(regions.Face, section, leg, cut.Shape))
        {
            Leg = leg.Index,
            Rows = cut.Rows,
            Outline = Outlines.Rings(open),
            LowerEdge = Outlines.LowerEdge(cut.OnFace),
        };
    }

    /// <param name="Rows">The rows that it is cut for; empty for the cut to the bottom.</param>
    /// <param name="Shape">Between top and bottom, going on beyond the leg's corners.</param>
    /// <param name="OnFace">The part on the face, openings included.</param>
    private sealed record Cut(IReadOnlyList<RowNumber> Rows, Geometry Shape, Geometry OnFace)
    {
        public double Height { get; } = Outlines.GreatestHeight(OnFace);
    }
}
