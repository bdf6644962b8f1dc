using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>What the grid alone leaves uncovered, before any nail is moved: no search is to leave more.</summary>
internal static class GridCover
{
    /// <summary>The broken stretches of each bay of a project's walls, with all nails on their grid stations.</summary>
    /// <param name="withPins">True to put the nails that the designer pinned to a station there, instead of on their grid station.</param>
    /// <param name="strict">As in <see cref="CoverRule.Breaks(Bay, IReadOnlyList{Head}, bool)"/>.</param>
    public static IReadOnlyList<(Bay Bay, IReadOnlyList<CoverBreak> Breaks)> Of(WallProject project, bool withPins, bool strict)
    {
        var found = new List<(Bay Bay, IReadOnlyList<CoverBreak> Breaks)>();
        foreach (Wall wall in project.Walls)
        {
            var face = new Face(wall);
            var outline = new FaceOutline(face, project.Rules.EdgeMin);
            foreach (IGrouping<Section, Bay> section in Bay.Of(face, project.Rules, project.Unit).GroupBy(b => b.Section))
            {
                List<RowHeads> rows = SectionRows.Make([.. section], outline);
                Dictionary<RowHeads, Model.Results.RowNumber> numbers = RowNumbering.Of(rows);
                rows.RemoveAll(r => !numbers.ContainsKey(r));
                foreach (Bay bay in section)
                {
                    Head[] heads = [.. rows.Where(r => r.Bay == bay).SelectMany(r => withPins ? Pinned(project, r, numbers[r].ToString()) : r.Places.Select(r.HeadAt))];
                    found.Add((bay, CoverRule.Breaks(bay, heads, strict)));
                }
            }
        }
        return found;
    }

    private static IEnumerable<Head> Pinned(WallProject project, RowHeads row, string number)
    {
        double[] places = [.. row.Places];
        Bay bay = row.Bay;
        foreach (FixedNail pin in project.FixedNails)
        {
            if (pin.Wall == bay.Wall.Name && (pin.Section is null || pin.Section == bay.Section.Name) && pin.Row == number
                && pin.Along is { } along && along >= bay.Start && along <= bay.End && bay.Leg.Has(along) && places.Length > 0)
                places[Array.IndexOf(places, places.MinBy(p => Math.Abs(p - along)))] = bay.Rounded(along);
        }
        return places.Select(row.HeadAt);
    }
}
