using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What would help the section with the most unresolved nails: its grid's columns moved by a step, or its rows shifted at outside corners; each tried by
/// laying the project out anew, by a short search.
/// </summary>
internal static class GridHelps
{
    /// <summary>Most grid stations of a project for which this is tried.</summary>
    private const int MostStations = 800;

    /// <param name="marks">Marks of the nails as they stand.</param>
    public static IEnumerable<NailHelp> Of(WallProject project, LayoutState layout, double uncovered, IReadOnlyDictionary<Placed, string> marks)
    {
        if (layout.Slots.Count > MostStations)
            yield break;
        if (layout.Slots.Where(s => s.IsUnresolved && !s.IsPinned).GroupBy(s => s.Row.Bay.Section).OrderByDescending(g => g.Count()).FirstOrDefault() is not { } group)
            yield break;
        var now = new ColumnPhases.Figures(Math.Round(uncovered, 3), layout.Cost.Unresolved, layout.Cost.Noted);
        int wall = project.Walls.ToList().FindIndex(w => w == group.First().Row.Bay.Wall), section = project.Walls[wall].Sections.ToList().IndexOf(group.Key);
        Way[] ways = [.. Ways(project, wall, section)];
        if (ways.Length == 0)
            yield break;
        // The quick figure of each is held against that of the grid as it is; only the most hopeful of each kind is searched.
        WallProject[] tried = [project, .. ways.Select(w => w.Project)];
        var quick = new ColumnPhases.Figures[tried.Length];
        Parallel.For(0, tried.Length, i => quick[i] = ColumnPhases.Figures.Of(tried[i], SearchDepth.Insertion));
        foreach (IGrouping<string, int> kind in Enumerable.Range(0, ways.Length).GroupBy(i => ways[i].Relaxation))
        {
            int best = kind.MinBy(i => (quick[i + 1], i));
            if (quick[best + 1].Unresolved >= quick[0].Unresolved)
                continue;
            ColumnPhases.Figures found = ColumnPhases.Figures.Of(ways[best].Project, SearchDepth.Short);
            if (found.Uncovered <= now.Uncovered && found.Unresolved < now.Unresolved)
                yield return About([.. group], marks, ways[best], found, now);
        }
    }

    private sealed record Way(string Relaxation, string Value, WallProject Project);

    private static IEnumerable<Way> Ways(WallProject project, int wall, int section)
    {
        Section old = project.Walls[wall].Sections[section];
        double quarter = old.HorizontalSpacing / 4;
        for (int i = 0; i < 4; i++)
        {
            double first = Lengths.RoundToQuantum(((old.FirstColumn ?? 0) + (i + (old.FirstColumn is null ? 0 : 1)) * quarter) % old.HorizontalSpacing, project.Unit);
            if (first != old.FirstColumn)
                yield return new Way("columns", Figures.Length(first, project.Unit), ColumnPhases.From(project, wall, section, first));
        }
        if (Corner(project, wall, section) is { } shifted)
            yield return new Way("corner_rows", "shifted", shifted);
    }

    /// <summary>The project with the section's rows shifted at corners; null where it has no outside corner or they are shifted already.</summary>
    private static WallProject? Corner(WallProject project, int wall, int section)
    {
        Section old = project.Walls[wall].Sections[section];
        var face = new Face(project.Walls[wall]);
        bool hasCorner = face.Legs.Any(l => l.EndCorner is { } corner && face.IsOutside(corner) && corner.Along > old.Start && corner.Along < old.End);
        return hasCorner && old.CornerRows == CornerRows.Continuous ? ColumnPhases.With(project, wall, section, old with { CornerRows = CornerRows.Shifted }) : null;
    }

    private static NailHelp About(
        Slot[] slots, IReadOnlyDictionary<Placed, string> marks, Way way, ColumnPhases.Figures found, ColumnPhases.Figures now) => new(
        slots[0].Row.Bay.Wall, [.. slots.Select(s => marks[s.Nails[0]])], slots.Min(StationOf), slots.Max(StationOf), way.Relaxation, way.Value,
        FormattableString.Invariant($"in section {slots[0].Row.Bay.Section.Name}: leaves {found.Unresolved} instead of {now.Unresolved} unresolved in all, {found.Noted} instead of {now.Noted} noted, by a short search"),
        false);

    private static double StationOf(Slot slot) => slot.Row.Bay.Wall.StationOf(slot.Grid.Head.Along);
}
