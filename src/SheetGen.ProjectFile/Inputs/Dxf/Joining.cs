namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Joins open courses end to end where their ends lie no farther apart than a gap.</summary>
internal static class Joining
{
    /// <summary>Closed and open courses; where more than two ends meet, nothing is joined there.</summary>
    public static IReadOnlyList<Figure> Of(IReadOnlyList<Figure> open, double gap)
    {
        Point3[] ends = [.. open.SelectMany(f => new[] { f.Strokes[0].Start, f.Strokes[^1].End })];
        int[] partner = Partners(ends, gap);
        open = [.. open.Select((f, i) => f with { Strokes = Moved(f.Strokes, Met(2 * i), Met(2 * i + 1)) })];
        var used = new bool[open.Count];
        var joined = new List<Figure>();
        // Chains with a free end first, then the rings that are left.
        foreach (int first in Enumerable.Range(0, ends.Length).Where(e => partner[e] < 0).Concat(Enumerable.Range(0, ends.Length)))
        {
            if (used[first / 2])
                continue;
            var strokes = new List<Stroke>();
            int end = first, count = 0;
            double worst = 0;
            Figure start = open[first / 2];
            while (true)
            {
                Figure figure = open[end / 2];
                used[end / 2] = true;
                count++;
                strokes.AddRange(end % 2 == 0 ? figure.Strokes : figure.Strokes.Reverse().Select(s => s.Reversed));
                int other = end ^ 1, next = partner[other];
                if (next < 0 || next == first || used[next / 2])
                {
                    bool closed = next >= 0 && next == first;
                    if (closed)
                        worst = Math.Max(worst, (ends[other] - ends[next]).Length);
                    if (closed && count == 1 && strokes.Count == 1 && !strokes[0].IsCurved)
                        closed = false;
                    joined.Add(new Figure(count == 1 ? start.Source : start.Source with { Kind = $"{count} joined {start.Source.Kind}s from" }, closed ? FigureKind.Closed : FigureKind.Open, strokes)
                    {
                        Thickness = start.Thickness,
                        Insert = start.Insert,
                    });
                    break;
                }
                worst = Math.Max(worst, (ends[other] - ends[next]).Length);
                end = next;
            }
        }
        return joined;

        // Ends that are joined meet half way between them.
        Point3 Met(int end) => partner[end] < 0 ? ends[end] : (ends[end] + ends[partner[end]]) * 0.5;
    }

    private static Stroke[] Moved(IReadOnlyList<Stroke> strokes, Point3 start, Point3 end)
    {
        Stroke[] moved = [.. strokes];
        moved[0] = To(moved[0], 0, start);
        moved[^1] = To(moved[^1], moved[^1].Knots.Count - 1, end);
        return moved;
    }

    private static Stroke To(Stroke stroke, int knot, Point3 at)
    {
        if (stroke.Knots[knot].At == at)
            return stroke;
        if (!stroke.IsCurved)
            return knot == 0 ? Stroke.Straight(at, stroke.End) : Stroke.Straight(stroke.Start, at);
        Knot[] knots = [.. stroke.Knots];
        knots[knot] = knots[knot] with { At = at };
        return stroke with { Knots = knots };
    }

    /// <summary>For each end the one other end near it; -1 where there is none or more than one.</summary>
    private static int[] Partners(Point3[] ends, double gap)
    {
        double cell = Math.Max(gap * 2, 1e-9);
        var cells = new Dictionary<(long, long), List<int>>();
        (long, long) Cell(Point3 p) => ((long)Math.Floor(p.X / cell), (long)Math.Floor(p.Y / cell));
        for (int i = 0; i < ends.Length; i++)
        {
            if (!cells.TryGetValue(Cell(ends[i]), out List<int>? list))
                cells[Cell(ends[i])] = list = [];
            list.Add(i);
        }
        var partner = new int[ends.Length];
        for (int i = 0; i < ends.Length; i++)
        {
            partner[i] = -1;
            (long x, long y) = Cell(ends[i]);
            int found = 0;
            for (long dx = -1; dx <= 1; dx++)
            {
                for (long dy = -1; dy <= 1; dy++)
                {
                    foreach (int j in cells.GetValueOrDefault((x + dx, y + dy), []))
                    {
                        if (j == i || (ends[i] - ends[j]).Length > gap)
                            continue;
                        partner[i] = j;
                        found++;
                    }
                }
            }
            if (found != 1)
                partner[i] = -1;
        }
        for (int i = 0; i < partner.Length; i++)
        {
            if (partner[i] >= 0 && partner[partner[i]] != i)
                partner[i] = -1;
        }
        return partner;
    }
}
