using System.Globalization;
using System.Text.Json;
using SheetGen.EndToEnd.Support;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>Many variants of one wall.</summary>
public sealed class StudyTests
{
    private const string Given = """
        format: 1
        title: Spacing and inclination
        vary:
          horizontal_spacing: {from: 3.5, to: 4.5, step: 0.25}
          inclination[section A]: [10, 15]
          rows: [level, parallel]
          rules.clearance.obstruction: [6 in, 1 ft, 1.5 ft]

        """;

    /// <summary>A study of 60 variants equals single runs of the project files that it stands for: of every third, or of all 60 with SHEETGEN_LONG=1.</summary>
    [Fact]
    [Trait("Category", "Long")]
    public void Sixty_variants_are_sixty_single_runs()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 3);
        string wall = File.ReadAllText(temp.File(SmallCorridor.FileOf(2)));
        if (!wall.Contains("obstructions:", StringComparison.Ordinal))
            wall += "obstructions:\n  - {name: P, kind: shaft, at: {station: 10+08.30, offset: 5}, diameter: 30 in, top: 112, bottom: 85}\n";
        File.WriteAllText(temp.File("wall.yaml"), wall);
        File.WriteAllText(temp.File("study.yaml"), Given);
        CliRun run = CliRun.With(temp.Path, null, "study", "wall.yaml", "study.yaml", "--out", "out", "--build", "1");
        Assert.True(run.Code is 0 or 1 && run.Problems.Length == 0, run.Error);
        Assert.Contains("60 of 60 variants laid out", run.Out, StringComparison.Ordinal);
        Assert.Contains("the design is the engineer's", run.Out, StringComparison.Ordinal);

        using JsonDocument study = JsonDocument.Parse(File.ReadAllText(temp.File("out/study.json")));
        JsonElement[] variants = [.. study.RootElement.GetProperty("variants").EnumerateArray()];
        Assert.Equal(61, variants.Length);
        string[] texts = [.. variants.Select(v => Variant(wall, [.. v.GetProperty("values").EnumerateArray().Select(t => t.GetString()!)]))];
        Assert.Equal(61, texts.Distinct().Count());
        // The single runs are a corridor of the edited files, whose sets are those of single builds.
        Directory.CreateDirectory(temp.File("single"));
        int best = study.RootElement.GetProperty("best")[0].GetInt32();
        bool isLong = Environment.GetEnvironmentVariable("SHEETGEN_LONG") == "1";
        int[] single = [.. Enumerable.Range(1, texts.Length - 1).Where(i => isLong || i % 3 == 1 || i == best)];
        foreach (int i in single)
            File.WriteAllText(temp.File(FormattableString.Invariant($"single/v{i:00}.yaml")), texts[i]);
        Assert.InRange(CliRun.With(temp.Path, null, "corridor", "single", "--out", "each").Code, 0, 1);
        CsvTable table = CsvTable.Read(temp.File("out/study.csv"));
        foreach (int i in single)
        {
            JsonElement figures = variants[i].GetProperty("figures");
            CsvTable nails = CsvTable.Read(temp.File(FormattableString.Invariant($"each/walls/v{i:00}/nails.csv")));
            string[] status = [.. nails.Column("status")];
            int Of(string name) => figures.GetProperty(name).GetInt32();
            Assert.Equal((status.Length, status.Count(s => s == "noted"), status.Count(s => s == "unresolved"), status.Count(s => s == "redirected"), status.Count(s => s == "moved")),
                (Of("nails"), Of("noted"), Of("unresolved"), Of("redirected"), Of("moved")));
            Assert.Equal(nails.Column("length").Sum(Number), figures.GetProperty("nailLength").GetDouble(), 6);
            double[] clear = [.. nails.Column("least_clear").Where(c => c.Length > 0).Select(Number)];
            Assert.Equal(clear.Min(), figures.GetProperty("leastClear").GetDouble(), 4);
            using JsonDocument findings = JsonDocument.Parse(File.ReadAllText(temp.File(FormattableString.Invariant($"each/walls/v{i:00}/findings.json"))));
            Assert.Equal(findings.RootElement.GetProperty("layout").GetProperty("effort")[0].GetDouble(), figures.GetProperty("effort").GetDouble(), 4);
            Assert.Equal(findings.RootElement.GetProperty("findings").EnumerateArray().Count(f => f.GetProperty("severity").GetString() == "error"), Of("errors"));
            Assert.Equal(status.Length, Number(table.Column("Production nails").ElementAt(i)));
        }

        // The best one in full is the build of the project file that it comes with.
        string folder = FormattableString.Invariant($"out/best/{best:0000}");
        Assert.Equal(File.ReadAllText(temp.File(FormattableString.Invariant($"each/walls/v{best:00}/nails.csv"))), File.ReadAllText(temp.File(folder + "/nails.csv")));
        File.Copy(temp.File(folder + "/variant.yaml"), temp.File("variant.yaml"));
        Assert.InRange(CliRun.With(temp.Path, null, "build", "variant.yaml", "--out", "again").Code, 0, 1);
        Assert.Equal(File.ReadAllText(temp.File("again/nails.csv")), File.ReadAllText(temp.File(folder + "/nails.csv")));
        string[] order = [.. study.RootElement.GetProperty("best").EnumerateArray().Select(b => Rank(variants[b.GetInt32()].GetProperty("figures")))];
        Assert.Equal(order.Order(StringComparer.Ordinal), order);
    }

    /// <summary>One process, several, single pieces of work gathered: the same files; a variant that cannot be is named, the others stand.</summary>
    [Fact]
    public void Pieces_of_work_give_the_same_tables_and_a_faulty_variant_is_named()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 1);
        File.WriteAllText(temp.File("study.yaml"), "format: 1\ntitle: Gaps\nvary:\n  horizontal_spacing: [4, 4.5]\n  rules.min_gap: [2 ft, 5 ft]\n");
        string[] study = ["study", SmallCorridor.FileOf(0), "study.yaml", "--out"];
        CliRun one = CliRun.With(temp.Path, null, [.. study, "one", "--jobs", "1"]), two = CliRun.With(temp.Path, null, [.. study, "two", "--jobs", "2"]);
        Assert.Equal((1, 1), (one.Code, two.Code));
        Assert.Contains("2 of 4 variants laid out; the others are named among the problems", one.Out, StringComparison.Ordinal);
        Assert.Contains("study.yaml:4:", File.ReadAllText(temp.File("one/study.json")), StringComparison.Ordinal);
        CorridorTests.Same(temp, "one", "two");

        Assert.Equal("0\n1\n2\n3\n4\n", CliRun.With(temp.Path, null, "study", SmallCorridor.FileOf(0), "study.yaml", "--names").Out.ReplaceLineEndings("\n"));
        CliRun.With(temp.Path, null, [.. study, "parts", "--only", "4", "--only", "2"]);
        CliRun unfinished = CliRun.With(temp.Path, null, [.. study, "parts", "--gather"]);
        Assert.Equal(1, unfinished.Code);
        Assert.Contains("no run has come to it", File.ReadAllText(temp.File("parts/study.json")), StringComparison.Ordinal);
        CliRun.With(temp.Path, null, [.. study, "parts", "--only", "0", "--only", "1", "--only", "3"]);
        CliRun.With(temp.Path, null, [.. study, "parts", "--gather"]);
        CorridorTests.Same(temp, "one", "parts");
        Assert.StartsWith("<?xml", File.ReadAllText(temp.File("one/trade-off.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_bad_study_gives_exactly_its_problems_and_writes_nothing()
    {
        using var temp = new TempFolder();
        SmallCorridor.Write(temp.Path, 1);
        File.WriteAllText(temp.File("study.yaml"), """
            format: 1
            titel: Gaps
            vary:
              horizontal_spacig: [4]
              vertical_spacing: [4, four, 4 mm]
              elephants: [104]
              rules.min_gap: {from: 2, to: 1, step: 0.5}
              rows: []
              inclination[section B]: [10, 12, 10]
              lengths: {from: 10, step: 2}

            """.ReplaceLineEndings("\n"));
        CliRun run = CliRun.With(temp.Path, null, "study", SmallCorridor.FileOf(0), "study.yaml", "--out", "out");
        Assert.Equal(2, run.Code);
        string[] codes = [.. run.Error.Split('\n').Where(l => l.StartsWith("study.yaml:", StringComparison.Ordinal)).Select(l => string.Join(' ', l.Split(' ')[..3]))];
        Assert.Equal(
        [
            "study.yaml:2:1: error R10:", "study.yaml:4:3: error L02:", "study.yaml:5:25: error R13:", "study.yaml:5:31: error R15:", "study.yaml:6:3: error L02:",
            "study.yaml:7:18: error L03:", "study.yaml:8:3: error L03:", "study.yaml:9:36: error L03:", "study.yaml:10:12: error L03:",
        ], codes);
        Assert.Contains("did you mean \"horizontal_spacing\"?", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(temp.File("out")));
    }

    private static string Rank(JsonElement f) => string.Create(CultureInfo.InvariantCulture,
        $"{f.GetProperty("cover").GetDouble():00000.00} {f.GetProperty("unresolved").GetInt32():00000} {f.GetProperty("noted").GetInt32():00000} {f.GetProperty("payLength").GetDouble():0000000.000} {f.GetProperty("effort").GetDouble():000000.000}");

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>The project file edited by hand, line by line.</summary>
    private static string Variant(string wall, string[] values)
    {
        if (values.Length == 0)
            return wall;
        string[] lines = wall.Split('\n');
        string Line(string key, string value) => string.Join('\n', lines = [.. lines.Select(l => l.TrimStart().StartsWith(key + ":", StringComparison.Ordinal) ? l[..l.IndexOf(key, StringComparison.Ordinal)] + key + ": " + value : l)]);
        Line("horizontal_spacing", values[0] + "\n        rows: " + values[2]);
        return Line("inclination", values[1]) + "rules: {clearance: {obstruction: " + values[3] + "}}\n";
    }
}
