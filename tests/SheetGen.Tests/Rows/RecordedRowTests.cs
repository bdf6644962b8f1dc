using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Tests.Placing;
using SheetGen.Tests.Walls;
using Xunit;

namespace SheetGen.Tests.Rows;

/// <summary>Rows, grid stations, places and runs of walls of many kinds are those that were recorded: totals, before anything is searched.</summary>
public sealed class RecordedRowTests
{
    private static readonly Dictionary<string, Func<WallProject>> Walls = Make();

    private static readonly RecordedFigures Record = new("recorded-rows.txt", [.. Walls.Keys], n => FiguresOf(Walls[n]()));

    public static TheoryData<string> Names => [.. Walls.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Rows_are_made_as_recorded(string name) => Record.AssertAsRecorded(name);

    [Fact]
    public void The_record_holds_these_walls_and_no_others() => Record.AssertNoOthers();

    private static Dictionary<string, Func<WallProject>> Make()
    {
        var walls = new Dictionary<string, Func<WallProject>>(StringComparer.Ordinal);
        for (int i = 101; i <= 130; i++)
        {
            int seed = i;
            walls[$"rows {seed}"] = () => Changed(RandomRows.Project(RandomRows.Wall(seed), seed), seed);
        }
        foreach (ulong seed in (ulong[])[9101, 9102, 9103, 9104, 9105, 9106, 9107, 9108, 9109, 9110])
            walls[$"random {seed}"] = () => PlacingWall.Read(RandomWall.Yaml(seed, new RandomWallOptions { Nails = 50, Obstructions = 0 }));
        foreach ((string name, WallScenario scenario) in NamedWalls.All)
            walls[name] = () => PlacingWall.Read(ScenarioYaml.Print(scenario));
        walls["by the designer's hand"] = () => PlacingWall.Read(RecordedWalls.All.First(w => w.Name == "by the designer's hand").Yaml);
        foreach (string rows in (string[])["level", "parallel", "top_parallel"])
        {
            foreach (double first in (double[])[0.4, 1.7, 2.6, 3.4])
            {
                string text = first.ToString(CultureInfo.InvariantCulture);
                walls[FormattableString.Invariant($"{rows} rows under a grade, columns from {first}")] = () => PlacingWall.Read(new PlacingWall
                {
                    Length = 24.7,
                    Top = "[[0, 112], [9, 112], [14, 116.3], [END, 114]]",
                    Bottom = "[[0, 100], [8, 101.75], [17, 99.5]]",
                    Rows = rows,
                    Pattern = first > 2 ? "staggered" : "square",
                    Columns = text,
                    WallKeys = ["finished_grade: [[0, 102.5], [24.7, 104]]"],
                    Blocks = ["rules:", "  heads_below_grade: none"],
                }.Yaml);
            }
        }
        walls["short sections"] = () => Sections(3.1, 4.4, 9, 10.2, 17.9);
        walls["short sections beside each other"] = () => Sections(0.9, 1.9, 3.2, 12, 12.8, 19.5);
        return walls;
    }

    /// <summary>Rules and keys that few walls have: greater gaps for moved nails, a first column, other least gaps.</summary>
    private static WallProject Changed(WallProject project, int seed)
    {
        var random = new WallRandom((ulong)seed * 7919);
        double? first = random.Of<double?>(null, null, 0, 0.75, 1.5, 2.5, 3.5);
        Rules rules = project.Rules with { MinGap = random.Of(2, 2, 2.5, 3.4), MovedGapMax = random.Of<double?>(null, null, 6.5), EdgeMin = random.Of(1, 1, 1.25), ShiftStep = random.Of(0.25, 0.5, 1) };
        Wall wall = project.Walls[0];
        return project with { Rules = rules, Walls = [wall with { Sections = [.. wall.Sections.Select(s => s with { FirstColumn = first })] }] };
    }

    /// <summary>A level wall of 20 ft cut into sections at some places.</summary>
    private static WallProject Sections(params double[] limits)
    {
        WallProject project = new PlacingWall { Length = 20, Top = "[[0, 110], [12, 113], [END, 108]]" }.Project;
        Wall wall = project.Walls[0];
        double[] ends = [0, .. limits, 20];
        return project with { Walls = [wall with { Sections = [.. limits.Append(20).Select((end, i) => wall.Sections[0] with { Name = $"S{i}", Start = ends[i], End = end })] }] };
    }

    private static Head[] Fewer(List<RowTask> rows, Bay bay)
    {
        int at = 0;
        return [.. Heads(rows, bay).Where(_ => at++ % 3 != 2)];
    }

    private static Head[] Heads(List<RowTask> rows, Bay bay) =>
        [.. rows.Where(r => r.Bay.Wall == bay.Wall && r.Bay.Section == bay.Section && r.Bay.Leg.Index == bay.Leg.Index).SelectMany(r => r.Row.Places.Select(r.Row.HeadAt))];

    private static string FiguresOf(WallProject project)
    {
        var site = new Site(project);
        List<RowTask> rows = RowTasks.Make(site);
        Bay[] bays = PlacingWall.Bays(project);
        HeadChoice[] places = [.. rows.SelectMany(r => r.Choices.SelectMany(c => c))];
        (double Uncovered, int Pieces) Cover(bool strict)
        {
            CoverBreak[] breaks = [.. bays.SelectMany(b => CoverRule.Breaks(b, Heads(rows, b), strict))];
            return (breaks.Sum(b => b.End - b.Start), breaks.Length);
        }
        (double placing, int placingPieces) = Cover(true);
        (double checking, int checkingPieces) = Cover(false);
        double starts = rows.Sum(r => Enumerable.Range(0, r.Count).Count(i => r.Ends.CoversStart(i, r.Row.Places[i] + 0.6))), ends = rows.Sum(r => Enumerable.Range(0, r.Count).Count(i => r.Ends.CoversEnd(i, r.Row.Places[i] - 0.6)));
        // A nail in three taken out, so that something is uncovered.
        CoverBreak[] lacks = [.. bays.SelectMany(b => CoverRule.Breaks(b, Fewer(rows, b), strict: false))];
        string fewer = string.Join(", ", Enum.GetValues<Lack>().Select(k => $"{k.ToString().ToLowerInvariant()} {lacks.Count(l => l.Lack == k)}"));
        return string.Create(CultureInfo.InvariantCulture,
            $"{bays.Length} bays, {bays.Count(b => b.HasRoom)} with room, limits {bays.Sum(b => b.StartLimitClear + 2 * b.EndLimitClear):0.###}; {rows.Count} rows, {rows.Count(r => r.Row.IsPart)} part, numbers {rows.Sum(r => (long)r.Number.Hundredths)}, levels {rows.Sum(r => r.Row.Level):0.###}; {rows.Sum(r => r.Count)} stations, sum {rows.Sum(r => r.Row.Places.Sum(p => p.Number)):0.###}, squares {rows.Sum(r => r.Row.Places.Sum(p => p.Number * p.Number)):0.##}, columns {rows.Sum(r => r.Columns.Sum(c => 100 * c.Number + c.Further))}; {places.Length} places, sum {places.Sum(p => p.Head.Along.Number):0.###}, elevations {places.Sum(p => p.Head.Elevation.Number):0.###}; runs {rows.Sum(r => r.Ends.LastRun + 1)}, may start later {starts}, may end earlier {ends}; uncovered for placing {placing:0.###} in {placingPieces}, for checking {checking:0.###} in {checkingPieces}; a third left out {bays.Sum(b => CoverRule.Uncovered(b, Fewer(rows, b))):0.###} for placing, {lacks.Sum(l => l.End - l.Start):0.###} for checking, {fewer}, amounts {lacks.Sum(l => l.Amount):0.###}; too low {bays.Sum(b => CoverRule.NoNailHeight(b).Sum(s => s.End - s.Start)):0.###}");
    }
}
