using System.Diagnostics;
using System.Text;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Dxf;
using Xunit;

namespace SheetGen.Tests.Fuzz;

/// <summary>
/// Changed good files of every kind that the program reads: each gives a result, or faults with places in it, within 10 seconds and 1 GB. 2,000 inputs in
/// a usual run; <c>SHEETGEN_FUZZ=1000000</c> in the environment sets another number, <c>SHEETGEN_FUZZ_SEED</c> the first seed.
/// </summary>
[Trait("Category", "Long")]
public sealed class FuzzTests
{
    private const double MostSeconds = 10;
    private const long MostBytes = 1_000_000_000;

    private static readonly int Inputs = int.Parse(Environment.GetEnvironmentVariable("SHEETGEN_FUZZ") ?? "2000", System.Globalization.CultureInfo.InvariantCulture);
    private static readonly int FirstSeed = int.Parse(Environment.GetEnvironmentVariable("SHEETGEN_FUZZ_SEED") ?? "1", System.Globalization.CultureInfo.InvariantCulture);

    private static readonly string[] Walls =
    [
        Repository.Read("tests", "SheetGen.Tests", "Cases", "base-wall.yaml"), Repository.Read("tests", "SheetGen.Tests", "Cases", "bridge-wall.yaml"),
        Repository.Read("demo", "quarry-lane", "wall.yaml"), StarterProject.Text,
    ];

    private static readonly string PayItems = PayItemFile.BuiltIn(PayItemFile.BuiltInNames[0])!;
    private static readonly string Layers = Repository.Read("templates", "layers", "standard.json"), Notes = Repository.Read("templates", "notes", "general.json"),
        Language = Repository.Read("templates", "text", "spanish.json");

    [Fact]
    public void Every_changed_file_gives_a_result_or_faults_with_places()
    {
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        (double Seconds, string What) slowest = (0, ""), largest = (0, "");
        for (int i = 0; i < Inputs; i++)
        {
            int seed = FirstSeed + i;
            string what = $"input {seed}";
            long before = GC.GetAllocatedBytesForCurrentThread();
            long clock = Stopwatch.GetTimestamp();
            try
            {
                string outcome = Try(seed);
                counts[outcome] = counts.GetValueOrDefault(outcome) + 1;
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                Assert.Fail($"{what}: {e}");
            }
            double seconds = Stopwatch.GetElapsedTime(clock).TotalSeconds;
            double bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            slowest = seconds > slowest.Seconds ? (seconds, what) : slowest;
            largest = bytes > largest.Seconds ? (bytes, what) : largest;
            Assert.True(bytes < MostBytes, $"{what} asked for {bytes / 1e6:0} MB");
        }
        Assert.True(counts.Count(c => c.Key.EndsWith("taken", StringComparison.Ordinal)) >= 4 && counts.Count(c => c.Key.EndsWith("refused", StringComparison.Ordinal)) >= 5, "one kind of file was never taken or never refused");
        string report = FormattableString.Invariant($"{Inputs} inputs from seed {FirstSeed}: {string.Join(", ", counts.Select(c => $"{c.Key} {c.Value}"))}; slowest {slowest.Seconds:0.00} s ({slowest.What}), most memory asked for {largest.Seconds / 1e6:0} MB ({largest.What}), peak of the process {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB");
        TestContext.Current.TestOutputHelper?.WriteLine(report);
        if (Environment.GetEnvironmentVariable("SHEETGEN_FUZZ_REPORT") is { } file)
            File.WriteAllText(file, report + "\n");
    }

    private static string Try(int seed)
    {
        var random = new Random(seed);
        var mutator = new Mutator(random);
        switch (seed % 8)
        {
            case 0 or 1 or 2:
                string wall = mutator.Yaml(Walls[random.Next(Walls.Length)]);
                ReadResult read = ProjectReader.ReadText(wall, "wall.yaml");
                Assert.Equal(read.Project is null, read.Problems.Any(p => p.Severity == Severity.Error));
                HavePlaces(read.Problems, "wall.yaml", wall);
                if (read.Project is { } project && random.Next(40) == 0)
                    LayOut(project);
                return "project file " + (read.Project is null ? "refused" : "taken");
            case 3:
                string items = mutator.Yaml(PayItems);
                var said = new List<Problem>();
                object? set = PayItemFile.Read(items, "pay.yaml", LengthUnit.Foot, said);
                HavePlaces(said, "pay.yaml", items);
                return Outcome("pay items", set, said);
            case 4:
                return Template("layer list", mutator.Json(Layers), TemplateReader.WithLayers, TemplateCheck.OfLayers);
            case 5:
                return random.Next(2) == 0
                    ? Template("note set", mutator.Json(Notes), TemplateReader.WithNotes, TemplateCheck.OfNotes)
                    : Template("language", mutator.Json(Language), TemplateReader.WithLanguage, TemplateCheck.OfLanguage);
            default:
                byte[] drawing = mutator.Dxf(Encoding.UTF8.GetString(TitleBlockSamples.Drawn()));
                var problems = new List<Problem>();
                object? block = TitleBlockFile.Read(drawing, "title.dxf", problems);
                HavePlaces(problems, "title.dxf", Encoding.UTF8.GetString(drawing));
                return Outcome("title block", block, problems);
        }
    }

    private static string Template(
        string kind, string json, Func<DrawingTemplates, string, DrawingTemplates> parse, Func<DrawingTemplates, JsonPlaces, IReadOnlyList<TemplateCheck.Fault>> check)
    {
        try
        {
            DrawingTemplates own = parse(TemplateReader.Default(), json);
            JsonPlaces places = JsonPlaces.In(json);
            IReadOnlyList<TemplateCheck.Fault> faults = check(own, places);
            Assert.All(faults, f => Assert.True(places.Of(f.Path).Line >= 1 && f.Message.Length > 0));
            return kind + (faults.Count > 0 ? " refused" : " taken");
        }
        catch (FormatException e)
        {
            Assert.NotEqual("", e.Message);
            return kind + " refused";
        }
    }

    private static string Outcome(string kind, object? result, List<Problem> problems)
    {
        Assert.Equal(result is null, problems.Any(p => p.Severity == Severity.Error));
        return kind + (result is null ? " refused" : " taken");
    }

    private static void LayOut(WallProject project)
    {
        // Walls that a change has blown up are laid out by the long tests of the search; here a run has many inputs.
        double nails = project.Walls.Sum(w => (w.End - w.Start) * 40 / w.Sections.Min(s => s.HorizontalSpacing * s.VerticalSpacing));
        if (!(nails < 1500))
            return;
        NailLayout layout = Placer.Place(project, new PlacingOptions(false));
        ClearanceReport report = Checker.Check(project, layout);
        TakeOff.Measure(project, layout);
        Assert.Equal(layout.Nails.Count, layout.Nails.Select(n => n.Mark).Distinct().Count());
        Assert.All(report.Findings, f => Assert.NotEqual("", f.Message));
        FiniteNumber.Of(layout);
    }

    private static void HavePlaces(IEnumerable<Problem> problems, string file, string text)
    {
        int lines = text.Count(c => c is '\n' or '\r' or '\u2028' or '\u2029' or '\u0085') + 2;
        foreach (Problem problem in problems)
        {
            Assert.Equal(file, problem.Spot.File);
            Assert.True(problem.Spot.Line >= 1 && problem.Spot.Line <= lines && problem.Spot.Column >= 1, problem.ToString());
            Assert.NotEqual("", problem.Message);
            string shown = ProblemPrinter.Plain(problem);
            Assert.DoesNotContain('\n', shown);
        }
    }
}
