using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>
/// What the search gives on small walls of many kinds, and what it costs, is what was recorded: a change for better or worse is recorded anew on purpose
/// (DEVELOPERS.md). The figures are totals of the layout and counts of work, none of them of the machine.
/// </summary>
public sealed class RecordedWallTests
{
    private static readonly RecordedFigures Record = new("recorded-walls.txt", [.. RecordedWalls.All.Select(w => w.Name)], n => FiguresOf(RecordedWalls.All.First(w => w.Name == n)));

    public static TheoryData<string> Names => [.. RecordedWalls.All.Select(w => w.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_wall_is_laid_out_as_recorded(string name) => Record.AssertAsRecorded(name);

    [Fact]
    public void The_record_holds_these_walls_and_no_others() => Record.AssertNoOthers();

    private static string FiguresOf(RecordedWall wall)
    {
        WallProject project = ColumnPhases.Choose(PlacingWall.Read(wall.Yaml));
        var site = new Site(project);
        var search = new LayoutSearch(site, RowTasks.Make(site), wall.Options, null);
        search.Run();
        NailLayout layout = Placer.Told(project, site, search);
        Nail[] nails = [.. layout.Nails.Where(n => n.Kind != NailKind.Verification)];
        string kinds = string.Join(", ", Enum.GetValues<NailStatus>().Select(s => $"{s.ToString().ToLowerInvariant()} {nails.Count(n => n.Status == s)}"));
        string help = string.Join(", ", layout.Help.GroupBy(h => h.Relaxation).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count()} for {g.Sum(h => h.Nails.Count)}"));
        return string.Create(CultureInfo.InvariantCulture,
            $"""
            uncovered {N(layout.Score.Cover)}, unresolved {N(layout.Score.Unresolved)}, noted {N(layout.Score.Noted)}, effort {N(layout.Score.Effort)}, limit {RecordedFigures.Of(search.LowerLimit)}; {nails.Length} nails: {kinds}, moved {nails.Count(n => n.IsMoved)}, added {nails.Count(n => n.IsAdded)}, fixed {nails.Count(n => n.IsFixed)}, left out {layout.LeftOut.Count}; shifts {nails.Sum(n => Math.Abs(n.Station - n.GridStation)):0.###}, splays {nails.Sum(n => Math.Abs(n.Splay)):0.###}, inclinations {nails.Sum(n => n.Inclination):0.###}, lengths {nails.Sum(n => n.Length):0.###}; verification {layout.Nails.Count(n => n.Kind == NailKind.Verification)}, proof {nails.Count(n => n.Kind == NailKind.Proof)}; test nails at {layout.Nails.Where(n => n.Kind != NailKind.Production).Sum(n => n.Along):0.###}, elevations {layout.Nails.Where(n => n.Kind != NailKind.Production).Sum(n => n.Elevation):0.###}; help {(help.Length == 0 ? "none" : help)}; clear before {nails.Sum(n => n.Reason?.ClearBefore ?? 0):0.###}, after {nails.Sum(n => n.Reason?.ClearAfter ?? 0):0.###}, failed choices told {nails.Sum(n => n.Reason?.Failed.Count ?? 0)}, their splays {nails.Sum(n => n.Reason?.Failed.Sum(f => f.Splay) ?? 0):0.###}; {search.Work.Trials} trials, {search.Work.Directions} directions
            """);
    }

    private static string N(FoundAndBound figure) =>
        string.Create(CultureInfo.InvariantCulture, $"{figure.Found:0.###} ({(figure.Bound is double bound ? string.Create(CultureInfo.InvariantCulture, $"at least {bound:0.###}") : "no limit")})");
}
