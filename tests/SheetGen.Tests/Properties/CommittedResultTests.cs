using System.Collections.Concurrent;
using SheetGen.EndToEnd.Support;
using SheetGen.Layout.Advice;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;
using SheetGen.Tests.Outside;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Csv;
using SheetGen.Writers.Workbook;
using Xunit;

namespace SheetGen.Tests.Properties;

/// <summary>The committed nails and figures of the demos, without drawing a sheet: what mutation testing tries last.</summary>
public sealed class CommittedResultTests
{
    /// <summary>Sheets of the workbook whose cells come from the placing, the checker and the take-off alone.</summary>
    private static readonly string[] Sheets =
    [
        "Quantities", "By section", "Nails", "Nails by length", "Bars", "Bonded lengths", "Cutting plan", "Drainage", "Drilling by layer", "Excavation lifts", "Facing", "Grout",
        "Holes", "Leveling pad", "Panels", "Production", "Redirects", "Test nails", "Test schedules", "Design effect", "Design loads", "Left out",
    ];

    public static TheoryData<string> Demos => [.. Directory.EnumerateDirectories(Repository.PathOf("demo")).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal)];

    /// <summary>Placed once for both tests.</summary>
    private static readonly ConcurrentDictionary<string, (WallProject Project, NailLayout Layout, ClearanceReport Report)> Placed = new(StringComparer.Ordinal);

    private static (WallProject Project, NailLayout Layout, ClearanceReport Report) Place(string demo)
    {
        WallProject project = ProjectReader.Read(Repository.PathOf("demo", demo, "wall.yaml")).Project!;
        NailLayout layout = Placer.Place(project, new PlacingOptions());
        ClearanceReport report = Checker.Check(project, layout);
        return (project, layout, report with { Findings = [.. report.Findings, .. LayoutAdvice.Of(project, layout)] });
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Nails_of_a_demo_are_the_committed_ones(string demo)
    {
        (WallProject project, NailLayout layout, ClearanceReport report) = Placed.GetOrAdd(demo, Place);
        using var nails = new MemoryStream();
        NailCsv.Write(project, layout, report, nails);
        AssertLines(demo, "nails.csv", System.Text.Encoding.UTF8.GetString(nails.ToArray()).Split('\n'), _ => true);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Figures_of_a_demo_are_the_committed_ones(string demo)
    {
        (WallProject project, NailLayout layout, ClearanceReport report) = Placed.GetOrAdd(demo, Place);
        QuantityTable quantities = TakeOff.Measure(project, layout);
        BidTable bid = BidQuantities.Make(quantities, PayItemFile.Read(PayItemFile.BuiltIn(PayItemFile.BuiltInNames[0])!, "pay", project.Unit, [])!, project.Rates);
        using var folder = new TemporaryFolder();
        string book = Path.Combine(folder.Path, "quantities.xlsx"), listing = Path.Combine(folder.Path, "quantities.txt");
        using (FileStream stream = File.Create(book))
            WorkbookWriter.Write(project, layout, report, quantities, bid, new RunInfo("0.1.0"), stream);
        WorkbookListing.Write(book, listing);
        AssertLines(demo, "quantities.txt", File.ReadAllLines(listing), l => Sheets.Contains(l.Split('!')[0]));
    }

    private static void AssertLines(string demo, string name, IEnumerable<string> lines, Func<string, bool> counts)
    {
        string[] expected = [.. Repository.Read("demo", demo, "expected", name).Split('\n').Select(Plain).Where(l => l.Length > 0 && counts(l))];
        string[] actual = [.. lines.Select(Plain).Where(l => l.Length > 0 && counts(l))];
        static string Plain(string line) => line.Trim('\r', '\ufeff');
        string[] differ = [.. expected.Zip(actual).Where(p => p.First != p.Second).Take(5).Select(p => $"{p.First} -> {p.Second}")];
        Assert.True(differ.Length == 0 && expected.Length == actual.Length, $"{demo}/{name}, {expected.Length} lines and {actual.Length}: {string.Join('\n', differ)}");
    }
}
