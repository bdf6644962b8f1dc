using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// Where the columns of a section's grid stand along the wall, for sections that ask for the best place: of all places a whole number of steps
/// apart the one that leaves the fewest nails unresolved, then noted. Each is tried by a short search, the best of them and the usual place
/// by the whole one.
/// </summary>
public static class ColumnPhases
{
    /// <summary>Most places that are tried for a section; the step grows where there would be more.</summary>
    private const int Greatest = 12;

    /// <summary>The project with its sections' columns where they are best; the same project where no section asks for it.</summary>
    public static WallProject Choose(WallProject project, IProgress<string>? progress = null)
    {
        foreach ((int wall, int section) in project.Walls.SelectMany((w, i) => w.Sections.Select((s, k) => (Section: s, Place: (i, k)))).Where(p => p.Section.HasBestColumns).Select(p => p.Place).ToList())
        {
            progress?.Report(FormattableString.Invariant($"columns of section {project.Walls[wall].Sections[section].Name}"));
            project = Best(project, wall, section);
        }
        return project;
    }

    /// <summary>The project with the columns of one section moved up-station.</summary>
    public static WallProject Moved(WallProject project, int wall, int section, double shift) =>
        With(project, wall, section, project.Walls[wall].Sections[section] with { ColumnShift = shift });

    /// <summary>The project with another section in the place of one.</summary>
    internal static WallProject With(WallProject project, int wall, int section, Section changed)
    {
        Wall old = project.Walls[wall];
        Section[] sections = [.. old.Sections];
        sections[section] = changed;
        Wall[] walls = [.. project.Walls];
        walls[wall] = old with { Sections = sections };
        return project with { Walls = walls };
    }

    /// <summary>Shifts worth trying, the usual place first and small ones before large ones.</summary>
    public static IReadOnlyList<double> ShiftsOf(WallProject project, Section section)
    {
        double least = section.HorizontalSpacing / Greatest, step = project.Rules.ShiftStep;
        // Whole shift steps where they are fine enough, so that the figure printed is a round one.
        step = step > 2 * least ? least : step * Math.Ceiling(least / step - 1e-9);
        int half = (int)Math.Floor(section.HorizontalSpacing / 2 / step + 1e-9);
        return [.. Enumerable.Range(-half, 2 * half + 1).Select(k => Lengths.RoundToQuantum(k * step, project.Unit)).OrderBy(Math.Abs).ThenBy(s => -s)];
    }

    private static WallProject Best(WallProject project, int wall, int section)
    {
        double given = project.Walls[wall].Sections[section].ColumnShift;
        double[] shifts = [.. ShiftsOf(project, project.Walls[wall].Sections[section]).Select(s => given + s)];
        var tried = new Figures[shifts.Length];
        Parallel.For(0, shifts.Length, i => tried[i] = Figures.Of(Moved(project, wall, section, shifts[i]), SearchDepth.Short));
        double best = shifts[Enumerable.Range(0, shifts.Length).MinBy(i => (tried[i], i))];
        WallProject moved = Moved(project, wall, section, best);
        return best != given && Figures.Of(moved, SearchDepth.Whole).CompareTo(Figures.Of(project, SearchDepth.Whole)) < 0 ? moved : project;
    }

    /// <summary>What a layout is judged by, in order.</summary>
    internal readonly record struct Figures(double Uncovered, int Unresolved, int Noted) : IComparable<Figures>
    {
        public static Figures Of(WallProject project, SearchDepth depth)
        {
            var site = new Site(project);
            var search = new LayoutSearch(site, RowTasks.Make(site), new PlacingOptions { Depth = depth }, null);
            search.Run();
            return new Figures(Math.Round(search.Cover.Total, 3), search.Layout.Cost.Unresolved, search.Layout.Cost.Noted);
        }

        public int CompareTo(Figures other) => (Uncovered, Unresolved, Noted).CompareTo((other.Uncovered, other.Unresolved, other.Noted));
    }
}
