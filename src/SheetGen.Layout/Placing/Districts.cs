namespace SheetGen.Layout.Placing;

/// <summary>
/// Cuts the layout into districts of about equal size along the walls, and those into groups whose districts cannot come near each other. The
/// cut depends on the layout alone, so the search gives the same result on any number of threads.
/// </summary>
internal static class Districts
{
    /// <summary>Slots in a district: as many as a crowd of shafts with the nails that can give way to each other around it.</summary>
    private const int Size = 400;

    public static bool IsOne(LayoutState layout) => layout.Rows.Select(r => r.Row.Bay.Wall).Distinct().Count() <= 1 && PiecesOf(layout.Slots.Count) == 1;

    /// <param name="round">Odd rounds cut half a district further on, so that what lay at a limit lies inside.</param>
    /// <returns>Groups one after the other; the districts of one group may be searched at the same time.</returns>
    public static List<List<District>> Cut(LayoutState layout, CoverWatch cover, int round)
    {
        var districts = new List<District>();
        foreach (IGrouping<object, Slot> wall in layout.Slots.GroupBy(s => (object)s.Row.Bay.Wall, ReferenceEqualityComparer.Instance))
        {
            Slot[] slots = [.. wall.OrderBy(s => s.Grid.Head.Along).ThenBy(s => s.Index)];
            foreach ((int from, int to) in Pieces(slots.Length, round % 2 == 0 ? 0 : Size / 2))
            {
                Slot[] own = slots[from..to];
                foreach (Slot slot in own)
                    slot.District = districts.Count;
                districts.Add(new District(layout, cover, districts.Count, own, SeedOf(round, own[0].Index)));
            }
        }
        return Apart(districts);
    }

    /// <summary>Pieces of equal length; with an offset the first is a half.</summary>
    private static IEnumerable<(int From, int To)> Pieces(int count, int offset)
    {
        int pieces = PiecesOf(count), size = (count + pieces - 1) / pieces;
        int start = 0, end = offset > 0 && pieces > 1 ? size / 2 : size;
        while (start < count)
        {
            yield return (start, Math.Min(end, count));
            start = end;
            end += size;
        }
    }

    private static int PiecesOf(int count) => Math.Max(1, (int)Math.Round(count / (double)Size));

    private static ulong SeedOf(int round, int first) => ((ulong)round << 32) + (ulong)first + 1;

    private static List<List<District>> Apart(List<District> districts)
    {
        var beside = districts.Select(_ => new HashSet<int>()).ToArray();
        foreach (District district in districts)
        {
            foreach (Slot slot in district.Slots)
            {
                foreach (Slot near in slot.Near)
                    beside[district.Number].Add(near.District);
            }
            // Gaps and cover join neighbours along the wall, however far their holes are apart.
            if (district.Number > 0)
            {
                beside[district.Number].Add(district.Number - 1);
                beside[district.Number - 1].Add(district.Number);
            }
        }
        var groups = new List<List<District>>();
        foreach (District district in districts)
        {
            List<District>? group = groups.Find(g => !g.Exists(d => beside[district.Number].Contains(d.Number)));
            if (group is null)
                groups.Add(group = []);
            group.Add(district);
        }
        return groups;
    }
}
