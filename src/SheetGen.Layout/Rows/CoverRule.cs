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

    /// <summary>The spans where the rule is broken, up-station.</summary>
    /// <param name="bay">Where.</param>
    /// <param name="heads">Heads of the bay's nails, in any order; verification test nails left out by the caller.</param>
    /// <param name="strict">
    /// For placing: less tolerance, and where several nails are equally high (or low) all of them must do. For checking: the
    /// contract's tolerance of two quanta, and one of them is enough.
    /// </param>
    public static List<CoverBreak> Breaks(Bay bay, IReadOnlyList<Head> heads, bool strict) =>
        Breaks(bay, heads, strict, bay.FaceStart, bay.FaceEnd);

    /// <summary>The spans between two places where the rule is broken; heads further away than the bay's reach may be left out.</summary>
    public static List<CoverBreak> Breaks(Bay bay, IReadOnlyList<Head> heads, bool strict, Along from, Along to)
    {
        var breaks = new List<CoverBreak>();
        from = Along.Max(from, bay.FaceStart);
        to = Along.Min(to, bay.FaceEnd);
        double tolerance = strict ? Tolerance.Placed(bay.Unit) : Tolerance.Checked(bay.Unit);
        Entry[] sorted = [.. heads.Select(h => Entry.Of(bay, h)).OrderBy(e => e.Head.Along)];
        List<Along> events = Events(bay, sorted, from, to);
        var near = new List<Entry>();
        int first = 0;
        for (int i = 0; i + 1 < events.Count; i++)
        {
            Along start = events[i], end = events[i + 1];
            if (end - start <= tolerance)
                continue;
            var middle = Along.Middle(start, end);
            if (IsVoid(bay, middle))
                continue;
            while (first < sorted.Length && sorted[first].Head.Along < middle - bay.Reach - tolerance)
                first++;
            near.Clear();
            for (int k = first; k < sorted.Length && sorted[k].Head.Along <= middle + bay.Reach + tolerance; k++)
            {
                if (sorted[k].From <= middle && middle <= sorted[k].To)
                    near.Add(sorted[k]);
            }
            Look(bay, near, start, end, strict, tolerance, breaks);
        }
        return breaks;
    }

    /// <summary>Length of the face along which the rule is broken for placing; spans that lack more than one thing count once.</summary>
    public static double Uncovered(Bay bay, IReadOnlyList<Head> heads)
    {
        double sum = 0;
        Along end = new(double.NegativeInfinity);
        foreach (CoverBreak gap in Breaks(bay, heads, strict: true))
        {
            sum += gap.End - Along.Max(gap.Start, Along.Min(end, gap.End));
            end = Along.Max(end, gap.End);
        }
        return sum;
    }

    /// <summary>The spans too low for a nail: less than twice edge_min between top and bottom. There the rule is void.</summary>
    public static List<(Along Start, Along End)> NoNailHeight(Bay bay)
    {
        List<Along> events = Events(bay, [], bay.FaceStart, bay.FaceEnd);
        var spans = new List<(Along Start, Along End)>();
        for (int i = 0; i + 1 < events.Count; i++)
        {
            if (events[i + 1] - events[i] <= Tolerance.Rounding || !IsTooLow(bay, Along.Middle(events[i], events[i + 1])))
                continue;
            if (spans.Count > 0 && spans[^1].End == events[i])
                spans[^1] = (spans[^1].Start, events[i + 1]);
            else
                spans.Add((events[i], events[i + 1]));
        }
        return spans;
    }

    /// <param name="From">Where the span that the nail covers starts: half a window before it, or anywhere where that reaches its own mitre.</param>
    /// <param name="To">Where that span ends.</param>
    private readonly record struct Entry(Head Head, double Level, Along From, Along To)
    {
        public static Entry Of(Bay bay, Head head)
        {
            Along from = head.Along - bay.HalfWindow, to = head.Along + bay.HalfWindow;
            if (bay.GreatestMitreRun > 0)
            {
                if (from <= bay.FaceStartAt(head.Elevation))
                    from = Along.Min(from, bay.FaceStart);
                if (to >= bay.FaceEndAt(head.Elevation))
                    to = Along.Max(to, bay.FaceEnd);
            }
            return new Entry(head, bay.LevelOf(head), from, to);
        }
    }

    private static bool IsTooLow(Bay bay, Along along) =>
        bay.Wall.Top.At(along) - bay.Wall.Bottom.At(along) < 2 * bay.Rules.EdgeMin - Tolerance.Rounding;

    private static bool IsVoid(Bay bay, Along along) =>
        IsTooLow(bay, along) || bay.Wall.Openings.Any(o => along.Number > o.Start && along.Number < o.End) || (bay.GreatestMitreRun > 0 && IsCutAway(bay, along));

    /// <summary>True where battered mitres leave no height for a head: less than twice edge_min.</summary>
    private static bool IsCutAway(Bay bay, Along along)
    {
        double least = 2 * bay.Rules.EdgeMin - Tolerance.Rounding;
        Elevation low = bay.Wall.Bottom.At(along), high = bay.Wall.Top.At(along);
        bool Holds(Elevation z) => bay.FaceStartAt(z) <= along && along <= bay.FaceEndAt(z);
        // The mitres are straight: what they leave at a place is one span of elevations, from the bottom up or from the top down.
        return !Holds(low) && !Holds(high) || (!Holds(low) && !Holds(high - least)) || (!Holds(high) && !Holds(low + least));
    }

    private static List<Along> Events(Bay bay, Entry[] sorted, Along start, Along end)
    {
        var places = new List<Along> { start, end };
        void Add(Along along)
        {
            if (along > start && along < end)
                places.Add(along);
        }
        foreach (Entry entry in sorted)
        {
            Add(entry.From);
            Add(entry.To);
        }
        foreach (Along along in bay.Wall.Top.Places.Concat(bay.Wall.Bottom.Places))
            Add(along);
        foreach (Opening opening in bay.Wall.Openings)
        {
            Add(new Along(opening.Start));
            Add(new Along(opening.End));
        }
        places.Sort();
        AddHeightCrossings(bay, places, start, end);
        if (bay.GreatestMitreRun > 0)
            AddMitreCrossings(bay, places);
        return places;
    }

    /// <summary>Where battered mitres begin to leave height for a head, between two places of which only one has it.</summary>
    private static void AddMitreCrossings(Bay bay, List<Along> places)
    {
        var added = new List<Along>();
        for (int i = 0; i + 1 < places.Count; i++)
        {
            Along a = places[i] + Tolerance.Rounding, b = places[i + 1] - Tolerance.Rounding;
            bool void1 = IsCutAway(bay, a);
            if (b <= a || void1 == IsCutAway(bay, b))
                continue;
            for (int k = 0; k < Halvings; k++)
            {
                var middle = Along.Middle(a, b);
                if (IsCutAway(bay, middle) == void1)
                    a = middle;
                else
                    b = middle;
            }
            added.Add(Along.Middle(a, b));
        }
        places.AddRange(added);
        places.Sort();
    }

    private static void AddHeightCrossings(Bay bay, List<Along> places, Along start, Along end)
    {
        Profile top = bay.Wall.Top, bottom = bay.Wall.Bottom;
        double limit = 2 * bay.Rules.EdgeMin;
        var knots = new SortedSet<Along> { start, end };
        foreach (Along along in top.Places.Concat(bottom.Places))
        {
            if (along > start && along < end)
                knots.Add(along);
        }
        Along[] at = [.. knots];
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
        Bay bay, List<Entry> near, Along start, Along end, bool strict, double tolerance, List<CoverBreak> breaks)
    {
        if (near.Count == 0)
        {
            breaks.Add(new CoverBreak(start, end, Lack.Nails, double.NaN, double.NaN, 0));
            return;
        }
        near.Sort((x, y) => y.Level.CompareTo(x.Level));
        double depth = Extreme(near, strict, fromTop: true, e => bay.Wall.Top.At(e.Head.Along) - e.Head.Elevation);
        if (depth > bay.Rules.TopMax + tolerance)
            breaks.Add(new CoverBreak(start, end, Lack.Top, double.NaN, near[0].Level, depth));
        Elevation bottomHere = bay.Wall.Bottom.At(Along.Middle(start, end));
        double height = Extreme(near, strict, fromTop: false,
            e => Math.Max(e.Head.Elevation - bay.Wall.Bottom.At(e.Head.Along), e.Head.Elevation - bottomHere));
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
