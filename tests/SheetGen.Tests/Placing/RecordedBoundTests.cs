using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Placing;

/// <summary>Lower limits of small walls, and the pairs of nails looked at for them, are those that were recorded: a limit may rise, but none may fall unseen.</summary>
public sealed class RecordedBoundTests
{
    private static readonly Dictionary<string, Func<WallProject>> Walls = Make();

    private static readonly RecordedFigures Record = new("recorded-bounds.txt", [.. Walls.Keys], n => FiguresOf(Walls[n]()));

    public static TheoryData<string> Names => [.. Walls.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Limits_and_what_they_cost_are_as_recorded(string name) => Record.AssertAsRecorded(name);

    [Fact]
    public void The_record_holds_these_walls_and_no_others() => Record.AssertNoOthers();

    private static Dictionary<string, Func<WallProject>> Make()
    {
        var walls = new Dictionary<string, Func<WallProject>>(StringComparer.Ordinal);
        foreach ((int rows, bool corner, bool pin) in ((int, bool, bool)[])[(1, false, false), (2, false, false), (1, true, false), (1, false, true), (1, true, true)])
        {
            for (ulong i = 31; i <= 36; i++)
            {
                ulong seed = i;
                walls[$"{rows} rows{(corner ? " round a corner" : "")}{(pin ? " with a pin" : "")}, {seed}"] = () => new SmallRow(seed, rows, corner, pin).Project;
            }
        }
        for (ulong i = 1; i <= 10; i++)
        {
            ulong seed = i;
            walls[$"rows close to each other, {seed}"] = () => Close(seed).Project;
        }
        for (ulong i = 11; i <= 18; i++)
        {
            ulong seed = i;
            walls[$"rows close to each other round a corner, {seed}"] = () => (Close(seed) with { CornerAt = 7, Deflection = 75 }).Project;
        }
        return walls;
    }

    /// <summary>Three or four rows of few nails that keep a great distance, so that turned ones of a row run into the next rows.</summary>
    internal static PlacingWall Close(ulong seed)
    {
        var random = new WallRandom(seed * 977);
        double length = random.Of(10.5, 14, 17.5);
        string Shaft(int i) => string.Create(CultureInfo.InvariantCulture, $"  - {{name: S{i}, kind: pipe, points: [{{station: 0, offset: {3 + random.Whole(0, 6)}, elevation: {100 + random.Between(0, 9, 0.25)}}}, {{station: {length}, offset: {3 + random.Whole(0, 6)}, elevation: {100 + random.Between(0, 9, 0.25)}}}], diameter: {random.Of(0.5, 1, 1.5)}}}");
        string Post(int i) => string.Create(CultureInfo.InvariantCulture, $"  - {{name: P{i}, kind: shaft, at: {{station: {random.Between(1, length - 1, 0.25)}, offset: {random.Between(3, 9, 0.25)}}}, diameter: {random.Of(1, 2)}, top: 120, bottom: {random.Of(90, 104, 107)}}}");
        return new PlacingWall
        {
            Length = length,
            Top = "[[0, 111], [END, 111]]",
            Lengths = "16",
            Blocks =
            [
                "obstructions:", Shaft(1), Post(1), Post(2),
                "rules:",
                $"  clearance: {{obstruction: 0.5, nail: {random.Of("1.75", "2.25", "2.5")}, boundary: 1}}",
                "  redirect: {field_tolerance: 5, step: 5, maximum: 20, inclination: [5, 25]}",
                "  shift_step: 1",
            ],
        };
    }

    private static string FiguresOf(WallProject project)
    {
        var site = new Site(project);
        RowTask[] rows = [.. RowTasks.Make(site)];
        StretchOfRow[] whole = [.. rows.Select(t => new StretchOfRow(t, 0, t.Count - 1))];
        StretchLimit[] alone = [.. whole.Select(w => RowsAlone.LowerLimit(w, 1_000_000_000))];
        var chains = whole.Select(w => new ChainSearch(new StretchNodes(RowStretch.Open(w)), Surroundings.Empty, project.Rules.NailClearance)).ToArray();
        var cluster = new ClusterSearch(whole.Length <= 2 ? whole : whole[..2], project.Rules.NailClearance, 50_000_000);
        int needs = 0;
        while (needs < 20 && cluster.NeedsMoreThan(needs))
            needs++;
        var search = new LayoutSearch(site, rows, new PlacingOptions(true), null);
        search.Run();
        GridHeads heads = GridHeads.Of(search.Layout);
        return string.Create(CultureInfo.InvariantCulture,
            $"rows alone {RecordedFigures.Of(Sum(alone.Select(a => a.Cost)))}, {alone.Sum(a => a.Nails.Count)} nails; conflicts left out {RecordedFigures.Of(Sum(chains.Select(c => c.Limit)))}; pairs looked at {string.Join(" ", whole.Select(LooksOf))}, with all earlier nails {string.Join(" ", chains.Select(c => c.Cheapest(true, 1_000_000)?.Cost.Effort ?? -1))}; of two rows {needs} unresolved in {50_000_000 - cluster.LooksLeft} looks; at the grid {heads.Blocked.Count} blocked, {heads.Pairs.Count} pairs, {heads.Least} unresolved; found {RecordedFigures.Of(search.Layout.Cost)}, limit {RecordedFigures.Of(search.LowerLimit)}");
    }

    private static Cost Sum(IEnumerable<Cost> costs) => costs.Aggregate(default(Cost), (sum, c) => sum + (c.IsInfinite ? default : c));

    /// <summary>The least number of looks with which the cheapest chain is exact, by halving.</summary>
    private static long LooksOf(StretchOfRow where)
    {
        bool IsExact(long looks) => new ChainSearch(new StretchNodes(RowStretch.Open(where)), Surroundings.Empty, where.Row.Bay.Rules.NailClearance).Cheapest(false, looks) is null or { IsExact: true };
        long low = -1, high = 1;
        while (!IsExact(high))
            (low, high) = (high, 2 * high);
        while (high - low > 1)
        {
            long middle = (low + high) / 2;
            if (IsExact(middle))
                high = middle;
            else
                low = middle;
        }
        return high;
    }
}
