using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The cover rule: for every place s of a bay, among the nails within half a horizontal spacing of s the highest is near enough
/// to the top, the lowest near enough to the bottom, and neighbours one above the other no further apart than the vertical spacing.
/// Between events (a nail entering or leaving, a profile point) nothing changes, so one look per interval is exact. A nail that covers the face
/// up to its own mitre covers what lies beyond it; where battered mitres leave no height for a head, the rule is void.
/// </summary>
internal static class CoverRule
{
    private const int Halvings = 40;

    /// <summary>The stretches where the rule is broken, up-station.</summary>
    /// <param name="bay">Where.</param>
    /// <param name="heads">Heads of the bay's nails, in any order; verification test nails left out by the caller.</param>
    /// <param name="strict">
    /// For placing: less tolerance, and where several nails are equally high (or low) all of them must do. For checking: the
    /// contract's tolerance of two quanta, and one of them is enough.
    /// </param>
    public static List<CoverBreak> Breaks(Bay bay, IReadOnlyList<Head> heads, bool strict) =>
        Breaks(bay, heads, strict, bay.FaceStart, bay.FaceEnd);

    /// <summary>The stretches between two places where the rule is broken; heads further away than the bay's reach may be left out.</summary>
    public static List<CoverBreak> Breaks(Bay bay, IReadOnlyList<Head> heads, bool strict, double from, double to)
    {
        var breaks = new List<CoverBreak>();
        from = Math.Max(from, bay.FaceStart);
        to = Math.Min(to, bay.FaceEnd);
        double tolerance = strict ? Tolerance.Placed(bay.Unit) : Tolerance.Checked(bay.Unit);
        Entry[] sorted = [.. heads.Select(h => Entry.Of(bay, h)).OrderBy(e => e.Along)];
        List<double> events = Events(bay, sorted, from, to);
        var near = new List<Entry>();
        int first = 0;
        for (int i = 0; i + 1 < events.Count; i++)
        {
            double start = events[i], end = events[i + 1];
            if (end - start <= tolerance)
                continue;
            double middle = (start + end) / 2;
            if (IsVoid(bay, middle))
                continue;
            while (first < sorted.Length && sorted[first].Along < middle - bay.Reach - tolerance)
                first++;
            near.Clear();
            for (int k = first; k < sorted.Length && sorted[k].Along <= middle + bay.Reach + tolerance; k++)
            {
                if (sorted[k].From <= middle && middle <= sorted[k].To)
                    near.Add(sorted[k]);
            }
            Look(bay, near, start, end, strict, tolerance, breaks);
        }
        return breaks;
    }

    /// <summary>Length of the face along which the rule is broken for placing; stretches that lack more than one thing count once.</summary>
    public static double Uncovered(Bay bay, IReadOnlyList<Head> heads)
    {
        double sum = 0, end = double.NegativeInfinity;
        foreach (CoverBreak gap in Breaks(bay, heads, strict: true))
        {
            sum += gap.End - Math.Max(gap.Start, Math.Min(end, gap.End));
            end = Math.Max(end, gap.End);
        }
        return sum;
    }

    /// <summary>The stretches too low for a nail: less than twice edge_min between top and bottom. There the rule is void.</summary>
    public static List<(double Start, double End)> NoNailHeight(Bay bay)
    {
        List<double> events = Events(bay, [], bay.FaceStart, bay.FaceEnd);
        var stretches = new List<(double Start, double End)>();
        for (int i = 0; i + 1 < events.Count; i++)
        {
            if (events[i + 1] - events[i] <= Tolerance.Rounding || !IsTooLow(bay, (events[i] + events[i + 1]) / 2))
                continue;
            if (stretches.Count > 0 && stretches[^1].End == events[i])
                stretches[^1] = (stretches[^1].Start, events[i + 1]);
            else
                stretches.Add((events[i], events[i + 1]));
        }
        return stretches;
    }

    /// <param name="From">Where the stretch that the nail covers starts: half a window before it, or anywhere where that reaches its own mitre.</param>
    /// <param name="To">Where that stretch ends.</param>
    private readonly record struct Entry(double Along, double Elevation, double Level, double From, double To)
    {
        public static Entry Of(Bay bay, Head head)
        {
            double from = head.Along - bay.HalfWindow, to = head.Along + bay.HalfWindow;
            if (bay.GreatestMitreRun > 0)
            {
                if (from <= bay.FaceStartAt(head.Elevation))
                    from = Math.Min(from, bay.FaceStart);
                if (to >= bay.FaceEndAt(head.Elevation))
                    to = Math.Max(to, bay.FaceEnd);
            }
            return new Entry(head.Along, head.Elevation, bay.LevelOf(head.Along, head.Elevation), from, to);
        }
    }

    private static bool IsTooLow(Bay bay, double along) =>
        bay.Wall.Top.At(along) - bay.Wall.Bottom.At(along) < 2 * bay.Rules.EdgeMin - Tolerance.Rounding;

    private static bool IsVoid(Bay bay, double along) =>
        IsTooLow(bay, along) || bay.Wall.Openings.Any(o => along > o.Start && along < o.End) || (bay.GreatestMitreRun > 0 && IsCutAway(bay, along));

    /// <summary>True where battered mitres leave no height for a head: less than twice edge_min.</summary>
    private static bool IsCutAway(Bay bay, double along)
    {
        double least = 2 * bay.Rules.EdgeMin - Tolerance.Rounding;
        double low = bay.Wall.Bottom.At(along), high = bay.Wall.Top.At(along);
        bool Holds(double z) => bay.FaceStartAt(z) <= along && along <= bay.FaceEndAt(z);
        // The mitres are straight: what they leave at a place is one stretch of elevations, from the bottom up or from the top down.
        return !Holds(low) && !Holds(high) || (!Holds(low) && !Holds(high - least)) || (!Holds(high) && !Holds(low + least));
    }

    private static List<double> Events(Bay bay, Entry[] sorted, double start, double end)
    {
        var places = new List<double> { start, end };
        void Add(double along)
        {
            if (along > start && along < end)
                places.Add(along);
        }
        foreach (Entry entry in sorted)
        {
            Add(entry.From);
            Add(entry.To);
        }
        foreach (ProfilePoint point in bay.Wall.Top.Points.Concat(bay.Wall.Bottom.Points))
            Add(point.Along);
        foreach (Opening opening in bay.Wall.Openings)
        {
            Add(opening.Start);
            Add(opening.End);
        }
        places.Sort();
        AddHeightCrossings(bay, places, start, end);
        if (bay.GreatestMitreRun > 0)
            AddMitreCrossings(bay, places);
        return places;
    }

    /// <summary>Where battered mitres begin to leave height for a head, between two places of which only one has it.</summary>
    private static void AddMitreCrossings(Bay bay, List<double> places)
    {
        var added = new List<double>();
        for (int i = 0; i + 1 < places.Count; i++)
        {
            double a = places[i] + Tolerance.Rounding, b = places[i + 1] - Tolerance.Rounding;
            bool void1 = IsCutAway(bay, a);
            if (b <= a || void1 == IsCutAway(bay, b))
                continue;
            for (int k = 0; k < Halvings; k++)
            {
                double middle = (a + b) / 2;
                if (IsCutAway(bay, middle) == void1)
                    a = middle;
                else
                    b = middle;
            }
            added.Add((a + b) / 2);
        }
        places.AddRange(added);
        places.Sort();
    }

    private static void AddHeightCrossings(Bay bay, List<double> places, double start, double end)
    {
        Profile top = bay.Wall.Top, bottom = bay.Wall.Bottom;
        double limit = 2 * bay.Rules.EdgeMin;
        var knots = new SortedSet<double> { start, end };
        foreach (ProfilePoint point in top.Points.Concat(bottom.Points))
        {
            if (point.Along > start && point.Along < end)
                knots.Add(point.Along);
        }
        double[] at = [.. knots];
        bool added = false;
        for (int i = 0; i + 1 < at.Length; i++)
        {
            double a = top.At(at[i]) - bottom.At(at[i]) - limit, b = top.Before(at[i + 1]) - bottom.Before(at[i + 1]) - limit;
            if (a * b < 0)
            {
                places.Add(at[i] + (at[i + 1] - at[i]) * a / (a - b));
                added = true;
            }
        }
        if (added)
            places.Sort();
    }

    private static void Look(
        Bay bay, List<Entry> near, double start, double end, bool strict, double tolerance, List<CoverBreak> breaks)
    {
        if (near.Count == 0)
        {
            breaks.Add(new CoverBreak(start, end, Lack.Nails, double.NaN, double.NaN, 0));
            return;
        }
        near.Sort((x, y) => y.Level.CompareTo(x.Level));
        double middle = (start + end) / 2;
        double depth = Extreme(near, strict, fromTop: true, e => bay.Wall.Top.At(e.Along) - e.Elevation);
        if (depth > bay.Rules.TopMax + tolerance)
            breaks.Add(new CoverBreak(start, end, Lack.Top, double.NaN, near[0].Level, depth));
        double bottomHere = bay.Wall.Bottom.At(middle);
        double height = Extreme(near, strict, fromTop: false,
            e => Math.Max(e.Elevation - bay.Wall.Bottom.At(e.Along), e.Elevation - bottomHere));
        if (height > bay.Rules.BottomMax + tolerance)
            breaks.Add(new CoverBreak(start, end, Lack.Bottom, near[^1].Level, double.NaN, height));
        for (int i = 0; i + 1 < near.Count; i++)
        {
            double gap = near[i].Level - near[i + 1].Level;
            if (gap > bay.Section.VerticalSpacing + tolerance)
                breaks.Add(new CoverBreak(start, end, Lack.Gap, near[i].Level, near[i + 1].Level, gap));
        }
    }

    private static double Extreme(List<Entry> sorted, bool strict, bool fromTop, Func<Entry, double> measure)
    {
        double level = fromTop ? sorted[0].Level : sorted[^1].Level;
        double found = double.NaN;
        foreach (Entry entry in sorted)
        {
            if (Math.Abs(entry.Level - level) > Tolerance.SameLength)
                continue;
            double value = measure(entry);
            found = double.IsNaN(found) ? value : strict ? Math.Max(found, value) : Math.Min(found, value);
        }
        return found;
    }
}
