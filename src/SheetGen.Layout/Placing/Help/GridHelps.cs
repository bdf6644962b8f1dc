using SheetGen.Layout.Clearance;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Placing;

/// <summary>
/// What would help sections with unresolved nails: their grid's columns counted from another first one, or their rows shifted at outside corners. Each
/// is tried by laying the project out anew by insertion, the most hopeful one of each by a short search; what is left out for the sake of time is told.
/// </summary>
internal sealed class GridHelps
{
    /// <summary>Most grid stations of a project for which this is tried.</summary>
    private const int MostStations = 800;

    /// <summary>Most ways that are laid out by insertion: those of the two sections with the most unresolved nails.</summary>
    private const int MostLaidOut = 10;

    private readonly WallProject _project;
    private readonly LayoutState _layout;
    private readonly ColumnPhases.Figures _now;
    private readonly HelpTeller _teller;
    private readonly List<Way> _ways;

    private GridHelps(WallProject project, LayoutState layout, double uncovered, HelpTeller teller)
    {
        _project = project;
        _layout = layout;
        _teller = teller;
        _now = new(Math.Round(uncovered, SearchTolerance.CoverDecimals), layout.Cost.Unresolved, layout.Cost.Noted);
        IEnumerable<IGrouping<Section, Slot>> sections = layout.Slots.Where(s => s.IsUnresolved && !s.IsPinned).GroupBy(s => s.Row.Bay.Section);
        _ways = [.. sections.OrderByDescending(g => g.Count()).SelectMany(g => Ways([.. g]))];
    }

    /// <param name="Slots">The unresolved nails of its section.</param>
    private sealed record Way(Slot[] Slots, string Relaxation, string Value, WallProject Project)
    {
        public Section Section => Slots[0].Row.Bay.Section;
    }

    public static IEnumerable<NailHelp> Of(WallProject project, LayoutState layout, double uncovered, HelpTeller teller)
    {
        var helps = new GridHelps(project, layout, uncovered, teller);
        return helps._ways.Count == 0 ? [] : helps.All();
    }

    private IEnumerable<NailHelp> All()
    {
        if (_layout.Slots.Count > MostStations)
        {
            foreach (NailHelp help in NotTried(_ways, FormattableString.Invariant($"not tried: this project has {_layout.Slots.Count} grid stations, and other columns and rows are tried up to {MostStations}")))
                yield return help;
            yield break;
        }
        Way[] laidOut = [.. _ways.Take(MostLaidOut)];
        foreach (NailHelp help in NotTried(_ways[laidOut.Length..], FormattableString.Invariant($"not tried: other columns and rows are tried {MostLaidOut} times")))
            yield return help;
        // The quick figure of each is held against that of the grid as it is.
        WallProject[] tried = [_project, .. laidOut.Select(w => w.Project)];
        var quick = new ColumnPhases.Figures[tried.Length];
        Parallel.For(0, tried.Length, i => quick[i] = ColumnPhases.Figures.Of(tried[i], SearchDepth.Insertion));
        Way[] hopeful = [.. Enumerable.Range(0, laidOut.Length).GroupBy(i => (laidOut[i].Section, laidOut[i].Relaxation)).Select(kind => kind.MinBy(i => (quick[i + 1], i)))
            .Where(i => quick[i + 1].Unresolved < quick[0].Unresolved).OrderBy(i => quick[i + 1].Unresolved).Select(i => laidOut[i])];
        var found = new ColumnPhases.Figures[hopeful.Length];
        Parallel.For(0, hopeful.Length, i => found[i] = ColumnPhases.Figures.Of(hopeful[i].Project, SearchDepth.Short));
        for (int i = 0; i < hopeful.Length; i++)
        {
            if (found[i].Uncovered <= _now.Uncovered && found[i].Unresolved < _now.Unresolved)
                yield return About(hopeful[i], found[i]);
        }
    }

    private IEnumerable<Way> Ways(Slot[] slots)
    {
        Wall inWall = slots[0].Row.Bay.Wall;
        Section old = slots[0].Row.Bay.Section;
        int wall = _project.Walls.ToList().IndexOf(inWall), section = inWall.Sections.ToList().IndexOf(old);
        const int Parts = 4;
        for (int i = 0; i < Parts; i++)
        {
            double first = Lengths.RoundToQuantum(((old.FirstColumn ?? 0) + (double)i / Parts * old.HorizontalSpacing) % old.HorizontalSpacing, _project.Unit);
            if (first != old.FirstColumn)
                yield return new Way(slots, "columns", Figures.Length(first, _project.Unit), ColumnPhases.From(_project, wall, section, first));
        }
        var face = new Face(inWall);
        bool hasCorner = face.Legs.Any(l => l.EndCorner is { } corner && face.IsOutside(corner) && corner.Along > old.Start && corner.Along < old.End);
        if (hasCorner && old.CornerRows == CornerRows.Continuous)
            yield return new Way(slots, "corner_rows", "shifted", ColumnPhases.With(_project, wall, section, old with { CornerRows = CornerRows.Shifted }));
    }

    private NailHelp About(Way way, ColumnPhases.Figures found) => _teller.About(
        way.Slots, way.Relaxation, way.Value,
        FormattableString.Invariant($"in section {way.Section.Name}: leaves {found.Unresolved} instead of {_now.Unresolved} unresolved in all, {found.Noted} instead of {_now.Noted} noted, by a short search"));

    private IEnumerable<NailHelp> NotTried(IReadOnlyList<Way> ways, string why) =>
        ways.SelectMany(w => w.Slots).Distinct().GroupBy(s => s.Row.Bay.Wall).Select(wall => _teller.About([.. wall], "none", "", why));
}
