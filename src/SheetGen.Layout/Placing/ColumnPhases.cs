using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Where the first column of a section's grid stands, for sections that ask for the best place: of all places a whole number of steps
/// apart the one that leaves the fewest nails unresolved, then noted. Each is tried by a short search, the best of them and centred columns
/// by the whole one.
/// </summary>
internal static class ColumnPhases
{
    /// <summary>Most places that are tried for a section; the step grows where there would be more.</summary>
    private const int Greatest = 12;

    /// <summary>Places tried between two signs of progress.</summary>
    private const int AtOnce = 4;

    /// <summary>The project with its sections' columns where they are best; the same project where no section asks for it.</summary>
    public static WallProject Choose(WallProject project, IProgress<string>? progress = null)
    {
        foreach ((int wall, int section) in project.Walls.SelectMany((w, i) => w.Sections.Select((s, k) => (Section: s, Place: (i, k)))).Where(p => p.Section.HasBestColumns).Select(p => p.Place).ToList())
            project = Best(project, wall, section, progress);
        return project;
    }

    /// <summary>The project with the columns of one section counted from another first one; null centres them.</summary>
    public static WallProject From(WallProject project, int wall, int section, double? first) =>
        With(project, wall, section, project.Walls[wall].Sections[section] with { FirstColumn = first });

    /// <summary>The project with another section in the place of one.</summary>
    public static WallProject With(WallProject project, int wall, int section, Section changed)
    {
        Wall old = project.Walls[wall];
        Section[] sections = [.. old.Sections];
        sections[section] = changed;
        Wall[] walls = [.. project.Walls];
        walls[wall] = old with { Sections = sections };
        return project with { Walls = walls };
    }

    /// <summary>First columns worth trying over one spacing, centred ones (null) before all.</summary>
    public static IReadOnlyList<double?> FirstColumnsOf(WallProject project, Section section)
    {
        double least = section.HorizontalSpacing / Greatest, step = project.Rules.ShiftStep;
        // Whole shift steps where they are fine enough, so that the figure printed is a round one.
        step = step > 2 * least ? least : step * Math.Ceiling(least / step - Tolerance.Rounding);
        int count = (int)Math.Ceiling(section.HorizontalSpacing / step - Tolerance.Rounding);
        return [null, .. Enumerable.Range(0, count).Select(k => (double?)Lengths.RoundToQuantum(k * step, project.Unit))];
    }

    private static WallProject Best(WallProject project, int wall, int section, IProgress<string>? progress)
    {
        string name = project.Walls[wall].Sections[section].Name;
        double?[] places = [.. FirstColumnsOf(project, project.Walls[wall].Sections[section])];
        var tried = new Figures[places.Length];
        for (int from = 0; from < places.Length; from += AtOnce)
        {
            int to = Math.Min(from + AtOnce, places.Length);
            progress?.Report(FormattableString.Invariant($"section {name}, places {from + 1} to {to} of {places.Length}"));
            Parallel.For(from, to, i => tried[i] = Figures.Of(From(project, wall, section, places[i]), SearchDepth.Short));
        }
        double? best = places[Enumerable.Range(0, places.Length).MinBy(i => (tried[i], i))];
        if (best is null)
            return project;
        progress?.Report(FormattableString.Invariant($"section {name}, the best place against centred columns"));
        WallProject moved = From(project, wall, section, best);
        return Figures.Of(moved, SearchDepth.Whole).CompareTo(Figures.Of(project, SearchDepth.Whole)) < 0 ? moved : project;
    }

    /// <summary>What a layout is judged by, in order.</summary>
    internal readonly record struct Figures(double Uncovered, int Unresolved, int Noted) : IComparable<Figures>
    {
        public static Figures Of(WallProject project, SearchDepth depth)
        {
            var site = new Site(project);
            var search = new LayoutSearch(site, RowTasks.Make(site), new PlacingOptions { Depth = depth }, null);
            search.Run();
            return new Figures(Math.Round(search.Cover.Total, SearchTolerance.CoverDecimals), search.Layout.Cost.Unresolved, search.Layout.Cost.Noted);
        }

        public int CompareTo(Figures other) => (Uncovered, Unresolved, Noted).CompareTo((other.Uncovered, other.Unresolved, other.Noted));
    }
}
