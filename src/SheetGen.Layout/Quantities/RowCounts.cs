using NetTopologySuite.Geometries;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>What is counted or measured along rows and along the top.</summary>
internal static class RowCounts
{
    /// <summary>Gaps between neighbours of a row that differ from the section's spacing by more than two quanta and by more than a hundredth of it: that much comes from
    /// a face that stands off a curved layout line, and no driller sets out closer (common practice, no source).</summary>
    public static List<NonTypicalGap> NonTypicalGaps(Face face, Section section, IReadOnlyList<NailQuantity> production, LengthUnit unit)
    {
        var gaps = new List<NonTypicalGap>();
        var rows = production.Select(n => n.Nail).GroupBy(n => (n.Row, face.LegAt(n.Along).Index)).OrderBy(g => g.Key.Row).ThenBy(g => g.Key.Index);
        foreach (var row in rows)
        {
            List<Nail> nails = [.. row.OrderBy(n => n.Along)];
            for (int i = 0; i + 1 < nails.Count; i++)
            {
                double gap = face.Distance(nails[i].Along, nails[i + 1].Along, nails[i].Elevation);
                if (Math.Abs(gap - section.HorizontalSpacing) > Math.Max(2 * Lengths.Quantum(unit), QuantityTolerance.TypicalGap * section.HorizontalSpacing))
                    gaps.Add(new NonTypicalGap(nails[i].Mark, nails[i + 1].Mark, gap));
            }
        }
        return gaps;
    }

    /// <summary>Grid stations, left out, added and nails by row.</summary>
    public static List<GridCount> Grid(NailLayout layout, Wall wall, Section section)
    {
        List<NailRow> rows = [.. layout.Rows.Where(r => r.Wall == wall && r.Section == section)];
        List<LeftOut> left = [.. layout.LeftOut.Where(l => l.Wall == wall && l.Section == section)];
        List<Nail> nails = [.. layout.Nails.Where(n => n.Wall == wall && n.Section == section && n.Kind != NailKind.Verification)];
        IEnumerable<RowNumber> numbers = rows.Select(r => r.Number).Concat(nails.Select(n => n.Row)).Distinct().Order();
        return
        [
            .. numbers.Select(number => new GridCount(
                wall, section, number,
                rows.Where(r => r.Number == number).Sum(r => r.GridStations.Count),
                left.Count(l => l.Row == number),
                nails.Count(n => n.Row == number && n.IsAdded),
                nails.Count(n => n.Row == number))),
        ];
    }

    /// <summary>
    /// Length of all rows along the face, half a spacing beyond the end stations but not beyond section and mitre; broken at openings
    /// that a row runs into.
    /// </summary>
    public static double WalerLength(Face face, NailLayout layout, Section section)
    {
        double sum = 0;
        foreach (NailRow row in layout.Rows)
        {
            if (row.Wall != face.Wall || row.Section != section || row.GridStations.Count == 0)
                continue;
            Leg leg = face.Legs[row.Leg];
            double level = row.ElevationAt((row.GridStations[0] + row.GridStations[^1]) / 2);
            double start = leg.Start + (leg.StartCorner is { } opens ? face.MitreCut(opens, level) : 0);
            double end = leg.End - (leg.EndCorner is { } closes ? face.MitreCut(closes, level) : 0);
            double from = Math.Max(row.GridStations[0] - section.HorizontalSpacing / 2, section.Start <= leg.Start ? start : section.Start);
            double to = Math.Min(row.GridStations[^1] + section.HorizontalSpacing / 2, section.End >= leg.End ? end : section.End);
            sum += Math.Max(0, Length(face, row, from, to)
                - face.Wall.Openings.Sum(o => Math.Max(0, Length(face, row, Math.Max(from, o.Start), Math.Min(to, o.End)) * (Meets(row, o) ? 1 : 0))));
        }
        return sum;
    }

    private static double Length(Face face, NailRow row, double from, double to) =>
        to <= from ? 0 : face.Distance(from, to, row.ElevationAt((from + to) / 2));

    private static bool Meets(NailRow row, Opening opening)
    {
        double level = row.ElevationAt((opening.Start + opening.End) / 2);
        return opening.Bottom < level && level < opening.Top;
    }

    /// <summary>Length of the top along the face, slopes included, vertical steps not.</summary>
    public static double TopLength(FaceRegions regions, Section section)
    {
        Face face = regions.Face;
        double sum = 0;
        foreach (Leg leg in face.Legs)
        {
            double from = Math.Max(section.Start, leg.Start), to = Math.Min(section.End, leg.End);
            if (to <= from)
                continue;
            List<Coordinate> line = ProfileLine.Make(face.Wall.Top, from, to, 0);
            for (int i = 0; i + 1 < line.Count; i++)
            {
                if (line[i + 1].X <= line[i].X)
                    continue;
                double level = face.Distance(line[i].X, line[i + 1].X, (line[i].Y + line[i + 1].Y) / 2);
                if (i == 0 && from == leg.Start && leg.StartCorner is { } opens)
                    level -= face.MitreCut(opens, line[0].Y);
                if (i + 2 == line.Count && to == leg.End && leg.EndCorner is { } closes)
                    level -= face.MitreCut(closes, line[^1].Y);
                double rise = (line[i + 1].Y - line[i].Y) * regions.SlopeFactor();
                sum += Math.Sqrt(level * level + rise * rise);
            }
        }
        return sum;
    }
}
