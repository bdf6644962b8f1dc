using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>
/// Fills sheets with groups of parts. A group begins a sheet of its own, or goes on where the one before it ended. Sections and details keep
/// their order, by which they are found; tables are tried in several orders, and each order in several ways of choosing a place. Of all these
/// the one with the fewest sheets is taken, of those the one with the fewest that are half empty, the last told apart, of those the one whose tables
/// stand in the fewest columns, of those the first;
/// of several choices the one whose emptiest sheet is fullest.
/// </summary>
public static class SheetPacker
{
    /// <summary>Share of a sheet below which its parts, which have room about them, leave it empty.</summary>
    public const double Empty = 0.5;

    /// <param name="groups">Parts in the order in which they are looked for; none wider or higher than the area, unless it can be cut.</param>
    public static IReadOnlyList<PackedSheet> Pack(IReadOnlyList<IReadOnlyList<SheetPart>> groups, Box area) => Best([groups], area).Sheets;

    /// <summary>Of several choices of parts the one that fills sheets best.</summary>
    public static (int Choice, IReadOnlyList<PackedSheet> Sheets) Best(IReadOnlyList<IReadOnlyList<IReadOnlyList<SheetPart>>> choices, Box area)
    {
        var packed = new List<(int Choice, List<FreeRoom> Sheets)>();
        foreach ((int i, IReadOnlyList<IReadOnlyList<SheetPart>> groups) in choices.Index())
        {
            if (Best([.. groups.Where(g => g.Count > 0)], area, packed.Count > 0 ? packed.Min(p => p.Sheets.Count) : int.MaxValue) is { } sheets)
                packed.Add((i, sheets));
        }
        (int choice, List<FreeRoom> best) = packed.OrderBy(c => c.Sheets.Count).ThenBy(c => Blank(c.Sheets)).ThenByDescending(c => LeastFilled(c.Sheets)).First();
        return (choice, [.. WithFullerLast(best, area).Select(s => new PackedSheet(s.Parts.All(p => p.Part.Kind == PartKind.Section) ? Spread(s.Parts, area) : InLine(s.Parts, area)))]);
    }

    /// <summary>The share that parts take of the emptiest sheet but the last, to a tenth.</summary>
    private static double LeastFilled(List<FreeRoom> sheets) => sheets.SkipLast(1).Select(s => Math.Round(s.Filled, 1)).DefaultIfEmpty(1).Min();

    private static int Blank(List<FreeRoom> sheets) => sheets.SkipLast(1).Count(s => s.Filled < Empty);

    /// <summary>Tables whose left edges nearly agree stand in line: each goes right to the next edge of another where it has room there.</summary>
    private static IReadOnlyList<(SheetPart Part, Point2 At)> InLine(IReadOnlyList<(SheetPart Part, Point2 At)> parts, Box area)
    {
        (SheetPart Part, Point2 At)[] placed = [.. parts];
        for (int i = 0; i < placed.Length; i++)
        {
            (SheetPart part, Point2 at) = placed[i];
            if (part.Kind != PartKind.Table)
                continue;
            double[] edges = [.. placed.Where(p => p.Part.Kind == PartKind.Table && p.At.X > at.X && p.At.X <= at.X + NearlyInLine * area.Width).Select(p => p.At.X).Distinct().Order()];
            foreach (Point2 to in edges.Select(x => at with { X = x }).Where(to => to.X + part.Width <= area.Right && !placed.Where((_, k) => k != i).Any(o => o.Part.BoxAt(o.At).Grown(-1e-6).Overlaps(part.BoxAt(to)))).Take(1))
                placed[i] = (part, to);
        }
        return placed;
    }

    /// <summary>Share of a sheet's width by which left edges may differ to be brought in line.</summary>
    private const double NearlyInLine = 0.05;

    /// <summary>How many left edges the tables of all sheets have: the fewer, the more they stand in columns.</summary>
    private static int Edges(List<FreeRoom> sheets) =>
        sheets.Sum(s => s.Parts.Where(p => p.Part.Kind == PartKind.Table).Select(p => Math.Round(p.At.X)).Distinct().Count());

    /// <summary>
    /// Tables of other sheets go to the last one while that one is too empty: each time the one that leaves the emptier of both fullest, with nothing
    /// below it, so that no gap stays.
    /// </summary>
    private static List<FreeRoom> WithFullerLast(List<FreeRoom> sheets, Box area)
    {
        List<FreeRoom> all = [.. sheets];
        while (all.Count > 1 && all[^1].Filled < LeastLast)
        {
            FreeRoom last = all[^1];
            (int Sheet, SheetPart Part, Point2 At, double Emptier)[] moves =
            [
                .. from i in Enumerable.Range(0, all.Count - 1)
                   from p in all[i].Parts
                   where p.Part.Kind == PartKind.Table && !p.Part.IsPiece && !all[i].Parts.Any(o => IsBelow(o.Part.BoxAt(o.At), p.Part.BoxAt(p.At)))
                   let at = last.Find(p.Part.Width, p.Part.Height, PlaceRule.Highest)
                   where at is not null
                   let share = p.Part.Width * p.Part.Height / (area.Width * area.Height)
                   select (i, p.Part, at.Value, Math.Min(all[i].Filled - share, last.Filled + share)),
            ];
            if (moves.Length == 0 || moves.MaxBy(m => m.Emptier) is var best && best.Emptier <= last.Filled)
                break;
            var left = new FreeRoom(area);
            foreach ((SheetPart part, Point2 at) in all[best.Sheet].Parts.Where(p => !ReferenceEquals(p.Part, best.Part)))
                left.Take(part, at);
            all[best.Sheet] = left;
            all[^1] = last.Copy();
            all[^1].Take(best.Part, best.At);
        }
        return all;

        static bool IsBelow(Box one, Box other) => one.Top < other.Top - 1 && one.Left < other.Right - 1 && other.Left < one.Right - 1;
    }

    /// <summary>Share of the last sheet that parts with the room about them should take.</summary>
    private const double LeastLast = 0.4;

    /// <summary>Sections in rows, set apart evenly so that they fill their sheet; rows of fewer keep the columns of the fullest.</summary>
    private static IReadOnlyList<(SheetPart Part, Point2 At)> Spread(IReadOnlyList<(SheetPart Part, Point2 At)> parts, Box area)
    {
        double high = parts[0].Part.Height;
        if (parts.Any(p => Math.Abs(p.Part.Height - high) > 1e-6))
            return parts;
        (SheetPart Part, Point2 At)[][] rows = [.. parts.GroupBy(p => Math.Round(p.At.Y, 3)).OrderByDescending(g => g.Key).Select(g => g.OrderBy(p => p.At.X).ToArray())];
        double across = rows.Min(r => (area.Right - r[^1].At.X - r[^1].Part.Width) / r.Length), down = (rows[^1].Min(p => p.At.Y - p.Part.Height) - area.Bottom) / rows.Length;
        return [.. rows.SelectMany((r, i) => r.Select((p, k) => (p.Part, p.At + new Point2(across * (k + 0.5), -down * (i + 0.5)))))];
    }

    /// <summary>Tries all ways; one is left as soon as it has more sheets than the best so far. Null where all have more than a number of sheets.</summary>
    private static List<FreeRoom>? Best(IReadOnlyList<SheetPart>[] groups, Box area, int atMost)
    {
        if (groups.Length == 0)
            return [];
        int tables = Array.FindIndex(groups, g => g[0].Kind == PartKind.Table);
        int common = tables < 0 ? groups.Length : tables;
        IReadOnlyList<SheetPart>[] orders = tables < 0 ? [[]] : [.. Orders(groups[tables])];
        PlaceRule[] rules = tables < 0 ? [PlaceRule.Highest] : Enum.GetValues<PlaceRule>();
        List<FreeRoom>? best = null;
        (int Blank, int Edges) least = default;
        // Tables that go on where the group before them ended may also stand in what room the sheets before leave, where that saves one.
        int ways = 1 << (groups.Length - 1);
        for (int way = 0; way < (tables > 0 ? 2 * ways : ways); way++)
        {
            (int joins, bool anywhere) = (way % ways, way >= ways);
            if (anywhere && (joins >> (tables - 1) & 1) == 0)
                continue;
            // What comes before the tables stands the same in all their orders.
            var begun = new List<FreeRoom>();
            for (int g = 0; g < common; g++)
                Fill(begun, First(begun, g, joins, false), groups[g], PlaceRule.Highest, area, int.MaxValue);
            foreach (IReadOnlyList<SheetPart> order in orders)
            {
                foreach (PlaceRule rule in rules)
                {
                    int first = common < groups.Length ? First(begun, common, joins, anywhere) : begun.Count;
                    List<FreeRoom> sheets = [.. begun.Take(first), .. begun.Skip(first).Select(s => s.Copy())];
                    int most = best?.Count ?? atMost;
                    for (int g = common; g < groups.Length && sheets.Count <= most; g++)
                        Fill(sheets, First(sheets, g, joins, anywhere && g == tables), g == tables ? order : groups[g], g == tables ? rule : PlaceRule.Highest, area, most);
                    if (sheets.Count > most)
                        continue;
                    (int Blank, int Edges) faults = (Blank(sheets), Edges(sheets));
                    if (best is null || sheets.Count < most || faults.CompareTo(least) < 0)
                        (best, least) = (sheets, faults);
                }
            }
        }
        return best;
    }

    /// <summary>The first sheet on which a group may stand: the last one of the group before it where the two are joined, or any, else one of its own.</summary>
    private static int First(List<FreeRoom> sheets, int group, int joins, bool anywhere)
    {
        if (anywhere)
            return 0;
        return group > 0 && (joins >> (group - 1) & 1) == 1 ? sheets.Count - 1 : sheets.Count;
    }

    /// <summary>Adds a group of parts from a sheet on; left unfinished beyond a number of sheets.</summary>
    private static void Fill(List<FreeRoom> sheets, int first, IReadOnlyList<SheetPart> parts, PlaceRule rule, Box area, int most)
    {
        if (parts[0].Kind is PartKind.Section or PartKind.Detail)
        {
            InOrder(parts, sheets, first, area);
            return;
        }
        for (int i = 0; i < parts.Count && sheets.Count <= most; i++)
            Place(parts[i], sheets, first, area, rule);
    }

    /// <summary>Orders of tables: as they come, the highest, the widest and the largest first, and each of these with one table before all others.</summary>
    private static IEnumerable<IReadOnlyList<SheetPart>> Orders(IReadOnlyList<SheetPart> tables)
    {
        IReadOnlyList<SheetPart>[] orders =
        [
            tables, [.. tables.OrderByDescending(p => p.Height)], [.. tables.OrderByDescending(p => p.Width)], [.. tables.OrderByDescending(p => p.Width * p.Height)],
        ];
        return orders.Concat(orders.Skip(1).SelectMany(o => o.Select(first => (IReadOnlyList<SheetPart>)[first, .. o.Where(p => !ReferenceEquals(p, first))])));
    }

    /// <summary>Parts as one reads them: each to the right of the one before it, in the next row, or on the next sheet.</summary>
    private static void InOrder(IReadOnlyList<SheetPart> parts, List<FreeRoom> sheets, int first, Box area)
    {
        Point2? after = null;
        foreach (SheetPart part in parts)
        {
            Point2? at = null;
            for (; first < sheets.Count && at is null; first += at is null ? 1 : 0)
            {
                at = after is Point2 before ? sheets[first].FindAfter(part.Width, part.Height, before) : sheets[first].Find(part.Width, part.Height, PlaceRule.Highest);
                after = at;
            }
            if (at is null)
                sheets.Add(new FreeRoom(area));
            after = at ?? new Point2(area.Left, area.Top);
            sheets[first].Take(part, after.Value);
        }
    }

    private static void Place(SheetPart part, List<FreeRoom> sheets, int first, Box area, PlaceRule rule)
    {
        for (int i = first; i < sheets.Count; i++)
        {
            if (sheets[i].Find(part.Width, part.Height, rule) is Point2 at)
            {
                sheets[i].Take(part, at);
                return;
            }
        }
        if (part.Cut is not null && sheets.Count > first && sheets[^1].Deepest(part.Width) is Point2 below
            && part.Cut(sheets[^1].RoomBelow(below, part.Width)) is var (top, others))
        {
            sheets[^1].Take(top, below);
            // What is continued stands behind what it continues.
            Place(others, sheets, sheets.Count - 1, area, rule);
            return;
        }
        var next = new FreeRoom(area);
        sheets.Add(next);
        var corner = new Point2(area.Left, area.Top);
        if (part.Height > area.Height && part.Cut?.Invoke(area.Height) is var (piece, remains))
        {
            next.Take(piece, corner);
            Place(remains, sheets, sheets.Count - 1, area, rule);
            return;
        }
        next.Take(part, corner);
    }
}
