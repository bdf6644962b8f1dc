using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.ProjectFile;

namespace SheetGen.Benchmarks.Twin;

/// <summary>
/// How far layouts are from the best: found, the proven limit before and after clusters, what the exact solver proves and finds, and nail-by-nail
/// placement; on random crowded walls, or on the project files named.
/// </summary>
internal static class TwinBenchmark
{
    private const int WallsOfEach = 10;
    private const int Nails = 200;

    public static int Run(string[] files, ulong seed)
    {
        Console.WriteLine("| wall | stations | legs | unresolved: found | rows alone | limit of `check` | clusters proven | twin: at least | twin: best known | noted | limit | effort | limit | CPU s | limit, CPU s | clusters proven, CPU s | twin, s | nail by nail: unresolved | noted | effort |");
        Console.WriteLine("| " + string.Join(" | ", Enumerable.Repeat("---", 20)) + " |");
        var sums = new double[19];
        int walls = 0, best = 0, bestInAll = 0;
        bool kept = true;
        foreach ((string name, WallProject project) in files.Length > 0 ? Named(files) : Random(seed))
        {
            double?[] figures = Figures(project, out bool isKept);
            kept &= isKept;
            walls++;
            best += figures[2] == Math.Max(figures[5]!.Value, figures[6]!.Value) ? 1 : 0;
            bestInAll += figures[9] == figures[8] && figures[11] == figures[10] ? 1 : 0;
            sums = [.. figures.Select((f, i) => (f ?? 0) + sums[i])];
            Console.WriteLine(PlacementBenchmark.Row(name, figures));
        }
        Console.WriteLine(PlacementBenchmark.Row("sum (limits: where known)", [.. sums.Select(s => (double?)s)]));
        Console.WriteLine();
        Console.WriteLine(FormattableString.Invariant($"proven best in unresolved nails: {best} of {walls} walls; in unresolved, noted and effort: {bestInAll}"));
        return kept ? 0 : 1;
    }

    private static IEnumerable<(string, WallProject)> Named(string[] files)
    {
        char name = 'A';
        foreach (string file in files)
        {
            yield return (name++.ToString(), ProjectReader.ReadText(File.ReadAllText(file), Path.GetFileName(file)).Project
                ?? throw new InvalidOperationException(file + " is not a valid project"));
        }
    }

    private static IEnumerable<(string, WallProject)> Random(ulong first)
    {
        ulong seed = first;
        for (int found = 0; found < 2 * WallsOfEach; seed++)
        {
            // Without and with outside corners by turns.
            bool outside = found % 2 == 1;
            if (PlacementBenchmark.Read(seed, Nails, outside) is not { } project)
                continue;
            found++;
            yield return (seed.ToString(CultureInfo.InvariantCulture) + (outside ? ", outside corners" : ""), project);
        }
    }

    private static double?[] Figures(WallProject project, out bool isKept)
    {
        var site = new Site(project);
        List<RowTask> rows = RowTasks.Make(site);
        (LayoutSearch search, double seconds) = PlacementBenchmark.Timed(() =>
        {
            var search = new LayoutSearch(site, rows, new PlacingOptions(), null);
            search.Run();
            return search;
        });
        LayoutState layout = search.Layout;
        Cost found = layout.Cost, quick = search.LowerLimit;
        IReadOnlyList<StretchLimit> alone = RowsAlone.Solve(layout, prove: false);
        (_, double limitSeconds) = PlacementBenchmark.Timed(() => new ClusterLimits(layout, alone, prove: false));
        (ClusterLimits clusters, double proveSeconds) = PlacementBenchmark.Timed(() => new ClusterLimits(layout, alone, prove: true));
        Cost proven = alone.Aggregate(clusters.Gain, (sum, l) => sum + l.Cost);
        NailByNail peer = NailByNail.Place(project);
        int rowsAlone = alone.Sum(l => l.Cost.Unresolved);
        WallTwin twin = WallTwin.Of(project, layout, search.Cover, alone);
        bool noted = proven.Unresolved == found.Unresolved, effort = noted && proven.Noted == found.Noted;
        isKept = twin.Proven <= twin.Best && proven.Unresolved <= twin.Best && !(found < proven);
        return
        [
            layout.Slots.Count, project.Walls.Sum(w => new Face(w).Legs.Count), found.Unresolved, rowsAlone, quick.Unresolved, proven.Unresolved, twin.Proven, twin.Best,
            found.Noted, noted ? proven.Noted : null, found.Effort / (double)Cost.Point, effort ? proven.Effort / (double)Cost.Point : null,
            seconds, limitSeconds, proveSeconds, twin.Seconds, peer.Unresolved, peer.Noted, peer.Effort,
        ];
    }
}
