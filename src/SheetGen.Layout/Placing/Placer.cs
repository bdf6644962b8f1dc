using SheetGen.Layout.Clearance;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>Where does every nail go: rows and grid from the profile, then the best layout on them, with a reason for each change.</summary>
public static class Placer
{
    /// <summary>
    /// The project with the first column of each section that asks for the best placed where fewest nails are left unresolved, then noted; the
    /// same project where none asks.
    /// </summary>
    public static WallProject ChooseColumns(WallProject project, IProgress<string>? progress = null) => ColumnPhases.Choose(project, progress);

    public static NailLayout Place(WallProject project, PlacingOptions options, IProgress<string>? progress = null)
    {
        var site = new Site(project);
        List<RowTask> rows = RowTasks.Make(site);
        var search = new LayoutSearch(site, rows, options, progress);
        search.Run();
        return Told(project, site, search, progress);
    }

    /// <summary>What a search has found, with marks, reasons and what would help.</summary>
    internal static NailLayout Told(WallProject project, Site site, LayoutSearch search, IProgress<string>? progress = null)
    {
        var names = new Marks(project);
        var marks = new Dictionary<Placed, string>(ReferenceEqualityComparer.Instance);
        foreach (RowState state in search.Layout.Rows)
        {
            foreach ((Placed nail, string mark) in names.Of(state))
                marks[nail] = mark;
        }
        var reasons = new Reasons(search.Layout, search.NewlyCovered, marks, project.Unit);
        var nails = new List<Nail>();
        var leftOut = new List<LeftOut>();
        foreach (RowState state in search.Layout.Rows)
        {
            nails.AddRange(state.Nails.Select(n => Finish(n, marks[n], state, reasons)));
            leftOut.AddRange(LeftOutOf(state, names, reasons));
        }
        LayoutScore score = Score(search);
        (nails, IReadOnlyList<CutShort> testsCutShort) = TestNailPlacer.Add(project, site.Faces, nails, names, search.Options.MostTurnedTestHoles);
        CutShort[] cutShort = [.. search.CutShort, .. testsCutShort];
        return new NailLayout
        {
            Nails = [.. Ordered(project, nails)],
            Rows = [.. search.Layout.Rows.Select(r => RowOf(r.Row))],
            LeftOut = leftOut,
            Score = score,
            Help = Help(project, search, marks, progress),
            Notes = [.. ColumnsSaid(project), .. OnGridHeads(search.Layout, names), .. cutShort.Select(c => c.Message)],
            CutShort = cutShort,
        };
    }

    private static List<NailHelp> Help(WallProject project, LayoutSearch search, IReadOnlyDictionary<Placed, string> marks, IProgress<string>? progress)
    {
        int unresolved = search.Layout.Slots.Count(s => s.IsUnresolved);
        if (unresolved == 0)
            return [];
        progress?.Report(FormattableString.Invariant($"what would help the unresolved nails ({unresolved})"));
        var teller = new HelpTeller(marks);
        List<NailHelp> help = [.. new Helping(search.Layout, search.Cover, teller).Of()];
        progress?.Report("what other columns and rows would help");
        help.AddRange(GridHelps.Of(project, search.Layout, search.Cover.Total, teller));
        return help;
    }

    private static IOrderedEnumerable<Nail> Ordered(WallProject project, List<Nail> nails)
    {
        var walls = project.Walls.Select((w, i) => (w, i)).ToDictionary(p => p.w, p => p.i, (IEqualityComparer<Wall>)ReferenceEqualityComparer.Instance);
        return nails.OrderBy(n => walls[n.Wall]).ThenBy(n => n.Section.Start)
            .ThenBy(n => n.Kind == NailKind.Verification).ThenBy(n => n.Row).ThenBy(n => n.Along).ThenBy(n => n.Mark, StringComparer.Ordinal);
    }

    private static NailRow RowOf(RowTask row) => new(
        row.Bay.Wall, row.Bay.Section, row.Bay.Leg.Index, row.Number, row.Row.IsLevel,
        row.Row.IsLevel ? row.Row.Level : -row.Row.Level, row.Length,
        [.. row.Row.Places.Where((_, ordinal) => !row.GridChoice(ordinal).IsAdded).Concat(row.LeftOutByHand.Select(l => l.Along)).Order().Select(p => p.Number)]);

    private static Nail Finish(Placed nail, string mark, RowState state, Reasons reasons)
    {
        RowTask row = nail.Row;
        Wall wall = row.Bay.Wall;
        Placed first = state.At(nail.Choice.Ordinal)
            .OrderBy(n => Math.Abs(n.Choice.Shift)).ThenBy(n => n.Choice.Shift).First();
        bool isAdded = nail.Choice.IsAdded || !ReferenceEquals(first, nail);
        Station station = wall.StationOf(nail.Choice.Head.Along).Rounded(row.Bay.Unit);
        return new Nail
        {
            Mark = mark,
            Wall = wall,
            Section = row.Bay.Section,
            Row = row.Number,
            Column = row.Columns[nail.Choice.Ordinal].Number,
            Kind = NailKind.Production,
            Along = nail.Choice.Head.Along.Number,
            Station = station.Number,
            Elevation = nail.Choice.Head.Elevation.Number,
            Splay = nail.Turning.Splay,
            Inclination = nail.Turning.Inclination,
            Length = row.LengthOf(nail.Choice, nail.Turning),
            Status = StatusOf(nail),
            IsMoved = !nail.Choice.IsAtGrid,
            IsAdded = isAdded,
            IsFixed = nail.Choice.IsPinned,
            GridStation = (isAdded ? station : wall.StationOf(row.Row.Places[nail.Choice.Ordinal]).Rounded(row.Bay.Unit)).Number,
            Hole = nail.Hole,
            Reason = reasons.Of(nail),
        };
    }

    private static NailStatus StatusOf(Placed nail)
    {
        if (nail.IsUnresolved)
            return NailStatus.Unresolved;
        if (nail.Turning.IsNoted)
            return NailStatus.Noted;
        if (!nail.Turning.IsStraight)
            return NailStatus.Redirected;
        return nail.Choice.IsAtGrid ? NailStatus.Grid : NailStatus.Moved;
    }

    private static IEnumerable<LeftOut> LeftOutOf(RowState state, Marks names, Reasons reasons)
    {
        RowTask row = state.Row;
        foreach ((Along along, ColumnName column) in row.LeftOutByHand)
        {
            yield return new LeftOut(
                names.Of(row.Bay, row.Number, column), row.Bay.Wall, row.Bay.Section, row.Number, column.Number, along.Number, row.Row.ElevationAt(along).Number,
                "left out in the project file");
        }
        for (int ordinal = 0; ordinal < row.Count; ordinal++)
        {
            if (state.At(ordinal).Count > 0)
                continue;
            Along along = row.Row.Places[ordinal];
            yield return new LeftOut(
                names.OfStation(row, ordinal), row.Bay.Wall, row.Bay.Section, row.Number, ordinal + 1, along.Number, row.Row.ElevationAt(along).Number,
                reasons.OfLeftOut(row, ordinal));
        }
    }

    private static IEnumerable<string> ColumnsSaid(WallProject project) =>
        from section in project.Walls.SelectMany(w => w.Sections)
        where section.FirstColumn is not null || section.HasBestColumns
        let place = section.FirstColumn is { } first ? $"the first column of each row stands {Figures.Length(first, project.Unit)} from its down-station end" : "the grid's columns are best where they are, centred"
        select $"section {section.Name}: {place}{(section.HasBestColumns ? " (columns: best)" : "")}";

    /// <summary>What can be proven while all heads stand on grid stations, with the stations that prove it.</summary>
    private static IEnumerable<string> OnGridHeads(LayoutState layout, Marks names)
    {
        const int Shown = 8;
        if (!layout.Slots.Any(s => s.IsUnresolved))
            yield break;
        GridHeads limit = GridHeads.Of(layout);
        if (limit.Least == 0)
            yield break;
        string Mark(Slot slot) => names.OfStation(slot.Row, slot.Ordinal);
        string Listed(IReadOnlyList<string> items) => string.Join(", ", items.Take(Shown)) + (items.Count > Shown ? FormattableString.Invariant($" and {items.Count - Shown} more") : "");
        var because = new List<string>();
        if (limit.Blocked.Count > 0)
            because.Add("no free direction at " + Listed([.. limit.Blocked.Select(Mark)]));
        if (limit.Pairs.Count > 0)
            because.Add("no two directions clear of each other at " + Listed([.. limit.Pairs.Select(p => $"{Mark(p.First)} and {Mark(p.Second)}")]));
        yield return FormattableString.Invariant($"with all heads on their grid stations at least {limit.Least} would stay unresolved: {string.Join("; ", because)}");
    }

    private static LayoutScore Score(LayoutSearch search)
    {
        Cost found = search.Layout.Cost;
        Cost limit = search.LowerLimit;
        bool noted = found.Unresolved == limit.Unresolved, effort = noted && found.Noted == limit.Noted;
        double uncovered = search.Cover.Total;
        return new LayoutScore(
            new FoundAndBound(found.Unresolved, limit.Unresolved),
            new FoundAndBound(found.Noted, noted ? limit.Noted : null),
            new FoundAndBound(found.Effort / (double)Cost.Point, effort ? limit.Effort / (double)Cost.Point : null))
        {
            Cover = new FoundAndBound(Math.Round(uncovered, Tolerance.Decimals), uncovered > 0 ? null : 0),
        };
    }
}
