using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Many walls in one run.</summary>
public sealed class CorridorTests
{
    private static readonly string[] Register = ["register.csv", "register.html", "register.json", "register.pdf", "register.xlsx"];

    /// <summary>
    /// 40 walls with a faulty and a missing one among them: one process, three, and a run that is killed at random and begun again give the
    /// same register, sets and states, byte for byte; what stands is not built again.
    /// </summary>
    [Fact]
    [Trait("Category", "Long")]
    public void Forty_walls_give_the_same_register_from_one_process_several_and_killed_runs()
    {
        const int Walls = 40;
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, Walls, also: "  - {file: walls/gone.yaml, name: Gone, contract: C-2}\n");
        Spoil(temp.File(SmallCorridor.FileOf(7)));
        string[] one = ["corridor", SmallCorridor.List, "--out", "one", "--jobs", "1"], several = ["corridor", SmallCorridor.List, "--out", "several", "--jobs", "3"], killed = ["corridor", SmallCorridor.List, "--out", "killed", "--jobs", "2"];

        CliRun single = CliRun.With(temp.Path, null, one), parallel = CliRun.With(temp.Path, null, several);
        Assert.Equal((2, 2), (single.Code, parallel.Code));
        Assert.Matches("(?m)^walls/w7.yaml:[0-9]+:[0-9]+: error R10: unknown key \"retaned_side\"", single.Problems.Replace('\\', '/'));
        Assert.Contains("corridor.yaml:44:12: error R01: project file \"walls/gone.yaml\" cannot be read: there is no such file", single.Problems.Replace('\\', '/'), StringComparison.Ordinal);
        Assert.Contains($"{Walls - 1} of {Walls + 1} sets built", parallel.Out, StringComparison.Ordinal);
        Assert.Contains("NOT BUILT: Wall 7 (faulty input), Gone (file missing)", parallel.Out, StringComparison.Ordinal);
        Same(temp, "one", "several");

        var random = new Random();
        for (int i = 0; i < 4; i++)
        {
            using Process process = CliRun.Start(temp.Path, null, killed);
            Thread.Sleep(random.Next(1000, 9000));
            process.Kill();
            process.WaitForExit();
        }
        Assert.Equal(2, CliRun.With(temp.Path, null, killed).Code);
        Same(temp, "one", "killed");
        DateTime before = File.GetLastWriteTimeUtc(temp.File("killed/walls/Wall 3/sheets.pdf"));
        CliRun again = CliRun.With(temp.Path, null, killed);
        Assert.Contains($"{Walls - 1} of {Walls + 1} walls are unchanged and stay", again.Out, StringComparison.Ordinal);
        Assert.Equal(before, File.GetLastWriteTimeUtc(temp.File("killed/walls/Wall 3/sheets.pdf")));
    }

    /// <summary>What a change touches is built again and nothing else: a file that the project file names too; and what is out of date is never shown as built.</summary>
    [Fact]
    public void A_set_is_built_again_when_its_input_changes_and_a_register_never_shows_an_old_one()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 2);
        File.AppendAllText(temp.File(SmallCorridor.FileOf(1)), "pay_items: items.yaml\n");
        string items = File.ReadAllText(Path.Combine(Repository.Root, "templates", "pay-items", "generic.yaml"));
        File.WriteAllText(temp.File("walls/items.yaml"), items);
        string[] run = ["corridor", SmallCorridor.List, "--out", "out", "--jobs", "1"];
        Assert.Equal(0, CliRun.With(temp.Path, null, run).Code);

        File.WriteAllText(temp.File("walls/items.yaml"), items.Replace("Soil nail", "Ground nail", StringComparison.Ordinal));
        CliRun stale = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--gather");
        Assert.Equal(2, stale.Code);
        Assert.Contains("1 of 2 sets built", stale.Out, StringComparison.Ordinal);
        Assert.Contains("NOT BUILT: Wall 1 (out of date)", stale.Out, StringComparison.Ordinal);

        CliRun fresh = CliRun.With(temp.Path, null, run);
        Assert.Equal(0, fresh.Code);
        Assert.Contains("1 of 2 walls are unchanged and stay", fresh.Out, StringComparison.Ordinal);
        Assert.Contains("Wall 1: built", fresh.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Wall 0: built", fresh.Out, StringComparison.Ordinal);
        Assert.Contains("Ground nail", File.ReadAllText(temp.File("out/register.csv")), StringComparison.Ordinal);

        // A set that someone changed by hand does not stand for its input either; a single piece of work builds it.
        File.AppendAllText(temp.File("out/walls/Wall 0/nails.csv"), "x");
        Assert.Contains("Wall 0: built", CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--only", "Wall 0").Out, StringComparison.Ordinal);
        Assert.Contains("Wall 0: unchanged", CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--only", "Wall 0").Out, StringComparison.Ordinal);
    }

    /// <summary>Each set is the one that a single build gives; the register's sums are those of the sets' own nail tables.</summary>
    [Fact]
    public void Sets_are_those_of_single_builds_and_sums_those_of_their_nails()
    {
        const int Walls = 3;
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, Walls);
        CliRun run = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--jobs", "1");
        Assert.Equal((0, ""), (run.Code, run.Problems));
        Assert.Equal([.. Register, "state", "walls"], Directory.GetFileSystemEntries(temp.File("out")).Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal));
        Assert.Equal(0, CliRun.With(temp.Path, null, "build", SmallCorridor.FileOf(1), "--out", "single").Code);
        Assert.Equal(temp.Listing("single"), temp.Listing("out/walls/Wall 1"));
        Assert.All(temp.Listing("single"), f => Assert.Equal(File.ReadAllBytes(temp.File("single/" + f)), File.ReadAllBytes(temp.File("out/walls/Wall 1/" + f))));

        CsvTable register = CsvTable.Read(temp.File("out/register.csv"));
        double[] lengths = [.. Enumerable.Range(0, Walls).Select(i => CsvTable.Read(temp.File($"out/walls/Wall {i}/nails.csv")).Column("length").Sum(l => double.Parse(l, CultureInfo.InvariantCulture)))];
        Assert.Equal(lengths, register.Column("Nail length").Select(l => double.Parse(l, CultureInfo.InvariantCulture)));
        Assert.Equal(["C-1", "C-2", "C-1"], register.Column("Contract"));
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(temp.File("out/register.json")));
        int[] sheets = [.. json.RootElement.GetProperty("walls").EnumerateArray().Select(w => w.GetProperty("figures").GetProperty("sheets").GetArrayLength())];
        Assert.Equal([1, 1 + sheets[0], 1 + sheets[0] + sheets[1]], json.RootElement.GetProperty("walls").EnumerateArray().Select(w => w.GetProperty("firstSheet").GetInt32()));
    }

    /// <summary>Two files whose walls stand back to back: their nails meet in the ground between.</summary>
    [Fact]
    public void A_clash_between_two_files_is_found_once_and_changes_the_exit_code()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 2);
        string south = File.ReadAllText(temp.File(SmallCorridor.FileOf(0)));
        south = south[..south.IndexOf("obstructions:", StringComparison.Ordinal)];
        // The southern wall holds the soil north of it, the northern one that south of it; 14 ft nails in 25 ft of ground.
        File.WriteAllText(temp.File(SmallCorridor.FileOf(1)), south.Replace("northing: 5000", "northing: 5025", StringComparison.Ordinal));
        File.WriteAllText(temp.File(SmallCorridor.FileOf(0)), south.Replace("retained_side: right", "retained_side: left", StringComparison.Ordinal));

        CliRun run = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--jobs", "1");

        Assert.Equal(1, run.Code);
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(temp.File("out/register.json")));
        (string, string)[] clashes = [.. json.RootElement.GetProperty("clashes").EnumerateArray().Where(c => c.GetProperty("code").GetString() == "nail-nail")
            .Select(c => (c.GetProperty("nail").GetString()!, c.GetProperty("other").GetString()!))];
        Assert.Equal([.. MeetingNails(temp, "Wall 0", "Wall 1")], clashes.ToHashSet());
        Assert.Equal(clashes.Distinct().Count(), clashes.Length);
        Assert.NotEmpty(clashes);
        Assert.Contains($"{json.RootElement.GetProperty("clashes").GetArrayLength()} clashes across files", run.Out, StringComparison.Ordinal);
    }

    /// <summary>"0 clashes" once stood over walls that were never compared, since one of them told its zone and the other did not.</summary>
    [Fact]
    public void Walls_that_are_not_checked_against_each_other_are_named()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 3);
        foreach ((int wall, string zone) in new[] { (0, "Heron North Central"), (1, "HERON north central") })
        {
            string file = temp.File(SmallCorridor.FileOf(wall));
            File.WriteAllText(file, File.ReadAllText(file).Replace(", units: ft", $", coordinate_zone: {zone}, units: ft", StringComparison.Ordinal));
        }
        CliRun run = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--jobs", "1");
        const string Told = "since their coordinate systems differ: Heron North Central (2 walls); none named (Wall 2)";
        Assert.Contains("0 clashes across files; NOT CHECKED AGAINST EACH OTHER, " + Told, run.Out, StringComparison.Ordinal);
        Assert.Contains(Told, File.ReadAllText(temp.File("out/register.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_are_told_and_a_wrong_one_is_refused()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 3);
        Assert.Equal("Wall 0\nWall 1\nWall 2\n", CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--names").Out.ReplaceLineEndings("\n"));
        CliRun wrong = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--only", "Wal 1");
        Assert.Equal((2, "sheetgen: the corridor has no wall named \"Wal 1\": did you mean Wall 1?\n"), (wrong.Code, wrong.Error.ReplaceLineEndings("\n")));
        Assert.False(Directory.Exists(temp.File("out")));
        CliRun both = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List, "--out", "out", "--only", "Wall 1", "--gather");
        Assert.Equal((2, "sheetgen: --only does single pieces of the work, --gather what comes after all of them: give one of the two\n"), (both.Code, both.Error.ReplaceLineEndings("\n")));
        CliRun nothing = CliRun.With(temp.Path, null, "corridor", SmallCorridor.List);
        Assert.Equal((2, "sheetgen: corridor needs --out DIR, the folder for the results\n"), (nothing.Code, nothing.Error.ReplaceLineEndings("\n")));
    }

    /// <summary>The same files with the same bytes, states included.</summary>
    internal static void Same(TempFolder temp, string expected, string actual)
    {
        Assert.Equal(temp.Listing(expected), temp.Listing(actual));
        foreach (string file in temp.Listing(expected).Where(f => File.Exists(temp.File(expected + "/" + f))))
            Assert.True(File.ReadAllBytes(temp.File(expected + "/" + file)).AsSpan().SequenceEqual(File.ReadAllBytes(temp.File(actual + "/" + file))), file);
    }

    internal static void Spoil(string file) =>
        File.WriteAllText(file, File.ReadAllText(file).Replace("retained_side", "retaned_side", StringComparison.Ordinal));

    /// <summary>The slow twin: straight holes from the nail tables, measured by points along them.</summary>
    private static IEnumerable<(string, string)> MeetingNails(TempFolder temp, string first, string second)
    {
        var a = Holes(temp.File($"out/walls/{first}/nails.csv"));
        var b = Holes(temp.File($"out/walls/{second}/nails.csv"));
        return from p in a from q in b where Least(p.Points, q.Points) < 0.5 + 0.5 select (p.Mark, q.Mark);
    }

    private static List<(string Mark, double[][] Points)> Holes(string file)
    {
        CsvTable nails = CsvTable.Read(file);
        double[] Of(string name) => [.. nails.Column(name).Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
        double[][] head = [Of("northing"), Of("easting"), Of("elevation")], tip = [Of("tip_northing"), Of("tip_easting"), Of("tip_elevation")];
        return [.. nails.Column("nail").Select((mark, i) => (mark, Enumerable.Range(0, 401).Select(k => Enumerable.Range(0, 3).Select(c => head[c][i] + (tip[c][i] - head[c][i]) * k / 400).ToArray()).ToArray()))];
    }

    private static double Least(double[][] a, double[][] b) =>
        Math.Sqrt(a.Min(p => b.Min(q => (p[0] - q[0]) * (p[0] - q[0]) + (p[1] - q[1]) * (p[1] - q[1]) + (p[2] - q[2]) * (p[2] - q[2]))));
}
