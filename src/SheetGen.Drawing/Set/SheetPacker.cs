using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Set;

/// <summary>
/// Fills sheets with groups of parts. A group begins a sheet of its own, or goes on where the one before it ended; parts are taken in order or
/// the highest first, to the highest free place or the one farthest left. Of all these ways the one with the fewest sheets is taken, of those
/// the one with the fewest that are two thirds empty, of those the first.
/// </summary>
public static class SheetPacker
{
    private const double Empty = 1.0 / 3;

    /// <param name="groups">Parts in the order in which they are looked for; none wider or higher than the area, unless it can be cut.</param>
    public static IReadOnlyList<PackedSheet> Pack(IReadOnlyList<IReadOnlyList<SheetPart>> groups, Box area)
    {
        IReadOnlyList<SheetPart>[] filled = [.. groups.Where(g => g.Count > 0)];
        if (filled.Length == 0)
            return [];
        List<Skyline> best = Ways(filled, area)
            .OrderBy(sheets => sheets.Count).ThenBy(sheets => sheets.Count(s => s.Filled < Empty)).First();
        return [.. best.Select(s => new PackedSheet(s.Parts))];
    }

    private static IEnumerable<List<Skyline>> Ways(IReadOnlyList<SheetPart>[] groups, Box area)
    {
        for (int joins = 0; joins < 1 << (groups.Length - 1); joins++)
        {
            foreach (bool leftFirst in new[] { false, true })
            {
                foreach (bool highFirst in new[] { false, true })
                {
                    var sheets = new List<Skyline>();
                    for (int g = 0; g < groups.Length; g++)
                    {
                        bool goesOn = g > 0 && (joins >> (g - 1) & 1) == 1;
                        int first = goesOn ? sheets.Count - 1 : sheets.Count;
                        // Sections and details keep their order, by which they are found.
                        bool isSorted = highFirst && groups[g][0].Kind == PartKind.Table;
                        foreach (SheetPart part in isSorted ? groups[g].OrderByDescending(p => p.Height) : groups[g].AsEnumerable())
                            Place(part, sheets, first, area, leftFirst && part.Kind == PartKind.Table);
                    }
                    yield return sheets;
                }
            }
        }
    }

    private static void Place(SheetPart part, List<Skyline> sheets, int first, Box area, bool leftFirst)
    {
        foreach (Skyline sheet in sheets.Skip(first))
        {
            if (sheet.Find(part.Width, part.Height, leftFirst) is Point2 at)
            {
                sheet.Take(part, at);
                return;
            }
        }
        if (part.Cut is not null && sheets.Count > first && sheets[^1].Find(part.Width, 0, false) is Point2 below
            && part.Cut(sheets[^1].RoomBelow(below)) is var (top, others))
        {
            sheets[^1].Take(top, below);
            Place(others, sheets, first, area, leftFirst);
            return;
        }
        var next = new Skyline(area);
        sheets.Add(next);
        var corner = new Point2(area.Left, area.Top);
        if (part.Height > area.Height && part.Cut?.Invoke(area.Height) is var (piece, remains))
        {
            next.Take(piece, corner);
            Place(remains, sheets, first, area, leftFirst);
            return;
        }
        next.Take(part, corner);
    }
}
