using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>
/// Precast panels. They stand plumb on the face through the batter's elevation: there their breaks, widths, mitres, openings and areas
/// are all taken. Level courses from the wall's lowest bottom, column by column between breaks, restarted at the mitres of corners. A
/// panel belongs to the section of its middle. What is less than two quanta wide or high belongs to its neighbour.
/// </summary>
internal static class PanelTakeOff
{
    public static List<Panel> Panels(Wall wall, LengthUnit unit)
    {
        if (wall.Panels is not { } size)
            return [];
        Face face = PanelColumns.PlumbFace(wall);
        var regions = new FaceRegions(face);
        double datum = wall.Bottom.Points.Min(p => p.Elevation), tolerance = 2 * Lengths.Quantum(unit);
        var panels = new List<Panel>();
        foreach (Leg leg in face.Legs)
        {
            Geometry gross = regions.Gross(leg);
            List<double> cuts = AtPoints(wall, WithoutSlivers(PanelColumns.Edges(face, leg, size), tolerance));
            for (int i = 0; i + 1 < cuts.Count; i++)
            {
                Geometry column = Outlines.Overlay(gross, Outlines.Box(cuts[i], cuts[i + 1], -Outlines.FarOff, Outlines.FarOff), SpatialFunction.Intersection);
                if (column.IsEmpty)
                    continue;
                double width = PanelColumns.Length(face, leg, cuts[i], cuts[i + 1]);
                Envelope extent = column.EnvelopeInternal;
                int first = (int)Math.Floor((extent.MinY - datum + tolerance) / size.Height), last = (int)Math.Ceiling((extent.MaxY - datum - tolerance) / size.Height) - 1;
                for (int course = first; course <= last; course++)
                {
                    double low = course == first ? -Outlines.FarOff : datum + course * size.Height, high = course == last ? Outlines.FarOff : datum + (course + 1) * size.Height;
                    Geometry shape = Outlines.Overlay(column, Outlines.Box(cuts[i], cuts[i + 1], low, high), SpatialFunction.Intersection);
                    if (Make(wall, regions, leg, i + 1, course + 1, width, shape, cuts[i], cuts[i + 1], size, unit) is { } panel)
                        panels.Add(panel);
                }
            }
        }
        return panels;
    }

    /// <summary>Panels of one section, course, size and cut together, in order.</summary>
    public static List<PanelCount> Count(IEnumerable<Panel> panels, LengthUnit unit) =>
    [
        .. panels.GroupBy(p => (p.Section, p.Course, p.Mark))
            .OrderBy(g => g.Key.Section.Start).ThenBy(g => g.Key.Course).ThenBy(g => g.First().Size)
            .ThenByDescending(g => g.First().Width).ThenByDescending(g => g.First().StartHeight).ThenByDescending(g => g.First().EndHeight)
            .Select(g => g.ToList())
            .Select(g => new PanelCount(g[0].Wall, g[0].Section, g[0].Course, g[0].Size, g[0].Width, g[0].StartHeight, g[0].EndHeight,
                [.. g.Select(p => StationRange.Of(p.Wall, p.Start, p.End, unit))])
            {
                Mark = g[0].Mark,
                CutBy = g[0].CutBy,
                Area = g.Sum(p => p.Area),
            }),
    ];

    /// <summary>Gives every panel the mark of its kind: P1 for the most frequent size, the others in order of wall and station.</summary>
    public static List<Panel> Marked(IReadOnlyList<Panel> panels)
    {
        var kinds = panels.GroupBy(Kind).OrderBy(g => g.Key.Size == PanelSize.Full ? 0 : 1).Select((g, i) => (g.Key, i)).ToDictionary(p => p.Key, p => p.i + 1);
        return [.. panels.Select(p => p with { Mark = FormattableString.Invariant($"P{kinds[Kind(p)]}") })];
    }

    /// <summary>Level runs of the leveling pad along the stepped bottom, cut at corners and section limits.</summary>
    public static List<PadRun> Pad(Face face)
    {
        Wall wall = face.Wall;
        var runs = new List<PadRun>();
        foreach (Leg leg in face.Legs)
        {
            double? before = null;
            List<double> cuts = WithoutSlivers(
                [leg.Start, .. wall.Bottom.Points.Select(p => p.Along).Concat(wall.Sections.Select(s => s.Start)).Where(a => a > leg.Start && a < leg.End).Order(), leg.End], Tolerance.SameLength);
            for (int i = 0; i + 1 < cuts.Count; i++)
            {
                double elevation = wall.Bottom.At(cuts[i]);
                double length = face.Distance(cuts[i], cuts[i + 1], elevation);
                if (i == 0 && leg.StartCorner is { } opens)
                    length -= face.MitreCut(opens, elevation);
                if (i + 2 == cuts.Count && leg.EndCorner is { } closes)
                    length -= face.MitreCut(closes, elevation);
                double? rise = before is { } b ? elevation - b : null;
                runs.Add(new PadRun(wall, SectionOf(wall, (cuts[i] + cuts[i + 1]) / 2), cuts[i], cuts[i + 1], elevation, length, rise));
                before = elevation;
            }
        }
        return runs;
    }

    /// <summary>The section that a place belongs to.</summary>
    public static Section SectionOf(Wall wall, double along) =>
        wall.Sections.LastOrDefault(s => s.Start <= along && along <= s.End)
        ?? wall.Sections.MinBy(s => Math.Min(Math.Abs(s.Start - along), Math.Abs(s.End - along)))
        ?? throw new ArgumentException("a wall needs a section", nameof(wall));

    private static Panel? Make(
        Wall wall, FaceRegions regions, Leg leg, int column, int course, double width, Geometry shape, double start, double end, Panels size, LengthUnit unit)
    {
        var cutBy = new List<string>();
        Geometry left = shape;
        foreach (Opening opening in wall.Openings)
        {
            Geometry without = Outlines.Overlay(left, Outlines.Box(opening.Start, opening.End, opening.Bottom, opening.Top), SpatialFunction.Difference);
            if (without.Area < left.Area - QuantityTolerance.NoArea)
                cutBy.Add(opening.Name);
            left = without;
        }
        double tolerance = 2 * Lengths.Quantum(unit);
        if (left.Area < QuantityTolerance.NoArea)
            return null;
        double atStart = Outlines.Height(Outlines.Crossings(shape, start, true)), atEnd = Outlines.Height(Outlines.Crossings(shape, end, false));
        bool isFullHeight = Math.Abs(shape.Area - (end - start) * size.Height) <= tolerance * (end - start) && Math.Abs(atStart - atEnd) <= tolerance;
        bool isFullWidth = Math.Abs(width - size.Width) <= tolerance;
        double Rounded(double value) => Lengths.RoundToQuantum(value, unit);
        return new Panel
        {
            Wall = wall,
            Section = SectionOf(wall, (start + end) / 2),
            Leg = leg.Index,
            Column = column,
            Course = course,
            Size = !isFullHeight ? PanelSize.SpecialHeight : isFullWidth && cutBy.Count == 0 ? PanelSize.Full : PanelSize.Partial,
            Width = isFullWidth ? size.Width : Rounded(width),
            StartHeight = isFullHeight ? size.Height : Rounded(atStart),
            EndHeight = isFullHeight ? size.Height : Rounded(atEnd),
            Area = regions.Area(leg, left),
            CutBy = cutBy,
            Start = start,
            End = end,
            Outline = Outlines.Rings(left),
        };
    }

    private static (PanelSize Size, double Width, double Start, double End, string Cut) Kind(Panel panel) => (
        panel.Size, panel.Width, panel.StartHeight, panel.EndHeight,
        panel.CutBy.Count == 0 ? "" : string.Join("+", panel.CutBy) + FormattableString.Invariant($" {panel.Area:0.00}"));

    /// <summary>Edges that stand at a step or bend but for rounding are put there: a panel's height at its edge is that before the step, not behind it.</summary>
    private static List<double> AtPoints(Wall wall, List<double> edges)
    {
        double[] points = [.. wall.Top.Points.Concat(wall.Bottom.Points).Select(p => p.Along)];
        return edges.ConvertAll(e => points.MinBy(p => Math.Abs(p - e)) is var near && Math.Abs(near - e) < Tolerance.SameLength ? near : e);
    }

    /// <summary>Edges without those that stand within a tolerance of the one before or of the end.</summary>
    private static List<double> WithoutSlivers(IReadOnlyList<double> edges, double tolerance)
    {
        var kept = new List<double>();
        foreach (double edge in edges)
        {
            if (kept.Count == 0 || edge > kept[^1] + tolerance && edge < edges[^1] - tolerance)
                kept.Add(edge);
        }
        if (edges.Count > 0)
            kept.Add(edges[^1]);
        return kept;
    }
}
