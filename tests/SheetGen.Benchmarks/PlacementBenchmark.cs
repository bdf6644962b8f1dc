using System.Diagnostics;
using System.Globalization;
using SheetGen.Layout.Placing;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Walls;

namespace SheetGen.Benchmarks;

/// <summary>
/// How good the layouts found are, beside their proven limits and beside nail-by-nail placement, on open walls and on crowded ones without
/// and with outside corners; and how the time of the search grows with the wall.
/// </summary>
internal static class PlacementBenchmark
{
    private const int WallsOfEach = 10;
    private const int Nails = 300;

    public static int Run(ulong seed, bool prove)
    {
        Console.WriteLine(FormattableString.Invariant($"prove: {prove}; seeds from {seed}"));
        bool kept = Group("open walls", seed, s => Open(s, Nails), prove);
        kept &= Group("crowded walls without outside corners", seed, s => Read(s, Nails, false), prove);
        kept &= Group("crowded walls with outside corners", seed + 1000, s => Read(s, Nails, true), prove);
        Growth(seed + 2000);
        return kept ? 0 : 1;
    }

    /// <summary>Prints a table; false where a figure found lies below its limit.</summary>
    private static bool Group(string title, ulong seed, Func<ulong, WallProject?> read, bool prove)
    {
        Console.WriteLine();
        Console.WriteLine(title);
        Console.WriteLine();
        Console.WriteLine("| seed | nails | unresolved | bound | noted | bound | effort | bound | CPU s | nail by nail: unresolved | noted | effort | CPU s |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        var sums = new double[11];
        bool kept = true;
        for (int found = 0; found < WallsOfEach; seed++)
        {
            WallProject? project = read(seed);
            if (project is null)
                continue;
            found++;
            (NailLayout layout, double seconds) = Timed(() => Placer.Place(project, new PlacingOptions(prove)));
            (NailByNail peer, double peerSeconds) = Timed(() => NailByNail.Place(read(seed)!));
            LayoutScore score = layout.Score;
            double?[] figures =
            [
                layout.Nails.Count, score.Unresolved.Found, score.Unresolved.Bound, score.Noted.Found, score.Noted.Bound, score.Effort.Found,
                score.Effort.Bound, seconds, peer.Unresolved, peer.Noted, peer.Effort, peerSeconds,
            ];
            kept &= score.Unresolved.Found >= (score.Unresolved.Bound ?? 0) && score.Noted.Found >= (score.Noted.Bound ?? 0)
                && score.Effort.Found >= (score.Effort.Bound ?? 0) - 1e-6;
            Console.WriteLine(Row(seed.ToString(CultureInfo.InvariantCulture), figures));
            sums = [.. figures.Select((f, i) => (f ?? 0) + (i < sums.Length ? sums[i] : 0))];
        }
        Console.WriteLine(Row("sum (bounds: where known)", [.. sums.Select(s => (double?)s)]));
        return kept;
    }

    private static void Growth(ulong seed)
    {
        Console.WriteLine();
        Console.WriteLine("growth, open walls, quick limit");
        Console.WriteLine();
        Console.WriteLine("| nails asked | nails | CPU s | wall-clock s | CPU ms a nail |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        foreach (int nails in (int[])[300, 1000, 3000, 10_000])
        {
            WallProject project = Open(seed, nails);
            var clock = Stopwatch.StartNew();
            (NailLayout layout, double seconds) = Timed(() => Placer.Place(project, new PlacingOptions()));
            double elapsed = clock.Elapsed.TotalSeconds;
            Console.WriteLine(Row(
                nails.ToString(CultureInfo.InvariantCulture), [layout.Nails.Count, seconds, elapsed, 1000 * seconds / layout.Nails.Count]));
        }
    }

    private static WallProject Open(ulong seed, int nails) => ProjectReader.ReadText(OpenWall.Yaml(seed, nails), "wall.yaml").Project
        ?? throw new InvalidOperationException(FormattableString.Invariant($"open wall {seed} is not a valid project"));

    /// <summary>A random wall; null where it has not the corners asked for.</summary>
    public static WallProject? Read(ulong seed, int nails, bool? outside)
    {
        string text = RandomWall.Yaml(seed, new RandomWallOptions { Nails = nails, Plain = true, OutsideCorners = outside });
        WallProject project = ProjectReader.ReadText(text, "wall.yaml").Project
            ?? throw new InvalidOperationException(FormattableString.Invariant($"random wall {seed} is not a valid project"));
        var face = new Face(project.Walls[0]);
        bool has = face.Legs.Any(l => l.EndCorner is { } corner && face.IsOutside(corner));
        return outside is null || has == outside ? project : null;
    }

    public static (T Result, double Seconds) Timed<T>(Func<T> work)
    {
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        T result = work();
        return (result, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds);
    }

    public static string Row(string name, double?[] figures) =>
        "| " + name + " | " + string.Join(" | ", figures.Select(f => f?.ToString("#,0.##", CultureInfo.InvariantCulture) ?? "-")) + " |";
}
