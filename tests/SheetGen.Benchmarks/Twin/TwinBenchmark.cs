using System.Globalization;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;

namespace SheetGen.Benchmarks.Twin;

/// <summary>
/// How far layouts are from the best: found, the best known (our own search carried on, then improved by the exact solver), proven limits, and
/// nail-by-nail placement; on random crowded walls, or on the project files named.
/// </summary>
internal static class TwinBenchmark
{
    private const int WallsOfEach = 10;
    private const int Nails = 200;

    private const int UnresolvedAt = 2, BestAt = 5, ProvenAt = 12;

    private static readonly string[] Titles =
    [
        "stations", "legs", "unresolved: found", "noted", "effort", "best known: unresolved", "noted", "effort", "searched on: unresolved", "noted", "effort",
        "rows alone", "clusters proven", "twin: at least", "CPU s", "clusters proven, CPU s", "twin, s", "nail by nail: unresolved", "noted", "effort",
        "proven best in all three",
    ];

    public static int Run(string[] files, ulong seed)
    {
        Console.WriteLine("| " + string.Join(" | ", ["wall", .. Titles]) + " |");
        Console.WriteLine("| " + string.Join(" | ", Enumerable.Repeat("---", Titles.Length + 1)) + " |");
        var sums = new double[Titles.Length];
        int walls = 0, best = 0;
        bool kept = true;
        foreach ((string name, WallProject project) in files.Length > 0 ? Named(files) : Random(seed))
        {
            double?[] figures = Figures(name, project, out bool isKept);
            kept &= isKept;
            walls++;
            best += figures[UnresolvedAt] == Math.Max(figures[ProvenAt]!.Value, figures[ProvenAt + 1]!.Value) ? 1 : 0;
            sums = [.. figures.Select((f, i) => (f ?? 0) + sums[i])];
            Console.WriteLine(PlacementBenchmark.Row(name, figures));
        }
        Console.WriteLine(PlacementBenchmark.Row("sum", [.. sums.Select(s => (double?)s)]));
        Console.WriteLine();
        Console.WriteLine(FormattableString.Invariant($"over the best known: unresolved {sums[UnresolvedAt] - sums[BestAt]:0}, noted {Over(sums, 1):0.0} %, effort {Over(sums, 2):0.0} %"));
        Console.WriteLine(FormattableString.Invariant($"proven best in unresolved nails: {best} of {walls} walls"));
        return kept ? 0 : 1;
    }

    private static double Over(double[] sums, int figure) => 100 * (sums[UnresolvedAt + figure] / Math.Max(1, sums[BestAt + figure]) - 1);

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

    private static double?[] Figures(string name, WallProject project, out bool isKept)
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
        Cost found = layout.Cost;
        IReadOnlyList<StretchLimit> alone = RowsAlone.Solve(layout, prove: false);
        (ClusterLimits clusters, double proveSeconds) = PlacementBenchmark.Timed(() => new ClusterLimits(layout, alone, prove: true));
        Cost proven = alone.Aggregate(clusters.Gain, (sum, l) => sum + l.Cost);
        NailByNail peer = NailByNail.Place(project);
        HashSet<string> broken = Broken(project, site, search);
        WallTwin twin = WallTwin.Of(project, search, alone, s => Console.Error.WriteLine(name + " " + s));
        isKept = twin.Proven <= twin.Best.Unresolved && proven.Unresolved <= twin.Best.Unresolved && !(twin.Best < proven) && IsValid(name, Broken(project, site, search), broken);
        return
        [
            layout.Slots.Count, project.Walls.Sum(w => new Face(w).Legs.Count), .. Figures(found), .. Figures(twin.Best), .. Figures(twin.Longer),
            alone.Sum(l => l.Cost.Unresolved), proven.Unresolved, twin.Proven, seconds, proveSeconds, twin.Seconds, peer.Unresolved, peer.Noted, peer.Effort,
            found.HasFiguresOf(proven) ? 1 : 0,
        ];
    }

    private static double?[] Figures(Cost cost) => [cost.Unresolved, cost.Noted, cost.Effort / (double)Cost.Point];

    /// <summary>Errors of the checker that are no unresolved nail's: a layout with more of them than another is no layout.</summary>
    private static HashSet<string> Broken(WallProject project, Site site, LayoutSearch search)
    {
        NailLayout layout = Placer.Told(project, site, search);
        HashSet<string> unresolved = [.. layout.Nails.Where(n => n.Status == NailStatus.Unresolved).Select(n => n.Mark)];
        return [.. Checker.Check(project, layout).Findings.Where(f => f.Severity == Severity.Error && !f.Nails.Any(unresolved.Contains)).Select(f => f.Message)];
    }

    private static bool IsValid(string name, HashSet<string> now, HashSet<string> before)
    {
        foreach (string message in now.Except(before))
            Console.Error.WriteLine($"{name}: the best known layout is none: {message}");
        return now.IsSubsetOf(before);
    }
}
