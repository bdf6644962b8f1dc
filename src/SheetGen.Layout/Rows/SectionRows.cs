using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// Rows of a section, made from the profile and the grid alone: grid rows at equal vertical gaps from the first row down, cut where
/// the face ends, and part rows where cover would still be broken. The gap is the greatest, up to the grid's vertical spacing, that
/// gives the fewest nails (first: the least span left uncovered; then: the fewest nails, the fewest part rows).
/// </summary>
internal static class SectionRows
{
    public static List<RowHeads> Make(IReadOnlyList<Bay> bays, FaceOutline outline)
    {
        List<RowHeads>? best = null;
        (double Uncovered, int Nails, int Parts, double Gap) bestScore = default;
        foreach (double gap in Gaps(bays))
        {
            List<RowHeads> rows = MakeWith(bays, outline, gap);
            double uncovered = Math.Round(bays.Sum(b => CoverRule.Uncovered(b, [.. rows.Where(r => r.Bay == b).SelectMany(r => r.Places.Select(r.HeadAt))])), Tolerance.Decimals);
            var score = (uncovered, rows.Sum(r => r.Places.Count), rows.Count(r => r.IsPart), -gap);
            if (best is null || score.CompareTo(bestScore) < 0)
            {
                best = rows;
                bestScore = score;
            }
            if (best is not null && bestScore is { Uncovered: 0, Parts: 0 } && gap == bays[0].Section.VerticalSpacing)
                break;
        }
        return best!;
    }

    /// <summary>The vertical spacing, then smaller gaps in steps down to two thirds of it, and those that just fit a bottom step.</summary>
    internal static IEnumerable<double> Gaps(IReadOnlyList<Bay> bays)
    {
        Section section = bays[0].Section;
        double spacing = section.VerticalSpacing, quantum = Lengths.Quantum(bays[0].Unit);
        var gaps = new SortedSet<double> { spacing };
        double step = Math.Max(bays[0].Rules.ShiftStep, spacing / 40);
        for (int i = 1; spacing - i * step > spacing * 2 / 3; i++)
            gaps.Add(spacing - i * step);
        double first = FirstLevel(bays);
        foreach (Bay bay in bays)
        {
            foreach (ProfilePoint point in bay.Wall.BottomSteps.Where(p => p.Along < bay.End.Number).Take(60))
            {
                double bottom = section.Rows == RowKind.Parallel ? point.Elevation - bay.HighestTop.Number : point.Elevation;
                double height = first - bottom - bay.Rules.EdgeMin;
                int count = (int)Math.Ceiling(height / spacing - Tolerance.Rounding);
                if (count < 1)
                    continue;
                double fit = Math.Floor(height / count / quantum + Tolerance.SameLength) * quantum;
                if (fit > spacing * 2 / 3 && fit < spacing)
                    gaps.Add(fit);
            }
        }
        return gaps.Reverse();
    }

    private static double FirstLevel(IReadOnlyList<Bay> bays)
    {
        Section section = bays[0].Section;
        return section.Rows == RowKind.Parallel ? -section.TopRowDepth : (bays.Max(b => b.HighestTop) - section.TopRowDepth).Number;
    }

    private static List<RowHeads> MakeWith(IReadOnlyList<Bay> bays, FaceOutline outline, double gap)
    {
        var rows = new List<RowHeads>();
        double first = FirstLevel(bays);
        foreach (Bay bay in bays)
        {
            if (!bay.HasRoom)
                continue;
            List<RowHeads> bayRows = GridRows(bay, outline, first, ShiftOf(bay, gap), gap);
            PartRows.Fill(bay, outline, bayRows);
            rows.AddRange(bayRows.Where(r => r.Places.Count > 0));
        }
        return rows;
    }

    /// <summary>Half a gap on every second leg, counted over outside corners, where the section asks for shifted corner rows.</summary>
    private static double ShiftOf(Bay bay, double gap)
    {
        if (bay.Section.CornerRows == CornerRows.Continuous)
            return 0;
        int passed = bay.Face.Legs.Take(bay.Leg.Index).Count(l => l.EndCorner is { } c && bay.Face.IsOutside(c));
        return passed % 2 == 1 ? gap / 2 : 0;
    }

    private static List<RowHeads> GridRows(Bay bay, FaceOutline outline, double unshifted, double shift, double gap)
    {
        double first = unshifted - shift;
        Section section = bay.Section;
        double lowest = section.Rows == RowKind.Parallel
            ? bay.Wall.Bottom.PlacesBetween(bay.Start, bay.End).Concat(bay.Wall.Top.PlacesBetween(bay.Start, bay.End))
                .Min(p => bay.Wall.Bottom.At(p) - bay.Wall.Top.At(p)) - section.VerticalSpacing
            : bay.LowestBottom.Number;
        double quantum = Lengths.Quantum(bay.Unit);
        var rows = new List<RowHeads>();
        for (int k = 1; first - (k - 1) * gap >= lowest; k++)
        {
            bool isLevel = section.Rows == RowKind.Level || (section.Rows == RowKind.TopParallel && k > 1);
            double level = isLevel || section.Rows == RowKind.Parallel
                ? Lengths.RoundToQuantum(first - (k - 1) * gap, bay.Unit)
                : Lengths.RoundToQuantum(-section.TopRowDepth - shift, bay.Unit);
            RowHeads row = RowHeads.OfGrid(bay, k, isLevel, level);
            foreach (Along place in row.Columns)
            {
                Head head = row.HeadAt(place);
                if (outline.Holds(head, quantum) && !IsUnderFirst(bay, rows, head, isLevel))
                    row.Places.Add(place);
            }
            rows.Add(row);
        }
        return rows;
    }

    /// <summary>Level rows below a first row that follows the top start where they are clear of it.</summary>
    private static bool IsUnderFirst(Bay bay, List<RowHeads> rows, Head head, bool isLevel) =>
        bay.Section.Rows == RowKind.TopParallel && isLevel && rows.Count > 0
        && rows[0].ElevationAt(head.Along) - head.Elevation < PartRowBand.LeastRise(bay);
}
